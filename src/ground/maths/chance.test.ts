// Seeded chance: vectors known by heart (those made apart are in tests/published), sameness and shape.
import { describe, expect, it } from 'vitest';
import { type Chance, chanceFromState, seededChance, splitmix64 } from './chance.ts';

function word(chance: Chance): string {
  const { high, low } = chance.nextWords();
  return ((BigInt(high) << 32n) | BigInt(low)).toString();
}

describe('known vectors, from memory', () => {
  it('splitmix64 from 1234567', () => {
    expect(splitmix64(1234567n, 5).map(String)).toEqual([
      '6457827717110365317',
      '3203168211198807973',
      '9817491932198370423',
      '4593380528125082431',
      '16408922859458223821',
    ]);
  });

  it('xoshiro256** from 1, 2, 3, 4', () => {
    const chance = chanceFromState([1n, 2n, 3n, 4n]);
    expect([word(chance), word(chance), word(chance), word(chance)]).toEqual([
      '11520',
      '0',
      '1509978240',
      '1215971899390074240',
    ]);
  });
});

describe('a seed', () => {
  it('gives the same numbers again, and another seed or stream others', () => {
    const draw = (asked: { seed: number; stream?: number }): number[] => {
      const chance = seededChance(asked);
      return Array.from({ length: 20 }, () => chance.normal());
    };
    expect(draw({ seed: 7 })).toEqual(draw({ seed: 7, stream: 0 }));
    expect(draw({ seed: 7 })).not.toEqual(draw({ seed: 8 }));
    expect(draw({ seed: 7, stream: 1 })).not.toEqual(draw({ seed: 7, stream: 2 }));
    expect(draw({ seed: 7, stream: 1 })).not.toEqual(draw({ seed: 7 }));
  });

  it.each([-1, 0.5, Number.NaN, 2 ** 53])('%d is refused', (seed) => {
    expect(() => seededChance({ seed })).toThrow(RangeError);
    expect(() => seededChance({ seed: 1, stream: seed })).toThrow(RangeError);
  });

  it('a state of zeros is refused', () => {
    expect(() => chanceFromState([0n, 0n, 0n, 0n])).toThrow(RangeError);
    expect(() => chanceFromState([1n])).toThrow(RangeError);
  });
});

/** Moments of so many numbers, each within five of its own standard errors; the seed is fixed, so the answer never changes. */
describe('shape', () => {
  const count = 200_000;

  it('uniform: mean 1/2, variance 1/12, all of [0, 1), tenths alike', () => {
    const chance = seededChance({ seed: 2147 });
    const values = Array.from({ length: count }, chance.uniform);
    const mean = values.reduce((sum, x) => sum + x, 0) / count;
    const variance = values.reduce((sum, x) => sum + (x - 0.5) * (x - 0.5), 0) / count;
    expect(Math.abs(mean - 0.5)).toBeLessThan(5 * Math.sqrt(1 / 12 / count));
    expect(Math.abs(variance - 1 / 12)).toBeLessThan(5 * Math.sqrt(1 / 180 / count));
    expect(Math.min(...values.slice(0, 50_000))).toBeGreaterThanOrEqual(0);
    expect(Math.max(...values.slice(0, 50_000))).toBeLessThan(1);
    const tenths = new Array<number>(10).fill(0);
    for (const x of values) tenths[Math.floor(x * 10)] = (tenths[Math.floor(x * 10)] ?? 0) + 1;
    const chiSquare = tenths.reduce((sum, n) => sum + (n - count / 10) ** 2 / (count / 10), 0);
    expect(chiSquare).toBeLessThan(27.9); // 99.9 % of nine degrees of freedom, from memory.
  });

  it('normal: mean 0, variance 1, skewness 0, fourth moment 3, tails as they should be', () => {
    const chance = seededChance({ seed: 46 });
    const values = Array.from({ length: count }, chance.normal);
    const moment = (power: number): number => values.reduce((sum, x) => sum + x ** power, 0) / count;
    expect(Math.abs(moment(1))).toBeLessThan(5 * Math.sqrt(1 / count));
    expect(Math.abs(moment(2) - 1)).toBeLessThan(5 * Math.sqrt(2 / count));
    expect(Math.abs(moment(3))).toBeLessThan(5 * Math.sqrt(15 / count));
    expect(Math.abs(moment(4) - 3)).toBeLessThan(5 * Math.sqrt(96 / count));
    const beyond = values.filter((x) => Math.abs(x) > 1.959963984540054).length / count;
    expect(Math.abs(beyond - 0.05)).toBeLessThan(5 * Math.sqrt((0.05 * 0.95) / count));
  });

  it('whole numbers below a count are all reached and alike', () => {
    const chance = seededChance({ seed: 3 });
    const seen = new Array<number>(7).fill(0);
    for (let step = 0; step < 70_000; step += 1) {
      const drawn = chance.integerBelow(7);
      seen[drawn] = (seen[drawn] ?? 0) + 1;
    }
    for (const n of seen) expect(Math.abs(n - 10_000)).toBeLessThan(5 * Math.sqrt(10_000 * (6 / 7)));
    expect(chance.integerBelow(1)).toBe(0);
    for (const count of [0, -1, 1.5, Number.NaN, 2 ** 33])
      expect(() => chance.integerBelow(count)).toThrow(RangeError);
  });
});
