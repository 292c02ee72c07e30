// Table of the functions that a formula may call: what each takes and gives, and the physics behind it. All in SI.
import {
  boilingMargin,
  cabinChange,
  endPressurePa,
  freeAir,
  freeze,
  gasVolumeByInjectionM3,
  heating,
  pushFlow,
  resultOfStock,
  stockForTarget,
  tankAfterFallPa,
  thaw,
  viscosityPaS,
  waterDensityKgPerM3,
  waterEnthalpyAt,
} from '../../../ground/physics/index.ts';
import { typeOfUnit } from '../card-units.ts';
import type { QuantityType } from './quantity-type.ts';

interface CardFunction {
  /** Name and type of each input, in order; absent: any number of one type, which is also that of the result. */
  readonly takes: readonly (readonly [name: string, type: QuantityType])[] | null;
  readonly gives: QuantityType | null;
  /**
   * @throws OutsideRange where the source of the physics ends
   * @returns null where there is no answer, such as a heater that never gets there
   */
  readonly run: (inputs: readonly number[]) => number | null;
}

const ICE_POINT_K = 273.15;
const VOLUME = typeOfUnit('L');
const LENGTH = typeOfUnit('m');
const OVER = typeOfUnit('kPa over cabin');
const ABSOLUTE = typeOfUnit('kPa abs');
const WARMTH = typeOfUnit('°C');
const TIME = typeOfUnit('s');
const POWER = typeOfUnit('W');
const LOSS = typeOfUnit('W/K');
const STRENGTH = typeOfUnit('mg/L');
const FLOW = typeOfUnit('L/min');
const PLAIN = typeOfUnit('plain');

/** Inputs by number: a missing one is a fault of the checker, which has counted them. */
function at(inputs: readonly number[], index: number): number {
  const value = inputs[index];
  if (value === undefined) throw new Error(`a function of a formula lacks its input ${index + 1}`);
  return value;
}

export const FUNCTIONS: Readonly<Record<string, CardFunction>> = {
  min: { takes: null, gives: null, run: (inputs) => Math.min(...inputs) },
  max: { takes: null, gives: null, run: (inputs) => Math.max(...inputs) },
  /** Doubts that have nothing to do with each other, taken together: the root of the sum of their squares. */
  joined: {
    takes: null,
    gives: null,
    run: (inputs) => Math.sqrt(inputs.reduce((sum, each) => sum + each * each, 0)),
  },
  fill_time: {
    takes: [
      ['volume', VOLUME],
      ['push', OVER],
      ['length', LENGTH],
      ['bore', LENGTH],
      ['roughness', LENGTH],
      ['loss', PLAIN],
      ['kv', FLOW],
      ['water', WARMTH],
    ],
    gives: TIME,
    run: (x) => {
      const waterC = at(x, 7) - ICE_POINT_K;
      const densityKgPerM3 = waterDensityKgPerM3(waterC);
      const water = { densityKgPerM3, viscosityPaS: viscosityPaS(at(x, 7), densityKgPerM3) };
      const line = { lengthM: at(x, 2), boreM: at(x, 3), roughnessM: at(x, 4), minorLoss: at(x, 5) };
      const couplingsKv = [3600 * at(x, 6)];
      return at(x, 0) / pushFlow({ ...line, couplingsKv }, water, at(x, 1)).flowM3PerS;
    },
  },
  end_pressure: {
    takes: [
      ['bottle', ABSOLUTE],
      ['bottle_volume', VOLUME],
      ['gas', VOLUME],
      ['tank', ABSOLUTE],
    ],
    gives: ABSOLUTE,
    run: (x) =>
      endPressurePa({ bottlePa: at(x, 0), bottleM3: at(x, 1), ullageM3: at(x, 2), tankPa: at(x, 3) }),
  },
  /** The highest pressure of a bottle that may be opened to a tank for good. */
  largest_bottle: {
    takes: [
      ['limit', ABSOLUTE],
      ['bottle_volume', VOLUME],
      ['gas', VOLUME],
      ['tank', ABSOLUTE],
    ],
    gives: ABSOLUTE,
    run: (x) => (at(x, 0) * (at(x, 1) + at(x, 2)) - at(x, 3) * at(x, 2)) / at(x, 1),
  },
  part_charge: {
    takes: [
      ['fall', OVER],
      ['bottle_volume', VOLUME],
      ['gas', VOLUME],
      ['tank', ABSOLUTE],
    ],
    gives: ABSOLUTE,
    run: (x) =>
      tankAfterFallPa({ bottleFallPa: at(x, 0), bottleM3: at(x, 1), ullageM3: at(x, 2), tankPa: at(x, 3) }),
  },
  gas_by_injection: {
    takes: [
      ['bottle_volume', VOLUME],
      ['bottle_before', ABSOLUTE],
      ['bottle_before_warmth', WARMTH],
      ['bottle_after', ABSOLUTE],
      ['bottle_after_warmth', WARMTH],
      ['tank_before', ABSOLUTE],
      ['tank_before_warmth', WARMTH],
      ['tank_after', ABSOLUTE],
      ['tank_after_warmth', WARMTH],
    ],
    gives: VOLUME,
    run: (x) =>
      gasVolumeByInjectionM3({
        bottleM3: at(x, 0),
        bottleBeforePa: at(x, 1),
        bottleBeforeK: at(x, 2),
        bottleAfterPa: at(x, 3),
        bottleAfterK: at(x, 4),
        tankBeforePa: at(x, 5),
        tankBeforeK: at(x, 6),
        tankAfterPa: at(x, 7),
        tankAfterK: at(x, 8),
      }),
  },
  dose_volume: {
    takes: [
      ['water', VOLUME],
      ['holds', STRENGTH],
      ['wanted', STRENGTH],
      ['stock', STRENGTH],
    ],
    gives: VOLUME,
    run: (x) =>
      stockForTarget({
        water: { volumeM3: at(x, 0), concentrationKgPerM3: at(x, 1) },
        wantedKgPerM3: at(x, 2),
        stockKgPerM3: at(x, 3),
        greatestKgPerM3: null,
      }).stockVolumeM3,
  },
  dose_result: {
    takes: [
      ['water', VOLUME],
      ['holds', STRENGTH],
      ['dose', VOLUME],
      ['stock', STRENGTH],
    ],
    gives: STRENGTH,
    run: (x) =>
      resultOfStock({
        water: { volumeM3: at(x, 0), concentrationKgPerM3: at(x, 1) },
        stockVolumeM3: at(x, 2),
        stockKgPerM3: at(x, 3),
        greatestKgPerM3: null,
      }).resultKgPerM3,
  },
  stroke_volume: {
    takes: [
      ['strokes', typeOfUnit('strokes')],
      ['stroke', typeOfUnit('mL/stroke')],
    ],
    gives: VOLUME,
    run: (x) => at(x, 0) * at(x, 1),
  },
  heating_time: {
    takes: [
      ['volume', VOLUME],
      ['from', WARMTH],
      ['to', WARMTH],
      ['heater', POWER],
      ['cabin', ABSOLUTE],
    ],
    gives: TIME,
    run: (x) => {
      const fromC = at(x, 1) - ICE_POINT_K;
      return heating({
        massKg: at(x, 0) * waterDensityKgPerM3(fromC),
        fromC,
        toC: at(x, 2) - ICE_POINT_K,
        enthalpy: waterEnthalpyAt(at(x, 4)),
        vesselJPerK: 0,
        powerW: at(x, 3),
        efficiency: 1,
        lossWPerK: 0,
        aroundC: fromC,
      }).timeS;
    },
  },
  boils_at: {
    takes: [['pressure', ABSOLUTE]],
    gives: WARMTH,
    run: (x) => boilingMargin({ temperatureC: 0, pressurePa: at(x, 0) }).boilsAtC + ICE_POINT_K,
  },
  thaw_time: {
    takes: [
      ['ice', typeOfUnit('kg')],
      ['from', WARMTH],
      ['heater', POWER],
    ],
    gives: TIME,
    run: (x) =>
      thaw({
        ice: { massKg: at(x, 0), temperatureC: at(x, 1) - ICE_POINT_K, iceShare: 1 },
        toC: 0,
        powerW: at(x, 2),
        efficiency: 1,
        lossWPerK: 0,
        aroundC: 0,
      }).meltedAfterS,
  },
  freeze_time: {
    takes: [
      ['water', typeOfUnit('kg')],
      ['from', WARMTH],
      ['around', WARMTH],
      ['loss', LOSS],
    ],
    gives: TIME,
    run: (x) =>
      freeze({
        massKg: at(x, 0),
        fromC: at(x, 1) - ICE_POINT_K,
        vesselJPerK: 0,
        lossWPerK: at(x, 3),
        aroundC: at(x, 2) - ICE_POINT_K,
      })?.atFreezingAfterS ?? null,
  },
  free_air: {
    takes: [
      ['water', VOLUME],
      ['push', OVER],
      ['cabin', ABSOLUTE],
    ],
    gives: VOLUME,
    run: (x) => freeAir({ waterM3: at(x, 0), tankPa: at(x, 2) + at(x, 1), cabinPa: at(x, 2) }).totalM3,
  },
  cabin_dip: {
    takes: [
      ['water', VOLUME],
      ['push', OVER],
      ['cabin', ABSOLUTE],
      ['cabin_volume', VOLUME],
    ],
    gives: OVER,
    run: (x) =>
      -cabinChange({
        cabinPa: at(x, 2),
        tankPa: at(x, 2) + at(x, 1),
        waterM3: at(x, 0),
        cabinM3: at(x, 3),
        receiver: 'shell inside',
        gasFrom: 'cabin',
      }).whilePushingPa,
  },
};

/** A name that is no function of the table, such as a member that every object has, is none. */
export function functionNamed(name: string): CardFunction | null {
  return Object.hasOwn(FUNCTIONS, name) ? (FUNCTIONS[name] ?? null) : null;
}
