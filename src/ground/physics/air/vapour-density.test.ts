// Vapour in the cabin air: ranges, relations, and the few figures that a keeper has in mind; published values are in tests/published.
import { expect, it } from 'vitest';
import { saturationPressurePa } from '../water/saturation.ts';
import { vapourDensityKgPerM3 } from './vapour-density.ts';

it.each([
  [0.45, 1.57],
  [0.5, 1.74],
  [0.62, 2.16],
])('180 m³ at 22 °C and %d of saturation carry about %d kg', (relativeHumidity, massKg) => {
  // Our own arithmetic with another vapour formula, three digits.
  expect(180 * vapourDensityKgPerM3({ relativeHumidity, temperatureC: 22 })).toBeCloseTo(massKg, 1);
});

it('grows with humidity in proportion and with temperature always', () => {
  const at = (relativeHumidity: number, temperatureC: number) =>
    vapourDensityKgPerM3({ relativeHumidity, temperatureC });
  expect(at(0, 22)).toBe(0);
  expect(at(0.8, 22)).toBeCloseTo(2 * at(0.4, 22), 15);
  for (let temperatureC = 0; temperatureC < 60; temperatureC += 1)
    expect(at(0.5, temperatureC + 1)).toBeGreaterThan(at(0.5, temperatureC));
});

it.each([
  [-0.01, 22],
  [1.01, 22],
  [0.5, -0.1],
  [0.5, 60.1],
  [Number.NaN, 22],
  [0.5, Number.NaN],
])('refuses a humidity of %d at %d °C', (relativeHumidity, temperatureC) => {
  expect(() => vapourDensityKgPerM3({ relativeHumidity, temperatureC })).toThrow(RangeError);
});

it.each([273.14, 647.1, Number.NaN])('saturation is not known at %d K', (temperatureK) => {
  expect(() => saturationPressurePa(temperatureK)).toThrow(RangeError);
});
