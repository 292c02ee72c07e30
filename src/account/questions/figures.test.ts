// Figures that do not fit are asked about, with the reading that would; figures that are odd for a reason are not.
import { describe, expect, test } from 'vitest';
import { at, dayLine, holm, litres, readings, type Told } from '../../../tests/journeys/told.ts';

const whole = (day: number, more: Readonly<Record<string, number | null>> = {}) => ({
  ...{ condensate: (990 + 3.4 * day) % 1000, product: 3.26, strokes: 216, flushes: 12 },
  ...more,
});
const line = (told: Told, day: number, more: Readonly<Record<string, number | null>> = {}, people = 2) =>
  told.goTo(day, 21).tell('day-line', dayLine(day, whole(day, more), people));
const asked = (told: Told) =>
  [...told.findings('amount-implausible'), ...told.findings('reading-implausible')].map(({ data }) => data);

describe('moved water', () => {
  const flow = (told: Told, hour: number, valueL: number, minutes: number) =>
    told.goTo(1, hour + minutes / 60).tell('movement', {
      ...{ from: 'R1', to: 'outside', amount: litres(valueL), hose: 'H-1', flowMinutes: minutes },
      startAtMs: at(1, hour),
    });

  test('more than its source has: the reading with the point elsewhere would fit', () => {
    const told = holm();
    told.goTo(1).tell('movement', { from: 'C-04', to: 'outside', amount: litres(175) });
    expect(asked(told)).toMatchObject([
      { against: 'source', name: 'C-04', value: 175, fits: 17.5, slip: 'point' },
    ]);
    // It counts as it was entered.
    expect(told.ledgerL('C-04')).toBeCloseTo(18 - 175);
  });

  test('a hose is known after three runs: a tenth, pounds and gallons are named', () => {
    for (const [typedL, fits, slip] of [
      [0.4, 4, 'point'],
      [8.82, 4, 'lb'],
      [1.057, 4, 'gal'],
    ] as const) {
      const told = holm();
      for (const hour of [8, 9, 10]) flow(told, hour, 4, 3);
      expect(asked(told)).toEqual([]);
      flow(told, 11, typedL, 3);
      expect(asked(told)).toMatchObject([{ against: 'hose', slip }]);
      expect(asked(told)[0]?.['fits']).toBeCloseTo(fits, 1);
    }
  });

  test('a short fill takes its short time, and is not asked about', () => {
    const told = holm();
    for (const hour of [8, 9, 10]) flow(told, hour, 4, 3);
    flow(told, 11, 1.3, 1);
    expect(asked(told)).toEqual([]);
  });

  test('three figures of a push: the one that differs is asked about', () => {
    const told = holm();
    const push = (given: number, got: number, total: number) =>
      told.goTo(1, 9 + told.entries.length).tell('push', {
        ...{ from: [{ store: 'W-01', amount: litres(given) }], to: [{ store: 'W-02', amount: litres(got) }] },
        amount: litres(total),
      });
    push(0.5, 0.5, 5);
    push(0.4, 4, 0.4);
    expect(asked(told)).toMatchObject([
      { of: 'water pushed', value: 5 },
      { of: 'water received', value: 4 },
    ]);
  });
});

describe('counters of a day line', () => {
  test('far from what is usual here, and what the number may have been', () => {
    const told = holm();
    for (let day = 1; day <= 4; day++) line(told, day);
    line(told, 5, { strokes: 2160 });
    line(told, 6, { flushes: 0.6 });
    expect(asked(told)).toMatchObject([
      { of: 'strokes', fits: 216, slip: 'point' },
      { of: 'flushes', fits: 12, slip: 'counts in litres' },
    ]);
  });

  test('more people use more, and a new habit is asked about once', () => {
    const told = holm();
    for (let day = 1; day <= 4; day++) line(told, day);
    told.goTo(5, 8).tell('roster', { change: 'arrive', people: 2 });
    line(told, 5, { strokes: 432, flushes: 24 }, 4);
    expect(asked(told)).toEqual([]);
    for (let day = 6; day <= 9; day++) line(told, day, { strokes: 432, flushes: 5 }, 4);
    expect(asked(told)).toMatchObject([{ of: 'flushes' }]);
  });

  test('a count that was left out makes the next one a double one, and neither is asked about', () => {
    const told = holm();
    for (let day = 1; day <= 4; day++) line(told, day);
    line(told, 5, { strokes: null });
    line(told, 6, { strokes: 432 });
    line(told, 7);
    expect(asked(told)).toEqual([]);
  });

  test('a total that rolls over is not asked about; one that falls otherwise looks like a new counter', () => {
    const told = holm();
    for (let day = 1; day <= 6; day++) line(told, day);
    expect(told.findings('counter-replaced')).toEqual([]);
    line(told, 7, { condensate: 1.4 });
    expect(told.findings('counter-replaced')).toMatchObject([
      { data: { instrument: 'condensate', value: 1.4 } },
    ]);
    expect(told.findings('counter-backwards')).toEqual([]);
  });
});

describe('contents', () => {
  test.each([
    [181, 'capacity', 18.1],
    [1.81, 'store', 18.1],
    [39.9, 'capacity', 18.1],
  ])('a weight of %d L against %s', (typedL, against, fits) => {
    const told = holm();
    told.goTo(1).tell('weigh', { store: 'C-04', amount: litres(typedL, 0.2), method: 'balance' });
    expect(asked(told)).toMatchObject([{ against }]);
    expect(asked(told)[0]?.['fits']).toBeCloseTo(fits, 1);
  });

  test('raw readings of a gauging with a wrong sign do not give the sum that was made of them', () => {
    const gauging = {
      ...{ store: 'R1', amount: litres(150, 1.6), bottleVolumeL: 10, tankVolumeL: 180 },
      ...{ bottleBeforeKPaAbs: 600, bottleAfterKPaAbs: 529.4, bottleBeforeC: 22, bottleAfterC: 22 },
      ...{ tankBeforeKPaAbs: 101.3, tankAfterKPaAbs: 124.84, tankBeforeC: 22, tankAfterC: 22 },
    };
    const right = holm();
    right.goTo(1).tell('pvt', gauging);
    expect(asked(right)).toEqual([]);
    const wrong = holm();
    wrong.goTo(1).tell('pvt', { ...gauging, tankAfterC: -22 });
    expect(asked(wrong)).toMatchObject([{ against: 'raw readings' }]);
  });

  test('the rest of an emptied container, ten times too large', () => {
    const told = holm();
    told
      .goTo(1)
      .tell('declared-empty', { store: 'C-01', port: 'tap feed', residual: litres(6, 0.2), counters: [] });
    expect(asked(told)).toMatchObject([{ of: 'rest' }]);
    expect(asked(told)[0]?.['fits']).toBeCloseTo(0.6);
  });

  test('counters at a swap stand where the time of day leaves them', () => {
    const swap = (hour: number, strokes: number) => {
      const told = holm();
      for (let day = 1; day <= 4; day++) line(told, day);
      const counters = readings({ strokes, product: (3.26 * (hour + 3)) / 24 });
      told.goTo(5, hour).tell('declared-empty', { store: 'C-01', port: 'tap feed', counters });
      return asked(told);
    };
    expect(swap(12, 135)).toEqual([]);
    expect(swap(12, 14)).toMatchObject([{ of: 'strokes', against: 'time of day' }]);
  });
});
