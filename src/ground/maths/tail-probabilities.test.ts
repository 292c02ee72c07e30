// The chi-square and Student's distribution: relations that need no table, and what is refused.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chiSquareCdf, chiSquareQuantile, chiSquareUpper } from './chi-square.ts';
import { normalCdf, normalQuantile } from './normal-distribution.ts';
import { studentCdf, studentQuantile } from './student.ts';

const degreesOf = fc.oneof(fc.integer({ min: 1, max: 300 }), fc.double({ min: 1, max: 5000, noNaN: true }));
const probabilities = fc.double({ min: 1e-12, max: 1 - 1e-9, noNaN: true });

describe('chi-square', () => {
  it('of one degree is the square of a normal number, of two an exponential', () => {
    for (const z of [0.01, 0.3, 1, 1.96, 3, 5]) {
      expect(chiSquareUpper({ value: z * z, degrees: 1 }) / (2 * normalCdf(-z)) - 1).toBeCloseTo(0, 13);
      expect(chiSquareUpper({ value: z, degrees: 2 }) / Math.exp(-z / 2) - 1).toBeCloseTo(0, 13);
    }
  });

  it('has tails that add up to one, and a quantile that turns the probability around', () => {
    fc.assert(
      fc.property(probabilities, degreesOf, (probability, degrees) => {
        const value = chiSquareQuantile({ probability, degrees });
        const lower = chiSquareCdf({ value, degrees });
        const upper = chiSquareUpper({ value, degrees });
        expect(lower + upper).toBeCloseTo(1, 13);
        const miss = probability <= 0.5 ? lower / probability - 1 : upper / (1 - probability) - 1;
        // The value itself is rounded, and a tail falls the faster the more degrees there are.
        expect(Math.abs(miss)).toBeLessThan(1e-13 * Math.max(1, Math.sqrt(degrees)));
      }),
      { seed: 41 },
    );
  });

  it('rises with the value and falls with the degrees', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 400, noNaN: true }), degreesOf, (value, degrees) => {
        const here = chiSquareUpper({ value, degrees });
        expect(chiSquareUpper({ value: value * 1.01, degrees })).toBeLessThanOrEqual(here);
        expect(chiSquareUpper({ value, degrees: degrees * 1.01 })).toBeGreaterThanOrEqual(here * (1 - 1e-13));
      }),
      { seed: 42 },
    );
  });

  it('ends where it must', () => {
    expect(chiSquareCdf({ value: 0, degrees: 3 })).toBe(0);
    expect(chiSquareUpper({ value: -1, degrees: 3 })).toBe(1);
    expect(chiSquareUpper({ value: Number.POSITIVE_INFINITY, degrees: 3 })).toBe(0);
    expect(chiSquareQuantile({ probability: 0, degrees: 3 })).toBe(0);
    expect(chiSquareQuantile({ probability: 1, degrees: 3 })).toBe(Number.POSITIVE_INFINITY);
    // Near nothing it is value / 2 of two degrees, down among the smallest numbers.
    expect(chiSquareCdf({ value: 1e-300, degrees: 2 }) / 5e-301).toBeCloseTo(1, 12);
  });

  it.each([0, -1, 0.5, 1e7, Number.NaN, Number.POSITIVE_INFINITY])('refuses %s degrees', (degrees) => {
    expect(() => chiSquareCdf({ value: 1, degrees })).toThrow(RangeError);
    expect(() => chiSquareQuantile({ probability: 0.5, degrees })).toThrow(RangeError);
  });

  it.each([-0.1, 1.1, 1e-200, Number.NaN])('refuses the probability %s', (probability) => {
    expect(() => chiSquareQuantile({ probability, degrees: 3 })).toThrow(RangeError);
    expect(() => chiSquareCdf({ value: Number.NaN, degrees: 3 })).toThrow(RangeError);
  });
});

describe("Student's distribution", () => {
  it('of one degree is a ratio of right angles, of many the normal one', () => {
    for (const t of [-40, -2, -0.1, 0, 0.5, 1, 7]) {
      expect(studentCdf({ t, degrees: 1 })).toBeCloseTo(0.5 + Math.atan(t) / Math.PI, 14);
      // The difference is about (t³ + t) / 4 over the degrees, times the density.
      expect(studentCdf({ t, degrees: 1e6 })).toBeCloseTo(normalCdf(t), 6);
    }
    expect(studentQuantile({ probability: 0.975, degrees: 1e6 })).toBeCloseTo(normalQuantile(0.975), 5);
  });

  it('is even, and its quantile turns the probability around', () => {
    fc.assert(
      fc.property(probabilities, degreesOf, (probability, degrees) => {
        const t = studentQuantile({ probability, degrees });
        const below = studentCdf({ t: -Math.abs(t), degrees });
        const smaller = Math.min(probability, 1 - probability);
        expect(Math.abs(below / smaller - 1)).toBeLessThan(1e-13);
        expect(studentCdf({ t, degrees }) + studentCdf({ t: -t, degrees })).toBeCloseTo(1, 14);
      }),
      { seed: 43 },
    );
  });

  it('has the heavier tail the fewer the degrees', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.1, max: 30, noNaN: true }), degreesOf, (t, degrees) => {
        const here = studentCdf({ t: -t, degrees });
        expect(studentCdf({ t: -t, degrees: degrees * 1.1 })).toBeLessThanOrEqual(here * (1 + 1e-13));
        expect(studentCdf({ t: -t * 1.01, degrees })).toBeLessThan(here);
      }),
      { seed: 44 },
    );
  });

  it('ends where it must', () => {
    expect(studentCdf({ t: Number.NEGATIVE_INFINITY, degrees: 4 })).toBe(0);
    expect(studentCdf({ t: Number.POSITIVE_INFINITY, degrees: 4 })).toBe(1);
    expect(studentCdf({ t: 0, degrees: 4 })).toBe(0.5);
    expect(studentQuantile({ probability: 0.5, degrees: 4 })).toBe(0);
    expect(studentQuantile({ probability: 0, degrees: 4 })).toBe(Number.NEGATIVE_INFINITY);
    expect(studentQuantile({ probability: 1, degrees: 4 })).toBe(Number.POSITIVE_INFINITY);
    // The tail of three degrees is 2 √3 / π over the third power of t.
    expect((studentCdf({ t: -1e90, degrees: 3 }) * 1e270 * Math.PI) / (2 * Math.sqrt(3))).toBeCloseTo(1, 10);
  });

  it.each([0, 0.9, -3, 1e7, Number.NaN])('refuses %s degrees', (degrees) => {
    expect(() => studentCdf({ t: 1, degrees })).toThrow(RangeError);
    expect(() => studentQuantile({ probability: 0.9, degrees })).toThrow(RangeError);
  });

  it('refuses a t or a probability out of range', () => {
    for (const t of [Number.NaN, 1e101, -1e300])
      expect(() => studentCdf({ t, degrees: 4 })).toThrow(RangeError);
    for (const probability of [-1, 2, Number.NaN, 1e-150])
      expect(() => studentQuantile({ probability, degrees: 4 })).toThrow(RangeError);
  });
});
