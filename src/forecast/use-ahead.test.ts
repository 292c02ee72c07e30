// Days ahead against simulated days of the same model, and the filter against sums that are worked out by hand.
import { describe, expect, test } from 'vitest';
import { seededChance } from '../ground/maths/index.ts';
import { sureUse, usedAhead } from './use-ahead.ts';
import { UseFilter } from './use-filter.ts';
import { learnUse, type UseCase } from './use-model.ts';

const moody: UseCase = {
  weight: 1,
  memory: 0.8,
  moodStepVariance: 0.09,
  noiseVariance: 0.04,
  meanMg: 2.5,
  moodMg: 0.4,
  meanVariance: 0.01,
  moodVariance: 0.06,
  covariance: -0.008,
};

/** Sums of so many days of one case, drawn from where it stands. */
function simulated(days: number, one: UseCase, { paths, seed }: { paths: number; seed: number }) {
  const chance = seededChance({ seed });
  const slope = one.covariance / one.meanVariance;
  const rest = Math.sqrt(one.moodVariance - slope * one.covariance);
  return Array.from({ length: paths }, () => {
    const off = Math.sqrt(one.meanVariance) * chance.normal();
    let mood = one.moodMg + slope * off + rest * chance.normal();
    let sum = 0;
    for (let day = 0; day < days; day++) {
      mood = one.memory * mood + Math.sqrt(one.moodStepVariance) * chance.normal();
      sum += one.meanMg + off + mood + Math.sqrt(one.noiseVariance) * chance.normal();
    }
    return sum;
  });
}

describe('ahead', () => {
  test.each([1, 2, 7, 30, 90])('over %s days mean and variance are those of simulated days', (days) => {
    const paths = 20_000;
    const sums = simulated(days, moody, { paths, seed: days });
    const mean = sums.reduce((a, b) => a + b, 0) / paths;
    const variance = sums.reduce((a, b) => a + (b - mean) * (b - mean), 0) / (paths - 1);
    const [ahead] = usedAhead(days, [moody]);
    if (ahead === undefined) throw new Error('no case');
    expect(Math.abs(mean - ahead.meanMg)).toBeLessThan(4 * Math.sqrt(ahead.variance / paths));
    expect(Math.abs(variance / ahead.variance - 1)).toBeLessThan(4 * Math.sqrt(2 / paths));
  });

  test('a case without a mood has the mean, its doubt and the noise of the days', () => {
    expect(usedAhead(10, [sureUse({ meanMg: 5, uMg: 0.5, dayUMg: 1 })])).toEqual([
      { weight: 1, meanMg: 50, variance: 25 + 10 },
    ]);
  });

  test('no day uses nothing, and variance never falls with the days', () => {
    expect(usedAhead(0, [moody])).toEqual([{ weight: 1, meanMg: 0, variance: 0 }]);
    let before = 0;
    for (let days = 0.01; days < 400; days *= 1.07) {
      const variance = usedAhead(days, [moody])[0]?.variance ?? 0;
      expect(variance).toBeGreaterThan(before);
      before = variance;
    }
  });

  test('days below 0 and no days are refused', () => {
    expect(() => usedAhead(-1, [moody])).toThrow(RangeError);
    expect(() => usedAhead(Number.NaN, [moody])).toThrow(RangeError);
  });
});

describe('the filter', () => {
  const prior = { meanMg: 0, uMg: 2, scaleMg: 1 };

  test('without a mood it is the mean of normal days: P = 1 / (1/4 + n)', () => {
    const filter = new UseFilter(prior, { memory: 0.5, moodVariance: 0, noiseVariance: 1 });
    for (const used of [1, 2, 3]) filter.read(used, 1);
    expect(filter.state().meanVariance).toBeCloseTo(1 / 3.25, 12);
    expect(filter.state().meanMg).toBeCloseTo(6 / 3.25, 12);
  });

  test('two days in one reading, without a mood, are one reading of twice the mean', () => {
    const filter = new UseFilter(prior, { memory: 0.5, moodVariance: 0, noiseVariance: 1 });
    filter.read(5, 2);
    // y = 2 m + e, variance 2: P = 1 / (1/4 + 4/2).
    expect(filter.state().meanVariance).toBeCloseTo(1 / 2.25, 12);
    expect(filter.state().meanMg).toBeCloseTo(5 / 2.25, 12);
  });

  test('one day with a mood: the gain is shared by mean and mood as their variances', () => {
    const filter = new UseFilter(prior, { memory: 0.6, moodVariance: 1, noiseVariance: 1 });
    filter.read(3, 1);
    const { meanMg, moodMg, meanVariance, moodVariance, covariance } = filter.state();
    expect([meanMg, moodMg]).toEqual([3 * (4 / 6), 3 * (1 / 6)]);
    expect(meanVariance).toBeCloseTo(4 - 16 / 6, 12);
    expect(moodVariance).toBeCloseTo(1 - 1 / 6, 12);
    expect(covariance).toBeCloseTo(-4 / 6, 12);
  });

  test('the likelihood of one reading is that of its normal distribution, but for a shared part', () => {
    const logOf = (used: number) => {
      const filter = new UseFilter(prior, { memory: 0.6, moodVariance: 1, noiseVariance: 1 });
      filter.read(used, 1);
      return filter.logLikelihood();
    };
    expect(logOf(0) - logOf(3)).toBeCloseTo(9 / 6 / 2, 12);
  });
});

describe('the grid', () => {
  const days = (nets: readonly number[]) => nets.map((usedMg) => ({ usedMg, days: 1, daysBefore: 0 }));
  const prior = { meanMg: 2, uMg: 1, scaleMg: 0.5 };

  test('weights add up to 1, and without days all cases are equally likely', () => {
    const cases = learnUse([], prior);
    expect(new Set(cases.map(({ weight }) => weight.toFixed(12))).size).toBe(1);
    expect(cases).toHaveLength(75);
    expect(learnUse(days([1, 2, 3, 2, 1]), prior).reduce((sum, { weight }) => sum + weight, 0)).toBeCloseTo(
      1,
      12,
    );
  });

  test('a unit of mass is a unit of mass', () => {
    const nets = [2, 2.4, 2.1, 1.7, 2.2, 2.6, 1.9];
    const small = learnUse(days(nets), prior);
    const large = learnUse(days(nets.map((net) => 1e6 * net)), { meanMg: 2e6, uMg: 1e6, scaleMg: 5e5 });
    for (const [k, one] of small.entries()) {
      expect(large[k]?.weight).toBeCloseTo(one.weight, 10);
      expect((large[k]?.meanMg ?? 0) / 1e6).toBeCloseTo(one.meanMg, 10);
    }
  });

  test('a prior without a spread or a scale, and days that are no numbers, are refused', () => {
    expect(() => learnUse([], { ...prior, uMg: 0 })).toThrow(RangeError);
    expect(() => learnUse([], { ...prior, scaleMg: 0 })).toThrow(RangeError);
    expect(() => learnUse(days([1, Number.NaN]), prior)).toThrow(RangeError);
  });
});
