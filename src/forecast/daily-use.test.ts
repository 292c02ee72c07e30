// Daily use against cases that are worked out by hand.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { HOLM } from '../../tests/journeys/holm.ts';
import { outpostOf } from '../../tests/journeys/told.ts';
import { changed } from '../../tests/outpost/small-outpost.ts';
import type { UsageDay } from '../account/index.ts';
import { msPerDay } from '../ground/units/index.ts';
import { dailyUse, FEWEST_DAYS, MOST_DAYS, NORM_RELATIVE_U } from './daily-use.ts';
import { normUse } from './norm-use.ts';

const day = (netMg: number, change: Partial<UsageDay> = {}): UsageDay => ({
  day: 1,
  endMs: 0,
  days: 1,
  peopleAboard: 2,
  netMg,
  entry: 'e',
  ...change,
});

const ofDays = (nets: readonly number[], change: Partial<UsageDay> = {}) =>
  nets.map((net, k) => day(net, { endMs: k * msPerDay, ...change }));

describe('learned', () => {
  test('five days of 2, 4, 4, 4 and 6 for two people have the mean 2 for one, and say what they rest on', () => {
    const use = dailyUse(ofDays([2, 4, 4, 4, 6]), null);
    expect(use).toMatchObject({ basis: 'learned', days: 5, entries: ['e', 'e', 'e', 'e', 'e'] });
    expect(use?.meanMg).toBeCloseTo(2, 1);
    expect(use?.meanUMg).toBeGreaterThan(Math.sqrt(0.5 / 5));
    expect(use?.dayUMg).toBeGreaterThan(0.5);
    expect(use?.cases.reduce((sum, { weight }) => sum + weight, 0)).toBeCloseTo(1, 12);
  });

  test('an interval of two days is worth more than one day of that rate, and no other rate', () => {
    const once = dailyUse([...ofDays([2, 6, 2, 6]), day(4, { endMs: 4 * msPerDay })], null);
    const twice = dailyUse([...ofDays([2, 6, 2, 6]), day(8, { endMs: 5 * msPerDay, days: 2 })], null);
    expect(twice?.days).toBe(6);
    expect(twice?.meanMg).toBeCloseTo(once?.meanMg ?? 0, 1);
    expect(twice?.meanUMg).toBeLessThan(once?.meanUMg ?? 0);
  });

  test('days that remember each other leave more doubt of the mean than days that swing', () => {
    const slow = dailyUse(ofDays([2, 2, 2, 2, 2, 2, 6, 6, 6, 6, 6, 6]), null);
    const swing = dailyUse(ofDays([2, 6, 2, 6, 2, 6, 2, 6, 2, 6, 2, 6]), null);
    expect(slow?.memory).toBeGreaterThan(0.5);
    expect(swing?.memory).toBeLessThan(0.35);
    expect(slow?.meanUMg).toBeGreaterThan(swing?.meanUMg ?? 9);
  });

  test('more days of the same leave less doubt', () => {
    const nets = [3, 4, 5, 4, 3, 5, 4];
    const doubts = [1, 2, 4, 8].map(
      (times) => dailyUse(ofDays(Array(times).fill(nets).flat()), null)?.meanUMg ?? 0,
    );
    expect([...doubts].sort((a, b) => b - a)).toEqual(doubts);
  });

  test('a mood of the last days fades with the days since', () => {
    const usage = ofDays([4, 4, 4.2, 3.8, 4, 4, 4.1, 3.9, 4, 5, 5.2, 5.1]);
    const lastMs = 11 * msPerDay;
    const moodAt = (quiet: number) =>
      dailyUse(usage, null, lastMs + quiet * msPerDay)?.cases.reduce(
        (sum, one) => sum + one.weight * one.moodMg,
        0,
      ) ?? 0;
    expect(moodAt(0)).toBeGreaterThan(0.1);
    expect(moodAt(5)).toBeLessThan(moodAt(0));
    expect(moodAt(59)).toBeCloseTo(0, 1);
  });

  test('equal days have no doubt and no memory', () => {
    expect(dailyUse(ofDays(Array(8).fill(4)), null)).toMatchObject({
      meanMg: 2,
      meanUMg: 0,
      dayUMg: 0,
      memory: 0,
    });
  });

  test('it is use by person: three visitors change nothing', () => {
    const two = dailyUse(ofDays([2, 4, 4, 4, 6]), null);
    const five = dailyUse(ofDays([5, 10, 10, 10, 15], { peopleAboard: 5 }), null);
    expect(five?.meanMg).toBeCloseTo(two?.meanMg ?? 0, 12);
  });

  test('only the last days are looked at, and days without people not at all', () => {
    const old = Array.from({ length: 40 }, () => day(100));
    const young = Array.from({ length: MOST_DAYS }, (_, k) => day(4, { entry: `y${k}` }));
    const use = dailyUse([...old, ...young, day(50, { peopleAboard: 0 })], null);
    expect([use?.meanMg, use?.entries.length, use?.entries[0]]).toEqual([2, MOST_DAYS, 'y0']);
  });

  test('more was made than used: the mean is below 0', () => {
    expect(dailyUse(ofDays([-2, -4, -4, -4, -6]), null)?.meanMg).toBeCloseTo(-2, 1);
  });

  test('a norm that is far off draws little after a fortnight', () => {
    const nets = [4, 4.2, 3.8, 4.1, 3.9, 4, 4.2, 3.8, 4.1, 3.9, 4, 4.2, 3.8, 4];
    const use = dailyUse(ofDays(nets), { netMg: 5, grossMg: 8 });
    expect(use?.meanMg).toBeGreaterThan(2);
    expect(use?.meanMg).toBeLessThan(2.1);
  });
});

const norm = (netMg: number) => ({ netMg, grossMg: Math.abs(netMg) });

describe('too few days', () => {
  const few = Array.from({ length: FEWEST_DAYS - 1 }, () => day(4));

  test('stand on the norm with its wide doubt, and say so', () => {
    expect(dailyUse(few, norm(1000))).toMatchObject({
      basis: 'norm',
      meanMg: 1000,
      meanUMg: 1000 * NORM_RELATIVE_U,
      days: 0,
      entries: [],
    });
    expect(dailyUse(few, norm(-1000))).toMatchObject({ meanMg: -1000, meanUMg: 1000 * NORM_RELATIVE_U });
  });

  test('without a norm there is no figure', () => {
    expect(dailyUse(few, null)).toBeNull();
    expect(dailyUse([], null)).toBeNull();
  });

  test('one day more is learned from', () => {
    expect(dailyUse([...few, day(4)], norm(1000))?.basis).toBe('learned');
  });
});

describe('the norm', () => {
  const corrie = outpostOf(
    readFileSync(join(import.meta.dirname, '../../examples/corrie/outpost.yaml'), 'utf8'),
  );

  test('Corrie, drinking: the tap less what the purifier makes', () => {
    expect(normUse(corrie, 'drinking')?.netL).toBeCloseTo(2.72 - 1.7 * 0.965, 12);
    expect(normUse(corrie, 'drinking')?.netL).toBeCloseTo(1.0795, 4);
    expect(normUse(corrie, 'drinking')?.grossL).toBeCloseTo(2.72 + 1.7 * 0.965, 12);
  });

  test('Corrie, technical: electrolyser and flush', () => {
    expect(normUse(corrie, 'technical')?.netL).toBeCloseTo(2.9 / 4 + 6 * 0.05, 12);
  });

  test('grades that no unit uses or makes have none', () => {
    expect(normUse(corrie, 'iodine')).toBeNull();
  });

  test('a norm that is missing gives no figure instead of a smaller one', () => {
    expect(
      normUse(outpostOf(changed('  vapourCollectedLPerPersonDay: 1.7\n', '', HOLM)), 'drinking'),
    ).toBeNull();
    expect(normUse(outpostOf(changed('  tapLPerPersonDay: 2.7\n', '', HOLM)), 'drinking')).toBeNull();
    expect(normUse(outpostOf(changed('  flushesPerPersonDay: 6\n', '', HOLM)), 'technical')).toBeNull();
  });
});
