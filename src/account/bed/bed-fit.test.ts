// The fit of a bed: relations that must hold, its ends, and a plain fine grid beside it.
import { describe, expect, test } from 'vitest';
import { exp, log } from '../../ground/maths/index.ts';
import { curveAt, readingOf } from './bed-axes.ts';
import { type FitReading, fitBed, OWN_SCATTER } from './bed-fit.ts';

const DOUBT = { random: 0.085, calibration: 0.05 };
const PRIOR = { lifeL: 850, lifeUL: 120, limit: 3 };
const told = (...pairs: readonly (readonly [number, number])[]): FitReading[] =>
  pairs.map(([throughputL, value]) => ({ throughputL, value, below: false }));
const RISING = told([700, 0.7], [720, 1], [740, 1.5], [760, 2.1]);

test('a curve meets its limit where it says', () => {
  for (const point of [
    [0, 0, 0, 0],
    [-1, 1, 2, -1],
    [2, -2, -1, 1],
  ]) {
    const curve = curveAt(Float64Array.from(point), PRIOR);
    if (curve === null) throw new Error('no curve');
    expect(readingOf(curve, PRIOR.limit)(curve.limitAtL)).toBeCloseTo(PRIOR.limit, 9);
    expect(readingOf(curve, PRIOR.limit)(50 * curve.limitAtL)).toBeCloseTo(curve.ceiling, 6);
  }
});

describe('the fit', () => {
  test('without a reading it is what the file says', () => {
    const fit = fitBed([], DOUBT, PRIOR);
    expect(fit.limitAtL).toBeCloseTo(850, 0);
    expect(fit.limitAtUL / 120).toBeCloseTo(1, 1);
  });

  test('its weights are those of one distribution', () => {
    const { cases } = fitBed(RISING, DOUBT, PRIOR);
    expect(cases.reduce((sum, { weight }) => sum + weight, 0)).toBeCloseTo(1, 12);
    for (const { base, ceiling, limitAtL } of cases) {
      expect(base).toBeLessThan(PRIOR.limit / 2);
      expect(ceiling).toBeGreaterThan(PRIOR.limit);
      expect(limitAtL).toBeGreaterThan(0);
    }
  });

  test('a rise near the limit says more than the file, and every reading narrows it', () => {
    const widths = [1, 2, 3, 4].map((count) => fitBed(RISING.slice(0, count), DOUBT, PRIOR).limitAtUL);
    expect(widths[3]).toBeLessThan(20);
    expect(widths[3]).toBeLessThan((widths[0] ?? 0) / 4);
  });

  test('it does not depend on the order of the readings', () => {
    const [one, other] = [RISING, RISING.toReversed()].map((readings) => fitBed(readings, DOUBT, PRIOR));
    expect(one?.limitAtL).toBeCloseTo(other?.limitAtL ?? 0, 6);
  });

  test('in other units of throughput it is the same fit', () => {
    const tenfold = RISING.map((one) => ({ ...one, throughputL: 10 * one.throughputL }));
    const fit = fitBed(tenfold, DOUBT, { lifeL: 8500, lifeUL: 1200, limit: 3 });
    expect(fit.limitAtL / 10).toBeCloseTo(fitBed(RISING, DOUBT, PRIOR).limitAtL, 3);
  });

  test('nothing found is less than its detection limit, and puts the limit later than a reading at it', () => {
    const at = { throughputL: 800, value: 1, below: false };
    const below = { ...at, below: true };
    const [found, notFound] = [[at], [below]].map((readings) => fitBed(readings, DOUBT, PRIOR).limitAtL);
    expect(notFound).toBeGreaterThan(found ?? 0);
    expect(notFound).toBeGreaterThan(850);
  });

  test('a reading above the limit says that it was passed', () => {
    expect(fitBed(told([700, 5]), DOUBT, PRIOR).limitAtL).toBeLessThan(700);
  });

  test('what is no number is refused', () => {
    expect(() => fitBed(told([Number.NaN, 1]), DOUBT, PRIOR)).toThrow(RangeError);
    expect(() => fitBed(told([700, Number.NaN]), DOUBT, PRIOR)).toThrow(RangeError);
    expect(() => fitBed(RISING, { random: 0, calibration: 0 }, PRIOR)).toThrow(RangeError);
    expect(() => fitBed(RISING, DOUBT, { ...PRIOR, lifeUL: 0 })).toThrow(RangeError);
    expect(() => fitBed(RISING, DOUBT, { ...PRIOR, limit: Number.NaN })).toThrow(RangeError);
  });

  test('a plain fine grid of the same assumptions says the same', () => {
    const fit = fitBed(RISING, DOUBT, PRIOR);
    const plain = plainGrid(RISING);
    expect(Math.abs(fit.limitAtL - plain.mean)).toBeLessThan(1.5);
    expect(fit.limitAtUL / plain.u).toBeGreaterThan(0.9);
    expect(fit.limitAtUL / plain.u).toBeLessThan(1.1);
  });
});

/** Even steps over everything that the prior allows, by the textbook: slow, and with nothing clever in it. */
function plainGrid(readings: readonly FitReading[]): { mean: number; u: number } {
  const middles = (count: number): number[] => Array.from({ length: count }, (_, k) => (k + 0.5) / count);
  const logs = (low: number, high: number, at: number): number => exp(log(low) + (log(high) - log(low)) * at);
  let [all, sum, squares] = [0, 0, 0];
  for (const b of middles(9))
    for (const c of middles(9))
      for (const s of middles(14))
        for (let limitAtL = 750; limitAtL < 870; limitAtL += 2.5) {
          const curve = {
            base: 1.5 * b,
            ceiling: 3 * logs(1.05, 20, c),
            steepness: logs(5, 80, s),
            limitAtL,
          };
          const weight =
            likelihood(readings, readingOf(curve, 3)) *
            exp(-0.5 * ((limitAtL - 850) / 120) * ((limitAtL - 850) / 120));
          all += weight;
          sum += weight * limitAtL;
          squares += weight * limitAtL * limitAtL;
        }
  const mean = sum / all;
  return { mean, u: Math.sqrt(squares / all - mean * mean) };
}

function likelihood(readings: readonly FitReading[], expectedAt: (throughputL: number) => number): number {
  // A fine sum over the calibration error, where the product takes three nodes.
  let sum = 0;
  for (let z = -2.5; z <= 2.5; z += 1) {
    let product = exp(-0.5 * z * z);
    for (const { throughputL, value } of readings) {
      const expected = expectedAt(throughputL);
      const u = Math.sqrt(DOUBT.random * DOUBT.random + OWN_SCATTER * OWN_SCATTER * expected * expected);
      const off = (value - (1 + DOUBT.calibration * z) * expected) / u;
      product *= exp(-0.5 * off * off) / u;
    }
    sum += product;
  }
  return sum;
}
