// Propagation: shares that add up, correlations that carry, and what is refused; published values are in tests/published.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Formula } from './arithmetic.ts';
import { coverageFactor } from './coverage-factor.ts';
import type { Correlation, Doubted } from './doubted.ts';
import { propagate, propagateTogether } from './propagate.ts';
import { secondOrderU } from './second-order.ts';

type Two = 'a' | 'b';
const sum: Formula<Two> = (on, { a, b }) => on.plus(a, b);
const product: Formula<Two> = (on, { a, b }) => on.times(a, b);
const difference: Formula<Two> = (on, { a, b }) => on.minus(a, b);
const inputs = { a: { value: 3, u: 0.3 }, b: { value: 5, u: 0.4 } };

describe('propagation', () => {
  it('adds independent doubts in squares, and says which input made how much', () => {
    const { value, u, degrees, parts, pairs } = propagate({ inputs, formula: sum });
    expect([value, u, degrees]).toEqual([8, 0.5, Number.POSITIVE_INFINITY]);
    expect(parts.map(({ of, sensitivity, u: each }) => [of, sensitivity, each])).toEqual([
      ['a', 1, 0.3],
      ['b', 1, 0.4],
    ]);
    expect(parts[0]!.share).toBeCloseTo(0.36, 15);
    expect(parts[1]!.share).toBeCloseTo(0.64, 15);
    expect(pairs).toEqual([]);
  });

  it('adds errors that are one and the same as they are, and takes them back in a difference', () => {
    const correlations: Correlation<Two>[] = [{ of: ['b', 'a'], r: 1 }];
    expect(propagate({ inputs, correlations, formula: sum }).u).toBeCloseTo(0.7, 15);
    expect(propagate({ inputs, correlations, formula: difference }).u).toBeCloseTo(0.1, 14);
    const same = { a: { value: 3, u: 0.3 }, b: { value: 5, u: 0.3 } };
    expect(propagate({ inputs: same, correlations, formula: difference }).u).toBe(0);
  });

  it('has shares of inputs and pairs that make 1, whatever the correlation', () => {
    let looked = 0;
    fc.assert(
      fc.property(
        fc.double({ min: -1, max: 1, noNaN: true }),
        fc.double({ min: 0.01, max: 2, noNaN: true }),
        (r, u) => {
          const told = {
            inputs: { ...inputs, a: { value: 3, u } },
            correlations: [{ of: ['a', 'b'] as const, r }],
          };
          const { u: whole, parts, pairs } = propagate({ ...told, formula: product });
          if (whole < 1e-6) return;
          const all = [...parts, ...pairs].reduce((shares, { share }) => shares + share, 0);
          expect(all).toBeCloseTo(1, 10);
          // By hand, for a product.
          const byHand = 25 * u * u + 9 * 0.16 + 2 * 15 * r * u * 0.4;
          expect(whole * whole).toBeCloseTo(byHand, 10);
          looked += 1;
        },
      ),
    );
    expect(looked).toBeGreaterThanOrEqual(90);
  });

  it('cuts the degrees of freedom down to those of a part that makes all of the doubt', () => {
    const few = { a: { value: 1, u: 1, degrees: 4 }, b: { value: 1, u: 0 } };
    expect(propagate({ inputs: few, formula: sum }).degrees).toBe(4);
    // What is in no doubt makes nothing, and is not told.
    expect(propagate({ inputs: few, formula: sum }).parts.map(({ of }) => of)).toEqual(['a']);
    const two = { a: { value: 1, u: 1, degrees: 4 }, b: { value: 1, u: 1, degrees: 4 } };
    expect(propagate({ inputs: two, formula: sum }).degrees).toBe(8);
  });

  it('has no degrees of freedom to tell where few go together with another', () => {
    const few: Record<Two, Doubted> = { a: { value: 1, u: 1, degrees: 4 }, b: { value: 1, u: 1 } };
    const correlations: Correlation<Two>[] = [{ of: ['a', 'b'], r: 0.5 }];
    expect(propagate({ inputs: few, correlations, formula: sum }).degrees).toBeNull();
    // One that has no part in the result does not count.
    const justB: Formula<Two> = (on, { b }) => on.scaled(b, 2);
    expect(propagate({ inputs: few, correlations, formula: justB }).degrees).toBe(Number.POSITIVE_INFINITY);
  });

  it('carries what two results have in common', () => {
    const { outputs, covariance, correlation } = propagateTogether({
      inputs,
      formulas: (on, x) => ({ sum: sum(on, x), difference: difference(on, x), sumAgain: sum(on, x) }),
    });
    expect(outputs.sum.u).toBe(0.5);
    expect(covariance('sum', 'difference')).toBeCloseTo(0.09 - 0.16, 15);
    expect(correlation('sum', 'sumAgain')).toBeCloseTo(1, 15);
    expect(covariance('sum', 'sum')).toBeCloseTo(outputs.sum.u * outputs.sum.u, 15);
  });

  it('asks for the same inputs in turn, in doubt and not, within each other', () => {
    const outer: Formula<Two> = (on, { a, b }) =>
      on.plus(on.scaled(a, propagate({ inputs, formula: sum }).u), b);
    for (const u of [0.3, 0, 0.3]) {
      const told = { ...inputs, a: { value: 3, u } };
      expect(propagate({ inputs: told, formula: outer }).u).toBeCloseTo(Math.hypot(0.5 * u, 0.4), 14);
      expect(propagate({ inputs: told, formula: sum }).value).toBe(8);
    }
  });

  it('is straight to first order: the square of what may be 0 has no doubt there, but to second order it has', () => {
    const square: Formula<'a'> = (on, { a }) => on.times(a, a);
    expect(propagate({ inputs: { a: { value: 0, u: 1 } }, formula: square }).u).toBe(0);
    expect(secondOrderU({ inputs: { a: { value: 0, u: 1 } }, formula: square })).toBeCloseTo(Math.SQRT2, 14);
    expect(secondOrderU({ inputs, formula: sum })).toBe(0.5);
  });

  it.each<[string, Record<Two, Doubted>, Correlation<Two>[]]>([
    ['a doubt below 0', { ...inputs, a: { value: 1, u: -1 } }, []],
    ['a doubt that is no number', { ...inputs, a: { value: 1, u: Number.NaN } }, []],
    ['a value that is no number', { ...inputs, a: { value: Number.NaN, u: 1 } }, []],
    ['less than one degree', { ...inputs, a: { value: 1, u: 1, degrees: 0.5 } }, []],
    ['a correlation beyond 1', inputs, [{ of: ['a', 'b'], r: 1.1 }]],
    ['a correlation that is no number', inputs, [{ of: ['a', 'b'], r: Number.NaN }]],
    ['a pair of one and the same', inputs, [{ of: ['a', 'a'], r: 0.1 }]],
    ['an input that is not there', inputs, [{ of: ['a', 'c' as Two], r: 0.1 }]],
    [
      'a pair that is told twice',
      inputs,
      [
        { of: ['a', 'b'], r: 0.1 },
        { of: ['b', 'a'], r: 0.2 },
      ],
    ],
  ])('refuses %s', (_what, told, correlations) => {
    expect(() => propagate({ inputs: told, correlations, formula: sum })).toThrow(RangeError);
  });

  it('refuses correlations that contradict each other, and a result that is no number', () => {
    const three = { a: { value: 1, u: 1 }, b: { value: 1, u: 1 }, c: { value: 1, u: 1 } };
    const of = (...names: ('a' | 'b' | 'c')[]) => names as unknown as readonly ['a', 'b'];
    const correlations = [
      { of: of('a', 'b'), r: 1 },
      { of: of('b', 'c'), r: 1 },
      { of: of('a', 'c'), r: -1 },
    ];
    expect(() => propagate({ inputs: three, correlations, formula: (on, x) => on.plus(x.a, x.b) })).toThrow(
      /contradict/,
    );
    const none: Formula<Two> = (on, { a, b }) => on.over(a, on.minus(b, b));
    expect(() => propagate({ inputs, formula: none })).toThrow(RangeError);
  });
});

describe('coverage', () => {
  it('is 1.96 where u is well known, and wider by Student’s t where it is not', () => {
    expect(coverageFactor({ probability: 0.95 })).toBeCloseTo(1.959964, 6);
    expect(coverageFactor({ probability: 0.95, degrees: 4.9 })).toBeCloseTo(2.776445, 6);
    expect(coverageFactor({ probability: 0.95, degrees: 2e6 })).toBe(coverageFactor({ probability: 0.95 }));
  });

  it.each([
    { probability: 1, degrees: 4 },
    { probability: 0, degrees: 4 },
    { probability: 0.95, degrees: 0.5 },
    { probability: Number.NaN, degrees: 4 },
    { probability: 0.95, degrees: Number.NaN },
  ])('refuses %o', (told) => {
    expect(() => coverageFactor(told)).toThrow(RangeError);
  });
});
