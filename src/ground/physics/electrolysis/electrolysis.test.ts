// Electrolysis: mass is kept, inverses, the sign of the heat, and what is refused; published values are in tests/published.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { OutsideRange } from '../outside-range.ts';
import { type CrewOxygenAsked, oxygenByElectrolysis } from './crew-oxygen.ts';
import { currentForOxygenA, electrolysisRates, oxygenFromWaterKg, waterForOxygenKg } from './rates.ts';
import {
  electrolysisEnergyJPerKgOxygen,
  electrolysisHeatW,
  HYDROGEN_HEAT_J_PER_KG,
  reversibleVoltageV,
  THERMONEUTRAL_VOLTAGE_V,
} from './voltages.ts';

const stacks = fc.record({
  cells: fc.integer({ min: 1, max: 60 }),
  currentA: fc.double({ min: 0.01, max: 200, noNaN: true }),
  currentEfficiency: fc.double({ min: 0.5, max: 1, noNaN: true }),
  cellVoltageV: fc.double({ min: 1.1, max: 3, noNaN: true }),
});

const crew: CrewOxygenAsked = {
  people: 4,
  oxygenKgPerPersonDay: 0.84,
  shareOfWater: 0.77,
  cells: 12,
  currentEfficiency: 0.97,
  cellVoltageV: 1.9,
  purgedShare: 0.02,
};

describe('what is split and made', () => {
  it('keeps mass: water is oxygen and hydrogen', () => {
    fc.assert(
      fc.property(stacks, (stack) => {
        const { oxygenKgPerS, hydrogenKgPerS, waterKgPerS } = electrolysisRates(stack);
        expect(waterKgPerS / (oxygenKgPerS + hydrogenKgPerS)).toBeCloseTo(1, 13);
        expect(waterForOxygenKg(oxygenKgPerS) / waterKgPerS).toBeCloseTo(1, 13);
        expect(oxygenFromWaterKg(waterKgPerS) / oxygenKgPerS).toBeCloseTo(1, 13);
      }),
    );
  });

  it('and back to the current', () => {
    fc.assert(
      fc.property(stacks, (stack) => {
        const { oxygenKgPerS } = electrolysisRates(stack);
        expect(currentForOxygenA({ ...stack, oxygenKgPerS }) / stack.currentA).toBeCloseTo(1, 12);
      }),
    );
  });

  it('goes with cells and with current alike', () => {
    const one = electrolysisRates({ cells: 1, currentA: 60, currentEfficiency: 1 });
    expect(electrolysisRates({ cells: 3, currentA: 20, currentEfficiency: 1 })).toEqual(one);
    expect(electrolysisRates({ cells: 3, currentA: 0, currentEfficiency: 1 }).waterKgPerS).toBe(0);
  });

  it('7.16 g of oxygen a cell, ampere and day', () => {
    const { oxygenKgPerS } = electrolysisRates({ cells: 1, currentA: 1, currentEfficiency: 1 });
    expect((oxygenKgPerS * 86_400 * 1000).toFixed(2)).toBe('7.16');
  });
});

describe('energy', () => {
  it('power is heat and what hydrogen would give back', () => {
    fc.assert(
      fc.property(stacks, (stack) => {
        const powerW = stack.cells * stack.currentA * stack.cellVoltageV;
        const storedW = electrolysisRates(stack).hydrogenKgPerS * HYDROGEN_HEAT_J_PER_KG;
        expect((electrolysisHeatW(stack) + storedW) / powerW).toBeCloseTo(1, 12);
      }),
    );
  });

  it('a cell at the thermoneutral voltage neither warms nor cools; below it takes heat', () => {
    const at = (cellVoltageV: number) =>
      electrolysisHeatW({ cells: 5, currentA: 30, cellVoltageV, currentEfficiency: 1 });
    expect(at(THERMONEUTRAL_VOLTAGE_V)).toBe(0);
    expect(at(1.4)).toBeLessThan(0);
    expect(at(1.9)).toBeGreaterThan(0);
  });

  it('the least voltage falls as the cell warms', () => {
    expect(reversibleVoltageV(25).toFixed(3)).toBe('1.229');
    expect(reversibleVoltageV(80)).toBeCloseTo(reversibleVoltageV(25) - 0.04675, 9);
  });

  it('a kilogram of oxygen takes 6.03 kWh at 1.8 V', () => {
    const energyJ = electrolysisEnergyJPerKgOxygen({ cellVoltageV: 1.8, currentEfficiency: 1 });
    expect((energyJ / 3.6e6).toFixed(2)).toBe('6.03');
  });
});

describe('the oxygen of a crew', () => {
  it('closes: split and purged are what the store gives, made and bottled what the crew needs', () => {
    const found = oxygenByElectrolysis(crew);
    expect(found.waterSplitKgPerDay + found.waterPurgedKgPerDay).toBeCloseTo(found.waterKgPerDay, 12);
    expect(found.oxygenKgPerDay + found.bottledOxygenKgPerDay).toBeCloseTo(4 * 0.84, 12);
    expect(found.waterPurgedKgPerDay / found.waterKgPerDay).toBeCloseTo(0.02, 12);
    expect(found.energyJPerKgOxygen * found.oxygenKgPerDay).toBeCloseTo(found.powerW * 86_400, 3);
  });

  it('four people all by water, nothing purged: 3.8 kg a day', () => {
    const found = oxygenByElectrolysis({ ...crew, shareOfWater: 1, purgedShare: 0 });
    expect(found.waterKgPerDay.toFixed(1)).toBe('3.8');
  });

  it('nothing by water takes no water and no current', () => {
    const found = oxygenByElectrolysis({ ...crew, shareOfWater: 0 });
    expect([found.waterKgPerDay, found.currentA, found.powerW, found.heatW]).toEqual([0, 0, 0, 0]);
    expect(found.bottledOxygenKgPerDay).toBeCloseTo(3.36, 12);
  });

  it.each<Partial<CrewOxygenAsked>>([
    { people: -1 },
    { oxygenKgPerPersonDay: 0.49 },
    { oxygenKgPerPersonDay: 840 },
    { shareOfWater: 1.01 },
    { cells: 0 },
    { currentEfficiency: 0 },
    { currentEfficiency: 97 },
    { cellVoltageV: 19 },
    { cellVoltageV: 1 },
    { purgedShare: 1 },
    { people: Number.NaN },
    { cellVoltageV: Number.NaN },
  ])('refuses %o', (change) => {
    expect(() => oxygenByElectrolysis({ ...crew, ...change })).toThrow(OutsideRange);
  });
});

it.each([-1, 101, Number.NaN])('the least voltage is not known at %d °C', (temperatureC) => {
  expect(() => reversibleVoltageV(temperatureC)).toThrow(OutsideRange);
});
