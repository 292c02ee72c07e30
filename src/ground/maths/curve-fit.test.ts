// Fits: straight ones are those of least squares, verdicts are honest, bounds hold; certified fits are in tests/published.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { seededChance } from './chance.ts';
import { curveFit } from './curve-fit.ts';
import type { Curve } from './curve-surface.ts';
import { exp } from './exponential.ts';
import { leastSquares } from './least-squares.ts';
import { matrixOf } from './matrix.ts';

const line: Curve<'a' | 'b', number> = (on, { a, b }, x) => on.plus(a, on.scaled(b, x));
const decay: Curve<'a' | 'k', number> = (on, { a, k }, t) => on.times(a, on.exp(on.scaled(k, -t)));
const noisy = (seed: number, of: (x: number) => number, u: number, count = 12) => {
  const chance = seededChance({ seed });
  return Array.from({ length: count }, (_, x) => ({ at: x, value: of(x) + u * chance.normal() }));
};

describe('a straight line', () => {
  it('is that of least squares, with its covariance', () => {
    let looked = 0;
    fc.assert(
      fc.property(fc.nat({ max: 10_000 }), (seed) => {
        const points = noisy(seed, (x) => 2 + 0.5 * x, 0.1);
        const fit = curveFit({ curve: line, points, start: { a: 0, b: 0 } });
        const straight = leastSquares(
          matrixOf(points.map(({ at }) => [1, at])),
          Float64Array.from(points, ({ value }) => value),
        );
        expect(fit.verdict).toBe('settled');
        expect(fit.parameters.a).toBeCloseTo(straight.solution[0]!, 11);
        expect(fit.parameters.b).toBeCloseTo(straight.solution[1]!, 11);
        straight.covariance.values.forEach((each, at) => {
          expect(fit.unscaled!.values[at]!).toBeCloseTo(each, 12);
          expect(fit.covariance!.values[at]!).toBeCloseTo((each * straight.sumOfSquares) / 10, 12);
        });
        expect(fit.degrees).toBe(10);
        looked += 1;
      }),
      { numRuns: 50 },
    );
    expect(looked).toBe(50);
  });

  it('told doubts weigh the points and stand in the covariance as they are', () => {
    const points = [
      { at: 0, value: 1, u: 0.1 },
      { at: 0, value: 2, u: 0.2 },
    ];
    const mean: Curve<'m', number> = (on, { m }) => on.shifted(m, 0);
    const { parameters, u, covariance, unscaled, scaled, residualU } = curveFit({
      curve: mean,
      points,
      start: { m: 0 },
    });
    // By hand: weights 100 and 25, chi-square (0.2/0.1)² + (0.8/0.2)² = 20.
    expect(parameters.m).toBeCloseTo(1.2, 12);
    expect(u.m).toBeCloseTo(Math.sqrt(1 / 125), 12);
    expect(covariance).toEqual(unscaled);
    expect(scaled!.values[0]!).toBeCloseTo(20 / 125, 10);
    expect(residualU).toBeCloseTo(Math.sqrt(20), 10);
  });
});

describe('a curve', () => {
  it('comes back from points that lie on it, whatever the start nearby', () => {
    const points = Array.from({ length: 8 }, (_, t) => ({ at: t, value: 3 * exp(-0.4 * t) }));
    let looked = 0;
    fc.assert(
      fc.property(
        fc.double({ min: 0.5, max: 6, noNaN: true }),
        fc.double({ min: 0.05, max: 1.5, noNaN: true }),
        (a, k) => {
          const fit = curveFit({ curve: decay, points, start: { a, k } });
          expect(fit.verdict).toBe('settled');
          expect(fit.parameters.a).toBeCloseTo(3, 10);
          expect(fit.parameters.k).toBeCloseTo(0.4, 10);
          expect(fit.sumOfSquares).toBeLessThan(1e-25);
          looked += 1;
        },
      ),
    );
    expect(looked).toBe(100);
  });

  it('has doubts that hold the truth as often as they say', () => {
    let within = 0;
    for (let seed = 1; seed <= 400; seed += 1) {
      const { parameters, u } = curveFit({
        curve: decay,
        points: noisy(seed, (t) => 3 * exp(-0.4 * t), 0.05),
        start: { a: 1, k: 1 },
      });
      // Student's t of 10 degrees, 95 %.
      if (Math.abs(parameters.k - 0.4) < 2.228139 * u.k) within += 1;
    }
    // 380 of 400 expected, with a standard deviation of 4.4.
    expect(within).toBeGreaterThan(366);
    expect(within).toBeLessThan(394);
  });

  it('takes points of more than a number', () => {
    const plane: Curve<'a' | 'b', { x: number; y: number }> = (on, { a, b }, { x, y }) =>
      on.plus(on.scaled(a, x), on.scaled(b, y));
    const points = [
      { at: { x: 1, y: 0 }, value: 2 },
      { at: { x: 0, y: 1 }, value: 3 },
      { at: { x: 1, y: 1 }, value: 5 },
    ];
    expect(curveFit({ curve: plane, points, start: { a: 0, b: 0 } }).parameters).toEqual({ a: 2, b: 3 });
  });
});

describe('bounds', () => {
  const points = noisy(4, (x) => -1 + 0.5 * x, 0.1);
  it('hold a parameter that would leave, and the others are the best beside it', () => {
    const fit = curveFit({ curve: line, points, start: { a: 1, b: 0 }, bounds: { a: { low: 0 } } });
    const through = leastSquares(
      matrixOf(points.map(({ at }) => [at])),
      Float64Array.from(points, ({ value }) => value),
    );
    expect(fit.verdict).toBe('settled');
    expect(fit.atBound).toEqual(['a']);
    expect([fit.parameters.a, fit.u.a]).toEqual([0, 0]);
    expect(fit.parameters.b).toBeCloseTo(through.solution[0]!, 11);
    expect(fit.degrees).toBe(11);
  });

  it('are left where the sum falls inside', () => {
    const free = curveFit({ curve: line, points, start: { a: 0, b: 0 } });
    const bounded = curveFit({
      curve: line,
      points,
      start: { a: 0, b: 0 },
      bounds: { a: { high: 0 }, b: { low: 0 } },
    });
    expect(bounded.atBound).toEqual([]);
    expect(bounded.parameters.a).toBeCloseTo(free.parameters.a, 10);
  });
});

describe('verdicts', () => {
  it('undetermined: two parameters that only count as their sum', () => {
    const twins: Curve<'a' | 'b', number> = (on, { a, b }, x) => on.scaled(on.plus(a, b), x);
    const fit = curveFit({ curve: twins, points: noisy(1, (x) => x, 0.1), start: { a: 0, b: 0 } });
    expect(fit.verdict).toBe('undetermined');
    expect(fit.covariance).toBeNull();
    expect(fit.parameters.a + fit.parameters.b).toBeCloseTo(1, 1);
  });

  it('out of steps: still on its way', () => {
    const points = noisy(2, (t) => 3 * exp(-0.4 * t), 0.05);
    expect(curveFit({ curve: decay, points, start: { a: 1, k: 1.4 }, mostSteps: 2 }).verdict).toBe(
      'out of steps',
    );
  });

  it('is not settled on a plateau from which nothing leads down, though no step is left', () => {
    // BoxBOD of the certified sets, from its first start.
    const rising: Curve<'b1' | 'b2', number> = (on, { b1, b2 }, x) =>
      on.times(b1, on.shifted(on.scaled(on.exp(on.scaled(b2, -x)), -1), 1));
    const values = [109, 149, 149, 191, 213, 224];
    const points = [1, 2, 3, 5, 7, 10].map((at, row) => ({ at, value: values[row]! }));
    const fit = curveFit({ curve: rising, points, start: { b1: 1, b2: 1 } });
    expect(['stuck', 'undetermined', 'out of steps']).toContain(fit.verdict);
    expect(fit.sumOfSquares).toBeGreaterThan(1168.1);
  });

  it('settled with as many points as parameters: no doubt can be told', () => {
    const fit = curveFit({
      curve: line,
      points: [
        { at: 0, value: 1 },
        { at: 1, value: 3 },
      ],
      start: { a: 0, b: 0 },
    });
    expect([fit.verdict, fit.degrees, fit.covariance]).toEqual(['settled', 0, null]);
    expect(fit.u.a).toBeNaN();
    expect(fit.unscaled).not.toBeNull();
  });
});

describe('refuses', () => {
  const points = noisy(1, (x) => x, 0.1);
  it.each([
    ['fewer points than parameters', { points: points.slice(0, 1) }],
    ['doubts of some points only', { points: [{ ...points[0]!, u: 1 }, ...points.slice(1)] }],
    ['a doubt of 0', { points: points.map((point) => ({ ...point, u: 0 })) }],
    ['a value that is no number', { points: [...points, { at: 3, value: Number.NaN }] }],
    ['a start beyond its bounds', { bounds: { a: { high: -1 } } }],
    ['a start that is no number', { start: { a: Number.NaN, b: 0 } }],
  ])('%s', (_what, odd) => {
    expect(() => curveFit({ curve: line, points, start: { a: 0, b: 0 }, ...odd })).toThrow(RangeError);
  });

  it('a start at which the curve has no value', () => {
    const root: Curve<'a', number> = (on, { a }, x) => on.log(on.scaled(a, x));
    expect(() => curveFit({ curve: root, points, start: { a: -1 } })).toThrow(/no finite value/);
  });
});
