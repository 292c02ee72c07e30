// When a biocide ends: against the law itself without doubt, against draws with it, and what more doubt must do.
import { describe, expect, test } from 'vitest';
import type { FallingLevel } from '../account/index.ts';
import { log, seededChance } from '../ground/maths/index.ts';
import { timeForBiocideS } from '../ground/physics/index.ts';
import { belowNow, biocideEnds } from './biocide-ends.ts';

function level(of: {
  mgPerL?: number;
  uLog?: number;
  rate?: number;
  u?: number;
  covariance?: number;
}): FallingLevel {
  const { mgPerL = 0.2, uLog = 0.05, rate = 0.0005, u = 0.0001, covariance = 0 } = of;
  const walls = { metresPerDay: rate, u, from: 'own', results: 3, stores: 0 } as const;
  return { logMgPerL: log(mgPerL), uLog, covariance, rate: walls };
}
const water = { leastMgPerL: 0.05, areaPerVolumePerM: 25 };

test('without doubt every quantile is the day of the law', () => {
  const ends = biocideEnds(level({ uLog: 0, u: 0 }), water);
  const days =
    timeForBiocideS({
      ...{ fromKgPerM3: 2e-4, toKgPerM3: 5e-5, areaPerVolumePerM: 25 },
      lossMPerS: 0.0005 / 86_400,
    }) / 86_400;
  expect(days).toBeCloseTo(110.9, 1);
  for (const day of [ends?.q05, ends?.q50, ends?.q95]) expect(day).toBeCloseTo(days, 6);
});

test.each([
  ['as they come', {}],
  ['going together', { covariance: 0.6 * 0.05 * 0.0001 }],
  ['against each other', { covariance: -0.8 * 0.05 * 0.0001 }],
  ['a rate that could be nought', { u: 0.0004 }],
  ['a rate that looks as if the wall gave', { rate: -0.0001, u: 0.0003 }],
] as const)('with doubt it is what draws give: %s', (_, of) => {
  const asked = level(of);
  const ends = biocideEnds(asked, water);
  const chance = seededChance({ seed: 5 });
  const { metresPerDay = 0, u = 0 } = asked.rate ?? {};
  const { covariance, uLog } = asked;
  const left = Math.sqrt(uLog * uLog - (covariance / u) ** 2);
  const days: number[] = [];
  while (days.length < 40_000) {
    const z = chance.normal();
    const rate = metresPerDay + u * z;
    // The wall gives nothing back: such draws are thrown away.
    if (rate <= 0) continue;
    const above = asked.logMgPerL + (covariance / u) * z + left * chance.normal() - log(water.leastMgPerL);
    days.push(Math.max(0, above / (rate * water.areaPerVolumePerM)));
  }
  days.sort((a, b) => a - b);
  const share = (at: number | null | undefined) =>
    at == null ? Number.NaN : days.filter((each) => each <= at).length / days.length;
  expect(share(ends?.q05)).toBeCloseTo(0.05, 2);
  expect(share(ends?.q50)).toBeCloseTo(0.5, 2);
  const late = share(ends?.q95);
  // No end within a hundred years: then fewer than that end before.
  if (ends?.q95 === null) expect(share(36_525)).toBeLessThan(0.96);
  else expect(late).toBeCloseTo(0.95, 2);
});

describe('what must hold', () => {
  test('more wall, a higher least and a lower level come sooner; more doubt widens on both sides', () => {
    const base = biocideEnds(level({}), water);
    const median = (of: FallingLevel, more = {}) => biocideEnds(of, { ...water, ...more })?.q50 ?? Number.NaN;
    expect(median(level({}), { areaPerVolumePerM: 50 })).toBeLessThan(base?.q50 ?? 0);
    expect(median(level({}), { leastMgPerL: 0.1 })).toBeLessThan(base?.q50 ?? 0);
    expect(median(level({ mgPerL: 0.1 }))).toBeLessThan(base?.q50 ?? 0);
    const unsure = biocideEnds(level({ u: 0.0002, uLog: 0.1 }), water);
    expect(unsure?.q05).toBeLessThan(base?.q05 ?? 0);
    expect(unsure?.q95).toBeGreaterThan(base?.q95 ?? Number.POSITIVE_INFINITY);
  });

  test('below already is today, and no rate is no day', () => {
    expect(biocideEnds(level({ mgPerL: 0.02 }), water)).toEqual({ q05: 0, q50: 0, q95: 0 });
    expect(biocideEnds({ ...level({}), rate: null }, water)).toBeNull();
    expect(biocideEnds(level({ rate: 0, u: 0 }), water)).toEqual({ q05: null, q50: null, q95: null });
  });

  test('how likely it is below already', () => {
    expect(belowNow(level({ mgPerL: 0.05 }), 0.05)).toBeCloseTo(0.5, 12);
    expect(belowNow(level({ uLog: 0 }), 0.05)).toBe(0);
    expect(belowNow(level({ uLog: 0 }), 0.3)).toBe(1);
  });

  test.each([
    [level({ rate: Number.NaN }), water],
    [level({ u: -1 }), water],
    [level({ uLog: Number.POSITIVE_INFINITY }), water],
    [level({}), { ...water, leastMgPerL: 0 }],
    [level({}), { ...water, areaPerVolumePerM: Number.NaN }],
  ])('no end is told from %j', (of, in_) => {
    expect(() => biocideEnds(of, in_)).toThrow(RangeError);
  });
});
