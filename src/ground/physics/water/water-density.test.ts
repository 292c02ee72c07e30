// Density of water, and litres and milligrams there and back; published values are in tests/published.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { litresToMilligrams, milligramsToLitres, waterDensityKgPerM3 } from './water-density.ts';

describe('density', () => {
  it('is greatest near 3.98 °C and falls to both sides', () => {
    const greatest = waterDensityKgPerM3(3.983035);
    expect(greatest).toBe(999.97495);
    let before = greatest;
    for (let tenths = 40; tenths <= 400; tenths += 1) {
      const density = waterDensityKgPerM3(tenths / 10);
      expect(density).toBeLessThan(before);
      before = density;
    }
    before = greatest;
    for (let tenths = 39; tenths >= 0; tenths -= 1) {
      const density = waterDensityKgPerM3(tenths / 10);
      expect(density).toBeLessThan(before);
      before = density;
    }
  });

  it('agrees with a declared 0.9978 kg/L at 22 °C to its last digit', () => {
    expect(waterDensityKgPerM3(22).toFixed(1)).toBe('997.8');
  });

  it.each([-0.001, 40.001, Number.NaN, Number.POSITIVE_INFINITY])('is not known at %d °C', (temperatureC) => {
    expect(() => waterDensityKgPerM3(temperatureC)).toThrow(RangeError);
  });
});

describe('litres and milligrams', () => {
  it('at the declared density', () => {
    expect(litresToMilligrams(1, 997.8)).toBe(997_800);
    expect(litresToMilligrams(20.5, 997.8)).toBe(20_454_900);
    expect(litresToMilligrams(-0.025, 997.8)).toBe(-24_945);
    expect(Object.is(litresToMilligrams(0, 997.8), 0)).toBe(true);
    expect(milligramsToLitres(20_454_900, 997.8)).toBe(20.5);
  });

  it('rounds a half away from zero, both ways', () => {
    expect(litresToMilligrams(0.0000025, 1000)).toBe(3);
    expect(litresToMilligrams(-0.0000025, 1000)).toBe(-3);
  });

  it('brings back every volume of whole hundredths of a millilitre, at any density from 995 to 1000', () => {
    let looked = 0;
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 50_000_000 }),
        fc.integer({ min: 9_950, max: 10_000 }),
        (hundredths, tenths) => {
          const volumeL = Number(`${hundredths}e-5`);
          const back = milligramsToLitres(litresToMilligrams(volumeL, tenths / 10), tenths / 10);
          looked += 1;
          return Math.round(back * 1e5) === hundredths;
        },
      ),
    );
    expect(looked).toBeGreaterThanOrEqual(100);
  });

  it.each([0, -1, Number.NaN])('refuse a density of %d', (density) => {
    expect(() => litresToMilligrams(1, density)).toThrow(RangeError);
    expect(() => milligramsToLitres(1, density)).toThrow(RangeError);
  });

  it('refuse what is not finite or too large', () => {
    expect(() => litresToMilligrams(Number.NaN, 1000)).toThrow(RangeError);
    expect(() => litresToMilligrams(1e12, 1000)).toThrow(RangeError);
  });
});
