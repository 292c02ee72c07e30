// Readings of a content: each draws the estimate by what it is worth, in the instrument's own unit.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { at, dayLine, holm, holmOpening, litres, outpostOf, Told } from '../../tests/journeys/told.ts';

const polar = outpostOf(readFileSync(join(import.meta.dirname, '../../examples/polar/outpost.yaml'), 'utf8'));
const lunar = outpostOf(readFileSync(join(import.meta.dirname, '../../examples/lunar/outpost.yaml'), 'utf8'));

describe('a scale', () => {
  test('two readings of one scale share its calibration, and the doubt of their difference is smaller', () => {
    const told = holm();
    for (const store of ['C-01', 'C-04'])
      told.goTo(1, 12).tell('weigh', { store, amount: litres(18, 0.2), method: 'balance' });
    const { estimator, stores } = told.fold;
    const [a, b] = [stores.get('C-01')?.content ?? -1, stores.get('C-04')?.content ?? -1];
    expect(estimator.covariance(a, b)).toBeGreaterThan(0);
    expect(estimator.sum([a, b], [1, -1]).variance).toBeLessThan(estimator.sum([a, b]).variance);
  });

  test('a hundred readings leave the calibration of the scale', () => {
    const told = holm();
    for (let k = 0; k < 100; k++)
      told.goTo(1, 10 + k / 100).tell('weigh', { store: 'R1', amount: litres(150, 0.2), method: 'balance' });
    expect(told.believed('R1').uL).toBeGreaterThan(0.09);
    expect(told.believed('R1').uL).toBeLessThan(0.12);
  });

  test('a planned reading that was not done changes nothing and is said', () => {
    const told = holm();
    const before = told.believed('C-04');
    told.goTo(1, 12).tell('weigh', { store: 'C-04', amount: null });
    expect(told.believed('C-04')).toEqual(before);
    expect(told.findings('reading-skipped')).toHaveLength(1);
  });
});

describe('gas injection', () => {
  test('repeats the error of the shell, however often it is done', () => {
    const told = holm();
    const pvt = {
      store: 'R1',
      amount: litres(148, 1.6),
      bottleVolumeL: 10,
      tankVolumeL: 180,
      bottleBeforeKPaAbs: 600,
      bottleAfterKPaAbs: 200,
      bottleBeforeC: 21,
      bottleAfterC: 20,
      tankBeforeKPaAbs: 101,
      tankAfterKPaAbs: 180,
      tankBeforeC: 20,
      tankAfterC: 21,
    };
    told.goTo(1, 12).tell('pvt', pvt);
    const once = told.believed('R1');
    expect(once.uL).toBeCloseTo(Math.sqrt(1 / (1 / 9 + 1 / (0.81 + 1.44 + 0.25))), 3);
    for (let k = 0; k < 200; k++) told.goTo(1, 13 + k / 100).tell('pvt', pvt);
    expect(told.believed('R1').uL).toBeGreaterThan(0.8);
    expect(told.position().stores.find(({ facts }) => facts.id === 'R1')?.howKnown).toBe('gauged');
  });
});

describe('other instruments', () => {
  const opened = (outpost: typeof polar, store: string, value: number, uL: number) => {
    const told = new Told(outpost);
    const mgPerL = told.fold.mgPerL;
    const amount = (v: number) => ({
      massMg: Math.round(v * mgPerL),
      raw: { value: v, unit: 'L', mgPerUnit: mgPerL },
    });
    told.tell(
      'opening',
      holmOpening({
        stores: [
          {
            store,
            amount: { ...amount(value), uMg: Math.round(uL * mgPerL) },
            grade: told.fold.stores.get(store)?.grade ?? null,
          },
        ],
        ports: [],
        counters: [],
      }),
    );
    return {
      told,
      amount,
      uL: () => (told.position().stores.find(({ facts }) => facts.id === store)?.uMg ?? 0) / mgPerL,
    };
  };

  test('a dip stick is worth millimetres by the slope of its tank’s table, not litres', () => {
    const tank = polar.stores.find(({ gaugeTable }) => gaugeTable !== undefined);
    if (tank?.gaugeTable === undefined) throw new Error('no dipped tank');
    const middle = tank.gaugeTable[Math.floor(tank.gaugeTable.length / 2)];
    const next = tank.gaugeTable[Math.floor(tank.gaugeTable.length / 2) - 1];
    if (middle === undefined || next === undefined) throw new Error('no rows');
    const slope = (middle.volumeL - next.volumeL) / (middle.depthMm - next.depthMm);
    const volumeL = (middle.volumeL + next.volumeL) / 2;
    const { told, amount, uL } = opened(polar, tank.id, volumeL, 5000);
    told.goTo(1, 12).tell('gauge', { store: tank.id, amount: amount(volumeL), instrument: 'dip-stick' });
    // 6 mm new each time and 4 mm of calibration, by the file.
    expect(uL()).toBeCloseTo(slope * Math.sqrt(6 * 6 + 4 * 4), 0);
  });

  test('a level gauge with a relative calibration shares it', () => {
    const { told, amount, uL } = opened(lunar, 'S-1', 500, 200);
    for (let k = 0; k < 50; k++)
      told
        .goTo(1, 12 + k / 100)
        .tell('gauge', { store: 'S-1', amount: amount(500), instrument: 'cellar-levels' });
    expect(uL()).toBeGreaterThan(4.5);
    expect(uL()).toBeLessThan(5.5);
  });

  test('without an instrument and without a doubt it is a plain one', () => {
    const told = holm();
    told.goTo(1, 12).tell('gauge', { store: 'R1', amount: litres(150) });
    expect(told.believed('R1').uL).toBeCloseTo(Math.sqrt(1 / (1 / 9 + 1 / 0.04)), 3);
  });
});

test('a reading that is far from what was expected is asked about, and believed of its own store', () => {
  const told = holm();
  const other = told.believed('C-01');
  told.goTo(1, 12).tell('weigh', { store: 'C-04', amount: litres(12, 0.2), method: 'balance' });
  expect(told.findings('reading-far-off')[0]?.data).toMatchObject({
    readMg: 12_000_000,
    expectedMg: 18_000_000,
    how: 'weighed',
  });
  expect(Math.abs(told.believed('C-04').valueL - 12)).toBeLessThan(0.1);
  expect(told.believed('C-01')).toEqual(other);
});

test('a late word of a closed day is said; a close of a month closes the days before', () => {
  const told = holm();
  told.goTo(1, 21).tell('day-line', dayLine(1, {}));
  told.goTo(4, 9).tell('day-close', { day: 3, what: 'month', figures: [] });
  expect(told.position().closedDays).toEqual([0, 1, 2, 3]);
  told.goTo(4, 10).tell('note', { text: 'told late' }, { late: 'was asleep' });
  expect(told.findings('late-in-closed-day')).toHaveLength(1);
  told.goTo(9, 9);
  expect(told.findings('no-reading')[0]?.data).toMatchObject({ lastMs: at(1, 21), days: 7 });
});
