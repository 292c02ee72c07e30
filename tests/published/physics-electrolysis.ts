// What the tables of electrolysis are held against.
import {
  currentForOxygenA,
  electrolysisRates,
  HYDROGEN_HEAT_J_PER_KG,
  HYDROGEN_HEAT_J_PER_NORMAL_M3,
  oxygenFromWaterKg,
  reversibleVoltageV,
  THERMONEUTRAL_VOLTAGE_V,
  waterForOxygenKg,
} from '../../src/ground/physics/index.ts';
import type { Subject } from './subject.ts';

const ONE_CELL = { cells: 1, currentEfficiency: 1 };
const J_PER_KWH = 3.6e6;

const chosen = (values: Readonly<Record<string, number>>, name: string): number => values[name] ?? Number.NaN;

export const ELECTROLYSIS: Readonly<Record<string, Subject>> = {
  electrolysisVoltage: (name = '') =>
    chosen({ thermoneutral: THERMONEUTRAL_VOLTAGE_V, reversible: reversibleVoltageV(25) }, name),
  hydrogenHeatPerKg: () => HYDROGEN_HEAT_J_PER_KG / J_PER_KWH,
  hydrogenHeatPerNormalM3: () => HYDROGEN_HEAT_J_PER_NORMAL_M3 / J_PER_KWH,
  chargePerOxygen: () => currentForOxygenA({ ...ONE_CELL, oxygenKgPerS: 1 / 3600 }) / 1000,
  gasPerCharge: (name = '') => {
    const { oxygenKgPerS, hydrogenKgPerS } = electrolysisRates({ ...ONE_CELL, currentA: 1 });
    return chosen({ oxygen: oxygenKgPerS, hydrogen: hydrogenKgPerS }, name) * 3600 * 1000;
  },
  waterAndOxygen: (way = '', kg = '') =>
    chosen(
      {
        'water for oxygen': waterForOxygenKg(Number(kg)),
        'oxygen from water': oxygenFromWaterKg(Number(kg)),
      },
      way,
    ),
  cellAmperesPerPerson: (kgPerDay = '') =>
    currentForOxygenA({ ...ONE_CELL, oxygenKgPerS: Number(kgPerDay) / 86_400 }),
};
