// What the oxygen of a crew costs when it is made of water: water, current, power, heat and what is purged.
import { stayAtLeastZero, stayShare, stayWithin } from '../stay-within.ts';
import { currentForOxygenA, electrolysisRates, type Stack } from './rates.ts';
import { checkCellVoltage, electrolysisEnergyJPerKgOxygen, electrolysisHeatW } from './voltages.ts';

const DAY_S = 86_400;
/** From rest to a day of hard work. */
const LEAST_NEED_KG_PER_DAY = 0.5;
const GREATEST_NEED_KG_PER_DAY = 1.3;
/** A purge of all the water would leave nothing to split. */
const GREATEST_PURGE = 0.9;

export interface CrewOxygenAsked extends Stack {
  readonly people: number;
  /** kg a person and day. 0.84 is a common figure for planning; it lies between 0.5 and 1.3 with activity. */
  readonly oxygenKgPerPersonDay: number;
  /** The share of the oxygen that is made of water; the rest comes from bottles. 0 to 1. */
  readonly shareOfWater: number;
  readonly cellVoltageV: number;
  /** The share of the water fed that is purged or carried off and splits nothing. 0 to 0.9. */
  readonly purgedShare: number;
}

export interface CrewOxygen {
  readonly oxygenKgPerDay: number;
  readonly hydrogenKgPerDay: number;
  /** What is split. */
  readonly waterSplitKgPerDay: number;
  readonly waterPurgedKgPerDay: number;
  /** What the store gives: split and purged. */
  readonly waterKgPerDay: number;
  readonly bottledOxygenKgPerDay: number;
  /** Through every cell, if the stack runs day and night. */
  readonly currentA: number;
  readonly powerW: number;
  readonly heatW: number;
  readonly energyJPerKgOxygen: number;
}

/**
 * Oxygen for so many people, made of water: ṁ = people × need × share, then Faraday's law.
 *
 * Steady, day and night; a stack that runs half of the time needs twice the current.
 * @param asked `people` from 0; `oxygenKgPerPersonDay` 0.5 to 1.3; `shareOfWater` 0 to 1; `cells` from 1; `currentEfficiency`
 *   above 0 up to 1; `cellVoltageV` V, 1.1 to 3; `purgedShare` 0 to 0.9
 * @returns kg a day, A, W and J/kg; heat below zero is taken from around the stack
 * @throws OutsideRange outside those ranges and for NaN
 * @source faraday, crew-needs-1994 (the range of the need)
 * @example oxygenByElectrolysis({ people: 4, oxygenKgPerPersonDay: 0.84, shareOfWater: 1, cells: 10,
 *   currentEfficiency: 0.97, cellVoltageV: 1.9, purgedShare: 0 }).waterKgPerDay // 3.783
 */
export function oxygenByElectrolysis(asked: CrewOxygenAsked): CrewOxygen {
  checkAsked(asked);
  const { people, oxygenKgPerPersonDay, shareOfWater, cellVoltageV, purgedShare } = asked;
  const needKgPerDay = people * oxygenKgPerPersonDay;
  const oxygenKgPerDay = needKgPerDay * shareOfWater;
  const currentA = currentForOxygenA({ ...asked, oxygenKgPerS: oxygenKgPerDay / DAY_S });
  const running = { ...asked, currentA };
  const rates = electrolysisRates(running);
  const waterSplitKgPerDay = rates.waterKgPerS * DAY_S;
  const waterKgPerDay = waterSplitKgPerDay / (1 - purgedShare);
  return {
    oxygenKgPerDay,
    hydrogenKgPerDay: rates.hydrogenKgPerS * DAY_S,
    waterSplitKgPerDay,
    waterPurgedKgPerDay: waterKgPerDay - waterSplitKgPerDay,
    waterKgPerDay,
    bottledOxygenKgPerDay: needKgPerDay - oxygenKgPerDay,
    currentA,
    powerW: asked.cells * currentA * cellVoltageV,
    heatW: electrolysisHeatW(running),
    energyJPerKgOxygen: electrolysisEnergyJPerKgOxygen(asked),
  };
}

function checkAsked(asked: CrewOxygenAsked): void {
  const { people, oxygenKgPerPersonDay, shareOfWater, cellVoltageV, purgedShare } = asked;
  const source = 'crew-needs-1994';
  stayAtLeastZero({ quantity: 'people', value: people, unit: 'people', source });
  const need = { quantity: 'oxygen that a person needs', value: oxygenKgPerPersonDay, unit: 'kg/d' };
  stayWithin({ ...need, low: LEAST_NEED_KG_PER_DAY, high: GREATEST_NEED_KG_PER_DAY, source });
  stayShare({
    quantity: 'share of the oxygen that is made of water',
    value: shareOfWater,
    source: 'faraday',
  });
  checkCellVoltage(cellVoltageV);
  const purged = { quantity: 'share of the water that is purged', value: purgedShare, unit: 'of 1' };
  stayWithin({ ...purged, low: 0, high: GREATEST_PURGE, source: 'faraday' });
}
