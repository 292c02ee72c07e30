// Liquid water: relations between its properties, its range, and the few figures known by heart; published values are in tests/published.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { kell1975KgPerM3 } from '../../../../tests/reference/kell-1975.ts';
import { OutsideRange } from '../outside-range.ts';
import {
  liquidDensityKgPerM3,
  liquidEnergyJPerKg,
  liquidEnthalpyJPerKg,
  liquidEntropyJPerKgK,
  liquidHeatCapacityJPerKgK,
  liquidSoundMPerS,
  liquidVolumeM3PerKg,
} from './liquid-water.ts';
import { saturationPressurePa } from './saturation.ts';
import { waterDensityKgPerM3 } from './water-density.ts';

const temperatureK = fc.double({ min: 274, max: 600, noNaN: true });
const pressurePa = fc.double({ min: 15e6, max: 90e6, noNaN: true });
const properties = {
  liquidDensityKgPerM3,
  liquidEnergyJPerKg,
  liquidEnthalpyJPerKg,
  liquidEntropyJPerKgK,
  liquidHeatCapacityJPerKgK,
  liquidSoundMPerS,
  liquidVolumeM3PerKg,
};

/** The slope of a function by central difference. */
const slope = (of: (x: number) => number, x: number, step: number): number =>
  (of(x + step) - of(x - step)) / (2 * step);

describe('thermodynamics that no coefficient may break', () => {
  it('enthalpy = energy + p v', () => {
    fc.assert(
      fc.property(temperatureK, pressurePa, (T, p) => {
        const enthalpy = liquidEnergyJPerKg(T, p) + p * liquidVolumeM3PerKg(T, p);
        expect(liquidEnthalpyJPerKg(T, p) / enthalpy).toBeCloseTo(1, 12);
      }),
    );
  });

  it('heat capacity = slope of the enthalpy = T times the slope of the entropy', () => {
    fc.assert(
      fc.property(temperatureK, pressurePa, (T, p) => {
        const capacity = liquidHeatCapacityJPerKgK(T, p);
        const ofEnthalpy = slope((x) => liquidEnthalpyJPerKg(x, p), T, 0.01);
        const ofEntropy = T * slope((x) => liquidEntropyJPerKgK(x, p), T, 0.01);
        expect(ofEnthalpy / capacity).toBeCloseTo(1, 6);
        expect(ofEntropy / capacity).toBeCloseTo(1, 6);
      }),
    );
  });

  it('(∂s/∂p) at constant T = −(∂v/∂T) at constant p', () => {
    fc.assert(
      fc.property(temperatureK, pressurePa, (T, p) => {
        const left = slope((x) => liquidEntropyJPerKgK(T, x), p, 1e4);
        const right = -slope((x) => liquidVolumeM3PerKg(x, p), T, 0.01);
        expect(Math.abs(left - right)).toBeLessThan(1e-10 + 1e-4 * Math.abs(right));
      }),
    );
  });

  it('sound: w² = −v² (∂p/∂v) at constant entropy', () => {
    fc.assert(
      fc.property(temperatureK, pressurePa, (T, p) => {
        // Along a step at constant entropy, dT = −(∂s/∂p) dp / (∂s/∂T).
        const stepPa = 1e4;
        const turn =
          -slope((x) => liquidEntropyJPerKgK(T, x), p, stepPa) /
          slope((x) => liquidEntropyJPerKgK(x, p), T, 0.01);
        const along = (step: number): number => liquidVolumeM3PerKg(T + turn * step, p + step);
        const v = liquidVolumeM3PerKg(T, p);
        const squared = (-v * v * 2 * stepPa) / (along(stepPa) - along(-stepPa));
        expect(Math.sqrt(squared) / liquidSoundMPerS(T, p)).toBeCloseTo(1, 4);
      }),
    );
  });
});

it('agrees with the counting density from 0 to 40 °C to a hundred thousandth, and with the older equation of Kell to 0.006', () => {
  for (let temperatureC = 0; temperatureC <= 40; temperatureC += 1) {
    const counted = waterDensityKgPerM3(temperatureC);
    expect(Math.abs(liquidDensityKgPerM3(temperatureC + 273.15, 101325) - counted)).toBeLessThan(0.01);
    expect(Math.abs(kell1975KgPerM3(temperatureC) - counted)).toBeLessThan(0.006);
  }
});

it('sound is slowest in cold water and within 2 m/s of 1496.7 (from memory) at 25 °C', () => {
  expect(Math.abs(liquidSoundMPerS(298.15, 101325) - 1496.7)).toBeLessThan(2);
  expect(liquidSoundMPerS(278.15, 101325)).toBeLessThan(liquidSoundMPerS(298.15, 101325));
});

describe.each(Object.entries(properties))('%s', (_, of) => {
  it('is known on the boiling line and nowhere beyond its range', () => {
    expect(of(350, saturationPressurePa(350))).toBeGreaterThan(0);
    for (const [T, p] of [
      [273.14, 1e6],
      [623.16, 50e6],
      [Number.NaN, 1e6],
      [300, 3000],
      [373.15, 101000],
      [300, 100.1e6],
      [300, Number.NaN],
    ] as const)
      expect(() => of(T, p)).toThrow(OutsideRange);
  });

  it('gives the same bits whatever was asked before', () => {
    const first = of(333.3, 7e6);
    of(600, 90e6);
    liquidSoundMPerS(280, 1e6);
    expect(of(333.3, 7e6)).toBe(first);
  });
});
