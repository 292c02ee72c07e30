// Daily use against cases that are worked out by hand.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { HOLM } from '../../tests/journeys/holm.ts';
import { outpostOf } from '../../tests/journeys/told.ts';
import { changed } from '../../tests/outpost/small-outpost.ts';
import type { UsageDay } from '../account/index.ts';
import { dailyUse, FEWEST_DAYS, MOST_DAYS, NORM_RELATIVE_U } from './daily-use.ts';
import { normNetLPerPersonDay } from './norm-use.ts';

const day = (netMg: number, change: Partial<UsageDay> = {}): UsageDay => ({
  day: 1,
  endMs: 0,
  days: 1,
  peopleAboard: 2,
  netMg,
  entry: 'e',
  ...change,
});

describe('learned', () => {
  test('five days of 2, 4, 4, 4 and 6 for two people', () => {
    const use = dailyUse(
      [2, 4, 4, 4, 6].map((net) => day(net)),
      null,
    );
    // A person: 1, 2, 2, 2, 3; mean 2; s² = 2/4; lag-one products 0, so no memory; ν/(ν−2) = 4/2.
    expect(use).toMatchObject({ basis: 'learned', meanMg: 2, memory: 0, days: 5 });
    expect(use?.dayUMg).toBeCloseTo(Math.sqrt(0.5), 12);
    expect(use?.meanUMg).toBeCloseTo(Math.sqrt((0.5 / 5) * 2), 12);
  });

  test('an interval of two days counts as two, with half the noise of one', () => {
    const use = dailyUse([day(4), day(8, { days: 2 }), day(4), day(6), day(2)], null);
    // A person: 2, 2 (twice), 2, 3, 1; mean 2; s² = (1 + 1)/4; six days; lag-one product −1 gives no memory.
    expect(use).toMatchObject({ meanMg: 2, days: 6, memory: 0 });
    expect(use?.dayUMg).toBeCloseTo(Math.sqrt(0.5), 12);
    expect(use?.meanUMg).toBeCloseTo(Math.sqrt((0.5 / 6) * 2), 12);
  });

  test('days that remember each other are worth fewer', () => {
    const nets = [1, 1, 1, 1, 1, 3, 3, 3, 3, 3];
    const use = dailyUse(
      nets.map((net) => day(net, { peopleAboard: 1 })),
      null,
    );
    // Deviations ∓1: squares 10, products 4 + 4 − 1 = 7; 0.7 drawn towards 0 by 10/20.
    expect(use?.memory).toBeCloseTo(0.35, 12);
    expect(use?.meanUMg).toBeCloseTo(Math.sqrt((10 / 9 / 10) * (1.35 / 0.65) * (9 / 7)), 12);
  });

  test('the memory is bounded, and days that swing have none', () => {
    const trend = Array.from({ length: 28 }, (_, k) => day(k < 14 ? 0 : 10));
    expect(dailyUse(trend, null)?.memory).toBeLessThanOrEqual(0.8);
    const swing = Array.from({ length: 28 }, (_, k) => day(k % 2 === 0 ? 2 : 6));
    expect(dailyUse(swing, null)?.memory).toBe(0);
  });

  test('equal days have no doubt and no memory', () => {
    expect(
      dailyUse(
        Array.from({ length: 8 }, () => day(4)),
        null,
      ),
    ).toMatchObject({ meanMg: 2, meanUMg: 0, dayUMg: 0, memory: 0 });
  });

  test('it is use by person: three visitors change nothing', () => {
    const two = dailyUse(
      [2, 4, 4, 4, 6].map((net) => day(net)),
      null,
    );
    const five = dailyUse(
      [2, 4, 4, 4, 6].map((net) => day(2.5 * net, { peopleAboard: 5 })),
      null,
    );
    expect(five?.meanMg).toBeCloseTo(two?.meanMg ?? 0, 12);
  });

  test('only the last days are looked at, and days without people not at all', () => {
    const old = Array.from({ length: 40 }, () => day(100));
    const young = Array.from({ length: MOST_DAYS }, (_, k) => day(4, { entry: `y${k}` }));
    const use = dailyUse([...old, ...young, day(50, { peopleAboard: 0 })], null);
    expect([use?.meanMg, use?.entries.length, use?.entries[0]]).toEqual([2, MOST_DAYS, 'y0']);
  });

  test('more was made than used: the mean is below 0', () => {
    expect(
      dailyUse(
        [-2, -4, -4, -4, -6].map((net) => day(net)),
        null,
      )?.meanMg,
    ).toBe(-2);
  });
});

describe('too few days', () => {
  const few = Array.from({ length: FEWEST_DAYS - 1 }, () => day(4));

  test('stand on the norm with its wide doubt, and say so', () => {
    expect(dailyUse(few, 1000)).toMatchObject({
      basis: 'norm',
      meanMg: 1000,
      meanUMg: 1000 * NORM_RELATIVE_U,
      days: 0,
      entries: [],
    });
    expect(dailyUse(few, -1000)).toMatchObject({ meanMg: -1000, meanUMg: 1000 * NORM_RELATIVE_U });
  });

  test('without a norm there is no figure', () => {
    expect(dailyUse(few, null)).toBeNull();
    expect(dailyUse([], null)).toBeNull();
  });

  test('one day more is learned from', () => {
    expect(dailyUse([...few, day(4)], 1000)?.basis).toBe('learned');
  });
});

describe('the norm', () => {
  const corrie = outpostOf(
    readFileSync(join(import.meta.dirname, '../../examples/corrie/outpost.yaml'), 'utf8'),
  );

  test('Corrie, drinking: the tap less what the purifier makes', () => {
    expect(normNetLPerPersonDay(corrie, 'drinking')).toBeCloseTo(2.72 - 1.7 * 0.965, 12);
    expect(normNetLPerPersonDay(corrie, 'drinking')).toBeCloseTo(1.0795, 4);
  });

  test('Corrie, technical: electrolyser and flush', () => {
    expect(normNetLPerPersonDay(corrie, 'technical')).toBeCloseTo(2.9 / 4 + 6 * 0.05, 12);
  });

  test('grades that no unit uses or makes have none', () => {
    expect(normNetLPerPersonDay(corrie, 'iodine')).toBeNull();
  });

  test('a norm that is missing gives no figure instead of a smaller one', () => {
    expect(
      normNetLPerPersonDay(outpostOf(changed('  vapourCollectedLPerPersonDay: 1.7\n', '', HOLM)), 'drinking'),
    ).toBeNull();
    expect(
      normNetLPerPersonDay(outpostOf(changed('  tapLPerPersonDay: 2.7\n', '', HOLM)), 'drinking'),
    ).toBeNull();
    expect(
      normNetLPerPersonDay(outpostOf(changed('  flushesPerPersonDay: 6\n', '', HOLM)), 'technical'),
    ).toBeNull();
  });
});
