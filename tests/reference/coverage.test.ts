// The printed ± of stocks, on a simulated outpost with the product's estimator: it holds the truth as often as it says.
import { expect, test } from 'vitest';
import { coverageLines, coverageOf } from './coverage.ts';

const days = [5, 10, 15, 20, 25, 30, 35, 40, 45, 50, 55, 60];

test('± as printed holds 93 to 97 of 100 true contents, store by store, for their sum, for what the crew carries and for a calibration that drifts: 2000 outposts of 60 days', {
  timeout: 120_000,
}, () => {
  const started = performance.now();
  const rows = coverageOf({ outposts: 2000, days, firstSeed: 100_001 });
  const seconds = ((performance.now() - started) / 1000).toFixed(1);
  console.log([...coverageLines(rows), `seeds 100001 to 102000, every fifth day, ${seconds} s`].join('\n'));
  expect(rows).toHaveLength(10);
  for (const { what, share, cells } of rows) {
    expect(cells).toBe(2000 * days.length);
    expect(share, what).toBeGreaterThan(0.93);
    expect(share, what).toBeLessThan(0.97);
  }
});

test('the doubts are narrow, too: readings, counters and what they have in common do better than the last reading alone', () => {
  const rows = coverageOf({ outposts: 20, days: [60], firstSeed: 1 });
  const uOf = (name: string): number => rows.find(({ what }) => what === name)!.meanUKg;
  expect(uOf('potable tank')).toBeLessThan(0.2 * 0.8);
  expect(uOf('condensate tank')).toBeLessThan(0.2 * 0.75);
  expect(uOf('containers')).toBeLessThan(0.1 * 0.95);
  // What the crew carries is never read, and still known better than its norm; the dispenser learns from what it fills.
  expect(uOf('crew body water')).toBeLessThan(0.8 * 0.95);
  expect(uOf('dispenser calibration (relative)')).toBeLessThan(0.015 * 0.6);
  // A tank's repeated error stays, however often it is read; what is new each time averages out.
  expect(uOf('reserve')).toBeLessThan(0.8 * Math.sqrt(4 * 4 + 9.2 * 9.2));
  expect(uOf('reserve')).toBeGreaterThan(7);
});

test('a world that is worse than declared is seen by the same measure', () => {
  const share = (world: { randomTimes: number; lossKg: number }, name: string): number =>
    coverageOf({ outposts: 100, days, firstSeed: 1, world }).find(({ what }) => what === name)!.share;
  expect(share({ randomTimes: 2, lossKg: 0 }, 'condensate tank')).toBeLessThan(0.88);
  expect(share({ randomTimes: 1, lossKg: 2 }, 'potable tank')).toBeLessThan(0.92);
});
