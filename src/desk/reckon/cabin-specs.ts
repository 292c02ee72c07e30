// Inputs that several calculators share: the cabin and the water.
import type { QuantitySpec } from './input-spec.ts';

export const CABIN: QuantitySpec = {
  name: 'cabin',
  dimension: 'pressure',
  unit: 'kPa',
  positive: true,
  otherwise: { value: 101.325, u95: null, why: 'usual-pressure' },
};

export const CABIN_VOLUME: QuantitySpec = {
  name: 'cabin-volume',
  dimension: 'volume',
  unit: 'm3',
  positive: true,
  optional: true,
};

export const WATER: QuantitySpec = {
  name: 'water',
  dimension: 'temperature',
  unit: 'degC',
  otherwise: { value: 20, u95: null, why: 'room-warm' },
};

export const AIR: QuantitySpec = { name: 'air', dimension: 'temperature', unit: 'degC' };

export const AIR_ASSUMED: QuantitySpec = {
  ...AIR,
  otherwise: { value: 22, u95: null, why: 'room-warm' },
};

export const OXYGEN: QuantitySpec = {
  name: 'oxygen',
  dimension: 'fraction',
  unit: '%',
  positive: true,
  optional: true,
};

export const HUMIDITY: QuantitySpec = { name: 'humidity', dimension: 'fraction', unit: '%' };
