// The likeliest normal distribution of censored values: what it is without any, how it moves, and that it is the top.
import { describe, expect, it } from 'vitest';
import { type CensoredValues, censoredNormal } from './censored-normal.ts';
import { seededChance } from './chance.ts';
import { log } from './logarithm.ts';
import { normalCdf, normalQuantile } from './normal-distribution.ts';

const mustFit = (values: CensoredValues) => {
  const fit = censoredNormal(values);
  if (fit === null) throw new Error('no fit');
  return fit;
};

function likelihood(
  { seen, below, above }: CensoredValues,
  { mean, sd }: { mean: number; sd: number },
): number {
  const z = (x: number) => (x - mean) / sd;
  return [
    ...seen.map((x) => -log(sd) - (z(x) * z(x)) / 2),
    ...below.map((x) => log(normalCdf(z(x)))),
    ...above.map((x) => log(normalCdf(-z(x)))),
  ].reduce((sum, part) => sum + part, 0);
}

describe('a censored normal', () => {
  it('is the mean and the root of the mean square where everything was seen', () => {
    const { mean, sd } = mustFit({ seen: [1, 3, 8], below: [], above: [] });
    expect(mean).toBeCloseTo(4, 12);
    expect(sd).toBeCloseTo(Math.sqrt(26 / 3), 12);
  });

  it('is at the top of the likelihood', () => {
    const values = { seen: [0.3, 0.5, 0.2, 0.9], below: [0.1, 0.1, 0.2], above: [1.5] };
    const top = mustFit(values);
    const height = likelihood(values, top);
    let looked = 0;
    for (const [a, b] of [
      [1, 0],
      [-1, 0],
      [0, 1],
      [0, -1],
      [1, 1],
      [-1, -1],
      [1, -1],
      [-1, 1],
    ] as const)
      for (const size of [1e-4, 1e-2, 0.1]) {
        looked += 1;
        expect(likelihood(values, { mean: top.mean + a * size, sd: top.sd + b * size })).toBeLessThan(height);
      }
    expect(looked).toBe(24);
  });

  it('moves and grows with the values, and is mirrored with them', () => {
    const values = { seen: [1, 2, 3, 5, 4], below: [1, 1], above: [] };
    const one = mustFit(values);
    const scaled = (list: readonly number[]) => list.map((x) => 100 - 3 * x);
    const other = mustFit({ seen: scaled(values.seen), below: [], above: scaled(values.below) });
    expect(other.mean).toBeCloseTo(100 - 3 * one.mean, 10);
    expect(other.sd).toBeCloseTo(3 * one.sd, 10);
  });

  it('finds what was drawn, where putting the bound in for the value does not', () => {
    const chance = seededChance({ seed: 11 });
    const drawn = Array.from({ length: 2000 }, () => 5 + 2 * normalQuantile(chance.uniform()));
    const seen = drawn.filter((x) => x >= 4.5);
    const below = drawn.filter((x) => x < 4.5).map(() => 4.5);
    const { mean, sd } = mustFit({ seen, below, above: [] });
    expect(Math.abs(mean - 5)).toBeLessThan(0.2);
    expect(Math.abs(sd - 2)).toBeLessThan(0.15);
    const naive = [...seen, ...below].reduce((sum, x) => sum + x, 0) / drawn.length;
    expect(Math.abs(naive - 5)).toBeGreaterThan(0.4);
  });

  it('is none of a single seen value or of values that do not differ, and refuses what is no number', () => {
    expect(censoredNormal({ seen: [1], below: [0.5], above: [] })).toBeNull();
    expect(censoredNormal({ seen: [2, 2, 2], below: [], above: [] })).toBeNull();
    expect(censoredNormal({ seen: [], below: [1], above: [] })).toBeNull();
    expect(() => censoredNormal({ seen: [1, Number.POSITIVE_INFINITY], below: [], above: [] })).toThrow(
      RangeError,
    );
  });
});
