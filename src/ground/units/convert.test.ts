// Conversions are exact, and the way there and back gives the same number.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { convert, convertAtDensity, convertDifference } from './convert.ts';
import { UNITS } from './unit-table.ts';

describe('exact values by definition', () => {
  it.each([
    [1, 'lb', 'kg', 0.45359237],
    [1, 'lb', 'mg', 453592.37],
    [1, 'gal', 'L', 3.785411784],
    [1, 'atm', 'kPa', 101.325],
    [1, 'bar', 'kPa', 100],
    [1013.25, 'mbar', 'atm', 1],
    [0.1, 'L', 'mL', 100],
    [0.07, 'm3', 'L', 70],
    [21.4, 'kg', 'mg', 21_400_000],
    [0, 'degC', 'K', 273.15],
    [212, 'degF', 'degC', 100],
    [-40, 'degC', 'degF', -40],
    [22, 'degC', 'K', 295.15],
    [1, 'd', 's', 86_400],
    [1, 'L/min', 'L/d', 1440],
    [0.25, 'mg/L', 'ug/L', 250],
    [0, 'lb', 'kg', 0],
  ])('%d %s in %s is %d, from there too', (value, from, to, expected) => {
    expect(convert(value, from, to)).toBe(expected);
  });

  it('gives the pound per square inch within 3e-16', () => {
    // 0.45359237 × 9.80665 / 0.0254² = 6894.757293168361336722673...
    expect(convert(1, 'psi', 'Pa')).toBe(6894.75729316836);
  });
});

describe('there and back', () => {
  const pairs = UNITS.flatMap((from) =>
    UNITS.filter((to) => to !== from && to.dimension === from.dimension && from.dimension !== 'count').map(
      (to) => [from, to] as const,
    ),
  );

  it('gives the same number for every pair of units of a kind and any number of up to 15 digits', () => {
    let looked = 0;
    const scales = fc.record({
      digits: fc.bigInt(-999_999_999_999_999n, 999_999_999_999_999n),
      power: fc.integer({ min: -25, max: 10 }),
    });
    for (const [from, to] of pairs.filter(([each]) => each.dimension !== 'temperature')) {
      fc.assert(
        fc.property(scales, ({ digits, power }) => {
          const value = Number(`${digits}e${power}`) + 0;
          looked += 1;
          return convert(convert(value, from.name, to.name), to.name, from.name) === value;
        }),
        { numRuns: 60, seed: 7 },
      );
    }
    expect(looked).toBeGreaterThan(2_000);
  });

  it('gives the same temperature for any number of up to 9 decimals', () => {
    let looked = 0;
    for (const [from, to] of pairs.filter(([each]) => each.dimension === 'temperature')) {
      fc.assert(
        fc.property(
          fc.integer({ min: -2e12, max: 2e12 }),
          fc.integer({ min: 0, max: 9 }),
          (digits, decimals) => {
            const value = Number(`${Math.round(digits / Number(`1e${9 - decimals}`))}e-${decimals}`) + 0;
            looked += 1;
            return convert(convert(value, from.name, to.name), to.name, from.name) === value;
          },
        ),
        { numRuns: 400, seed: 11 },
      );
    }
    expect(looked).toBe(2_400);
  });

  it('has pairs that plain multiplication and division would not bring back', () => {
    const factor = 0.45359237;
    const values = Array.from({ length: 2_000 }, (_, index) => (index + 1) / 100);
    expect(values.filter((value) => (value * factor) / factor !== value).length).toBeGreaterThan(10);
    expect(values.filter((value) => convert(convert(value, 'lb', 'kg'), 'kg', 'lb') !== value)).toEqual([]);
  });
});

describe('mass and volume', () => {
  it('need a density', () => {
    expect(() => convert(1, 'L', 'kg')).toThrow(RangeError);
    expect(convertAtDensity(1, { from: 'L', to: 'kg', densityKgPerM3: 997.8 })).toBe(0.9978);
    expect(convertAtDensity(0.9978, { from: 'kg', to: 'L', densityKgPerM3: 997.8 })).toBe(1);
    expect(convertAtDensity(20.5, { from: 'L', to: 'mg', densityKgPerM3: 997.8 })).toBe(20_454_900);
    expect(convertAtDensity(2, { from: 'L/d', to: 'kg/d', densityKgPerM3: 1000 })).toBe(2);
    expect(convertAtDensity(2, { from: 'L', to: 'mL', densityKgPerM3: 1000 })).toBe(2000);
  });

  it.each([0, -1, Number.NaN, Number.POSITIVE_INFINITY])('refuse a density of %d', (densityKgPerM3) => {
    expect(() => convertAtDensity(1, { from: 'L', to: 'kg', densityKgPerM3 })).toThrow(RangeError);
  });
});

describe('what has no meaning is thrown back', () => {
  it('kinds that differ, counts, unknown units, numbers that are not finite', () => {
    expect(() => convert(1, 'kPa', 'L')).toThrow(/does not convert/);
    expect(() => convert(1, 'strokes', 'flushes')).toThrow(/does not convert/);
    expect(convert(3, 'strokes', 'strokes')).toBe(3);
    expect(() => convert(1, 'furlong', 'm')).toThrow(/not a unit/);
    expect(() => convert(Number.NaN, 'L', 'mL')).toThrow(RangeError);
    expect(() => convert(Number.NaN, 'L', 'L')).toThrow(RangeError);
    expect(() => convert(1e308, 'kg', 'mg')).toThrow(RangeError);
    expect(() => convertAtDensity(1, { from: 'kPa', to: 'L', densityKgPerM3: 1000 })).toThrow(RangeError);
  });
});

it('converts a difference of temperatures without the offset', () => {
  expect(convertDifference(9, 'degF', 'K')).toBe(5);
  expect(convertDifference(1, 'K', 'degC')).toBe(1);
});
