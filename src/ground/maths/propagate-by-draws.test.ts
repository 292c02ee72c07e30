// Draws: the shapes of the inputs, what goes together, intervals, and what draws say of propagation.
import { describe, expect, it } from 'vitest';
import type { Formula } from './arithmetic.ts';
import { isBorneOut } from './borne-out.ts';
import { chiSquareQuantile } from './chi-square.ts';
import type { Doubted } from './doubted.ts';
import { normalCdf } from './normal-distribution.ts';
import { propagate } from './propagate.ts';
import { propagateByDraws } from './propagate-by-draws.ts';
import { studentCdf } from './student.ts';

const itself: Formula<'a'> = (on, { a }) => on.shifted(a, 0);
const drawn = (a: Doubted, seed = 11) =>
  propagateByDraws({ inputs: { a }, formula: itself, seed, draws: 50_000 });

/** Chance alone keeps the greatest distance of 50 000 draws from their distribution below this, but for 1 in 1000. */
const FARTHEST = 1.95 / Math.sqrt(50_000);

function farthest(sorted: Float64Array, cdf: (x: number) => number): number {
  let most = 0;
  sorted.forEach((x, at) => {
    const below = cdf(x);
    most = Math.max(most, Math.abs(below - at / sorted.length), Math.abs(below - (at + 1) / sorted.length));
  });
  return most;
}

const root3 = Math.sqrt(3);
const root6 = Math.sqrt(6);
const triangularCdf = (x: number): number => {
  const t = (x - 5) / (2 * root6);
  return t < 0 ? ((1 + t) * (1 + t)) / 2 : 1 - ((1 - t) * (1 - t)) / 2;
};

describe('shapes', () => {
  it.each<[string, Doubted, (x: number) => number]>([
    ['normal', { value: 5, u: 2 }, (x) => normalCdf((x - 5) / 2)],
    ['rectangular', { value: 5, u: 2, shape: 'rectangular' }, (x) => (x - 5 + 2 * root3) / (4 * root3)],
    ['triangular', { value: 5, u: 2, shape: 'triangular' }, triangularCdf],
    [
      'student',
      { value: 5, u: 2, degrees: 3, shape: 'student' },
      (x) => studentCdf({ t: (x - 5) / 2, degrees: 3 }),
    ],
    [
      'student of half degrees',
      { value: 5, u: 2, degrees: 7.5, shape: 'student' },
      (x) => studentCdf({ t: (x - 5) / 2, degrees: 7.5 }),
    ],
  ])('%s is drawn as it should lie', (_name, told, cdf) => {
    const { sorted } = drawn(told);
    expect(farthest(sorted, cdf)).toBeLessThan(FARTHEST);
    // The control: another middle would be seen.
    expect(farthest(sorted, (x) => cdf(x - 0.1))).toBeGreaterThan(FARTHEST);
  });

  it('an input in no doubt is always the same', () => {
    const { sorted, u } = drawn({ value: 5, u: 0 });
    expect([sorted[0], sorted.at(-1), u]).toEqual([5, 5, 0]);
  });

  it('keeps the spread of a value that is large beside it', () => {
    const { u } = drawn({ value: 1e9, u: 1e-3 });
    expect(u).toBeGreaterThan(0.98e-3);
    expect(u).toBeLessThan(1.02e-3);
  });
});

describe('what goes together', () => {
  type Two = 'a' | 'b';
  const inputs = { a: { value: 1, u: 3 }, b: { value: 2, u: 4 } };
  const formula: Formula<Two> = (on, { a, b }) => on.minus(a, b);
  it.each([-1, -0.6, 0, 0.8, 1])('has the doubt of propagation at r = %d', (r) => {
    const told = { inputs, correlations: [{ of: ['a', 'b'] as const, r }], formula };
    const { u } = propagateByDraws({ ...told, seed: 3, draws: 100_000 });
    const expected = propagate(told).u;
    // The variance of so many normal draws is a chi-square over its degrees.
    const high = chiSquareQuantile({ probability: 0.9995, degrees: 99_999 }) / 99_999;
    expect((u * u) / (expected * expected)).toBeLessThan(high);
    expect((expected * expected) / (u * u)).toBeLessThan(high);
  });

  it('refuses another shape than the normal to go together with anything', () => {
    const crooked = { ...inputs, b: { value: 2, u: 4, shape: 'rectangular' } as const };
    const told = { inputs: crooked, correlations: [{ of: ['a', 'b'] as const, r: 0.5 }], formula };
    expect(() => propagateByDraws({ ...told, seed: 3 })).toThrow(/normal/);
  });
});

describe('intervals', () => {
  it('of a skew result: the shortest lies nearer to the middle of the heap, and holds as much', () => {
    const square: Formula<'a'> = (on, { a }) => on.times(a, a);
    const { sorted, symmetric, shortest, value } = propagateByDraws({
      inputs: { a: { value: 0, u: 1 } },
      ...{ formula: square, seed: 5, draws: 200_000, probability: 0.9 },
    });
    const held = ({ low, high }: { low: number; high: number }): number =>
      sorted.filter((x) => x >= low && x <= high).length / sorted.length;
    expect(held(symmetric)).toBeCloseTo(0.9, 3);
    expect(held(shortest)).toBeCloseTo(0.9, 3);
    expect(shortest.high - shortest.low).toBeLessThan(symmetric.high - symmetric.low);
    expect(shortest.low).toBeLessThan(0.001);
    expect(value).toBeCloseTo(1, 1);
    // Chi-square of one degree.
    expect(symmetric.high).toBeCloseTo(chiSquareQuantile({ probability: 0.95, degrees: 1 }), 1);
  });

  it('come out the same from the same seed, and otherwise from another', () => {
    const told: Doubted = { value: 5, u: 2 };
    expect(drawn(told, 8)).toEqual(drawn(told, 8));
    expect(drawn(told, 9).value).not.toBe(drawn(told, 8).value);
  });

  it.each([
    { draws: 10_000 },
    { draws: 25_000 },
    { draws: Number.NaN },
    { probability: 0.995 },
    { probability: 0 },
  ])('refuses %o', (odd) => {
    const told = { inputs: { a: { value: 1, u: 1 } }, formula: itself, seed: 1, draws: 20_000, ...odd };
    expect(() => propagateByDraws(told)).toThrow(RangeError);
  });

  it('says it when a draw falls where the formula has no value', () => {
    const log: Formula<'a'> = (on, { a }) => on.log(a);
    expect(() => propagateByDraws({ inputs: { a: { value: 1, u: 1 } }, formula: log, seed: 1 })).toThrow(
      /no value/,
    );
  });
});

describe('draws bear propagation out', () => {
  const told = { inputs: { a: { value: 5, u: 0.2 } }, seed: 7, draws: 1_000_000 };
  it('where the formula is straight', () => {
    const propagated = propagate({ ...told, formula: itself });
    const outcome = isBorneOut({
      propagated,
      drawn: propagateByDraws({ ...told, formula: itself }),
      digits: 1,
    });
    expect(outcome.verdict).toBe('borne out');
    expect(outcome.tolerance).toBeCloseTo(0.05, 15);
  });

  it('and not where it bends', () => {
    const bent: Formula<'a'> = (on, { a }) => on.exp(on.scaled(a, 3));
    const propagated = propagate({ ...told, formula: bent });
    expect(
      isBorneOut({ propagated, drawn: propagateByDraws({ ...told, formula: bent }), digits: 1 }).verdict,
    ).toBe('not borne out');
  });

  it('and tell nothing where there are too few', () => {
    const propagated = propagate({ ...told, formula: itself });
    const few = propagateByDraws({ ...told, formula: itself, draws: 20_000 });
    expect(isBorneOut({ propagated, drawn: few, digits: 2 }).verdict).toBe('not settled');
  });

  it.each([
    [0.0996, 2, 0.005],
    [0.0994, 2, 0.0005],
    [31.67, 2, 0.5],
    [9.6, 1, 5],
    [0.1, 1, 0.05],
  ] as const)('u = %d in %d digits may be off by %d', (u, digits, tolerance) => {
    const few = propagateByDraws({ ...told, formula: itself, draws: 20_000 });
    const propagated = { value: 5, u, degrees: null };
    expect(isBorneOut({ propagated, drawn: few, digits }).tolerance).toBeCloseTo(tolerance, 12);
  });

  it('refuses a result that is in no doubt', () => {
    const few = propagateByDraws({ ...told, formula: itself, draws: 20_000 });
    expect(() => isBorneOut({ propagated: { value: 5, u: 0, degrees: null }, drawn: few })).toThrow(
      RangeError,
    );
  });
});
