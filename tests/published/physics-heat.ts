// What the tables of heating are held against.
import { heating, heatToWarmJ, plainEnthalpy } from '../../src/ground/physics/index.ts';
import type { Subject } from './subject.ts';

/** As texts have it: one heat capacity, no loss, and all of the power. */
const plainHeatingS: (...inputs: readonly string[]) => number = (
  massKg = '',
  kjPerKgK = '',
  vesselKjPerK = '',
  fromC = '',
  toC = '',
  powerW = '',
) => {
  const { timeS } = heating({
    massKg: Number(massKg),
    fromC: Number(fromC),
    toC: Number(toC),
    enthalpy: plainEnthalpy(Number(kjPerKgK) * 1000),
    vesselJPerK: Number(vesselKjPerK) * 1000,
    powerW: Number(powerW),
    efficiency: 1,
    lossWPerK: 0,
    aroundC: 20,
  });
  return timeS ?? Number.NaN;
};

export const HEAT: Readonly<Record<string, Subject>> = {
  plainHeat: (massKg = '', kjPerKgK = '', fromC = '', toC = '') =>
    heatToWarmJ({
      massKg: Number(massKg),
      fromC: Number(fromC),
      toC: Number(toC),
      enthalpy: plainEnthalpy(Number(kjPerKgK) * 1000),
      vesselJPerK: 0,
    }) / 1000,
  plainHeatingTime: plainHeatingS,
  plainHeatingMinutes: (...inputs) => plainHeatingS(...inputs) / 60,
};
