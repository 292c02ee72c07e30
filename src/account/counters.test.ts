// Counters: roll-over, a step back, a reading that was left out, and what all that does to the learned daily use.
import { describe, expect, test } from 'vitest';
import { dayLine, holm, litres, readings } from '../../tests/journeys/told.ts';
import { cloneCounter, closeCounter, countedSince, openCounter } from './counter-state.ts';

describe('the amount between two readings', () => {
  const running = { running: true, rollsOverAt: 1000 };
  const sinceLine = { running: false, rollsOverAt: null };

  test('a running total counts on, and over its modulus', () => {
    const state = { ...openCounter(0), last: 990.5 };
    expect(countedSince(state, 993, running)).toBe(2.5);
    expect(countedSince(state, 990.5, running)).toBe(0);
    expect(countedSince(state, 0, running)).toBe(9.5);
    expect(countedSince(state, 3.25, running)).toBe(12.75);
  });

  test('without a modulus a lower reading went backwards', () => {
    const state = { ...openCounter(0), last: 990.5 };
    expect(countedSince(state, 3, { running: true, rollsOverAt: null })).toEqual({
      kind: 'backwards',
      last: 990.5,
    });
  });

  test('a running total that nobody has read before has no amount', () => {
    expect(countedSince(openCounter(0), 12, running)).toEqual({ kind: 'no baseline' });
  });

  test('an amount since the line counts from what was closed at a swap', () => {
    const state = openCounter(0);
    expect(countedSince(state, 120, sinceLine)).toBe(120);
    closeCounter(state, 120, { ms: 5, running: false, dayLine: false });
    expect(countedSince(state, 300, sinceLine)).toBe(180);
    expect(countedSince(state, 100, sinceLine)).toEqual({ kind: 'backwards', last: 120 });
    closeCounter(state, 300, { ms: 9, running: false, dayLine: true });
    expect(countedSince(state, 7, sinceLine)).toBe(7);
  });

  test('closing forgets the splits, and a copy keeps its own', () => {
    const state = openCounter(0);
    state.split = new Map([['store:PB', 7]]);
    const copy = cloneCounter(state);
    closeCounter(state, 1, { ms: 9, running: true, dayLine: true });
    expect([state.split.size, state.last, state.sinceMs]).toEqual([0, 1, 9]);
    expect([copy.split.get('store:PB'), copy.last]).toEqual([7, null]);
  });
});

const whole = (day: number) => ({
  condensate: (990 + 3 * day) % 1000,
  product: 3,
  strokes: 200,
  flushes: 12,
});

describe('a reading that was left out', () => {
  test('is not zero: the next reading holds both days, and splits stay inside', () => {
    const told = holm();
    for (let day = 1; day <= 3; day++) told.goTo(day, 21).tell('day-line', dayLine(day, whole(day)));
    const before = told.ledgerL('C-01');
    told.goTo(4, 12).tell('movement', { from: 'tap', to: 'people', amount: litres(0.5), use: 'drink' });
    told.goTo(4, 21).tell('day-line', dayLine(4, { ...whole(4), strokes: null }));
    expect(told.findings('count-missing')).toHaveLength(1);
    expect(told.fold.usage.days('drinking')).toHaveLength(3);
    told.goTo(5, 21).tell('day-line', dayLine(5, { ...whole(5), strokes: 400 }));
    expect(before - told.ledgerL('C-01')).toBeCloseTo(10 - 6, 6);
    const day = told.fold.usage.days('drinking').at(-1);
    expect(day).toMatchObject({ day: 5, days: 2 });
    expect(day?.netMg).toBe(4_000_000);
  });

  test('is believed by the daily mean meanwhile, with a wide doubt, and the ledger waits', () => {
    const told = holm();
    for (let day = 1; day <= 4; day++) told.goTo(day, 21).tell('day-line', dayLine(day, whole(day)));
    const ledger = told.ledgerL('C-01');
    const sure = told.believed('C-01');
    told.goTo(5, 21).tell('day-line', dayLine(5, { ...whole(5), strokes: null }));
    const doubtful = told.believed('C-01');
    expect(told.ledgerL('C-01')).toBe(ledger);
    expect(sure.valueL - doubtful.valueL).toBeCloseTo(2, 1);
    expect(doubtful.uL).toBeGreaterThan(sure.uL + 0.2);
    expect(told.position().closureMg).toBe(0);
  });
});

describe('a counter that went backwards', () => {
  test('is said, moves nothing, and teaches no daily use', () => {
    const told = holm();
    for (let day = 1; day <= 2; day++) told.goTo(day, 21).tell('day-line', dayLine(day, whole(day)));
    told.goTo(3, 12).tell('meter', { readings: readings({ strokes: 150 }) });
    const at = told.ledgerL('C-01');
    told.goTo(3, 14).tell('meter', { readings: readings({ strokes: 90 }) });
    expect(told.findings('counter-backwards')).toHaveLength(1);
    expect(told.ledgerL('C-01')).toBe(at);
    told.goTo(3, 21).tell('day-line', dayLine(3, whole(3)));
    // 200 strokes since the line are 5 L, however the slip in between was read.
    expect(told.accountL('people') + 9 - 3 * 5).toBeCloseTo(0, 6);
    told.goTo(4, 12).tell('meter', { readings: readings({ strokes: 300 }) });
    told.goTo(4, 21).tell('day-line', dayLine(4, whole(4)));
    expect(told.fold.usage.days('drinking').map(({ day }) => day)).toEqual([1, 2, 3]);
    told.goTo(5, 21).tell('day-line', dayLine(5, whole(5)));
    expect(told.fold.usage.days('drinking').at(-1)).toMatchObject({ day: 5, days: 1, netMg: 2_000_000 });
  });

  test('a step back of a counter that rolls over is a slip, not a thousand litres', () => {
    const told = holm();
    told.goTo(1, 21).tell('day-line', dayLine(1, { ...whole(1), condensate: 994 }));
    const at = told.ledgerL('KB');
    told.goTo(2, 21).tell('day-line', dayLine(2, { ...whole(2), condensate: 993.5 }));
    expect(told.findings('counter-backwards')).toHaveLength(1);
    expect(told.findings('counter-leaps')).toHaveLength(0);
    expect(told.ledgerL('KB')).toBeCloseTo(at - 3 / 0.96, 5);
  });

  test('a true roll-over is none', () => {
    const told = holm();
    for (let day = 1; day <= 6; day++) told.goTo(day, 21).tell('day-line', dayLine(day, whole(day)));
    expect(told.findings('counter-backwards')).toHaveLength(0);
    expect(told.ledgerL('KB')).toBeCloseTo(4 + 18 - 18 / 0.96, 4);
  });
});

describe('a first reading', () => {
  test('sets the baseline of a running total and is no day of use', () => {
    const told = holm();
    told.fold.counters.delete('condensate');
    for (let day = 1; day <= 3; day++) told.goTo(day, 21).tell('day-line', dayLine(day, whole(day)));
    expect(told.fold.usage.days('raw').map(({ day }) => day)).toEqual([2, 3]);
    expect(told.fold.usage.days('drinking').map(({ day }) => day)).toEqual([1, 2, 3]);
  });
});

test('more than the unit can pass is asked about, and kept', () => {
  const told = holm();
  told.goTo(1, 21).tell('day-line', dayLine(1, { ...whole(1), product: 31 }));
  expect(told.findings('counter-leaps').map(({ data }) => data['massMg'])).toEqual([31_000_000]);
  expect(told.accountL('unplaced')).toBe(0);
});

test('a reading of something that is no instrument is said', () => {
  const told = holm();
  told.goTo(1, 12).tell('meter', { readings: readings({ 'no such': 3 }) });
  expect(told.findings('instrument-unknown')[0]?.data).toMatchObject({ name: 'no such' });
});

describe('usage', () => {
  test('use less making, from line to line, by grade', () => {
    const told = holm();
    told.goTo(1, 21).tell('day-line', dayLine(1, whole(1)));
    expect(told.fold.usage.days('drinking')[0]).toMatchObject({
      day: 1,
      days: 1,
      peopleAboard: 2,
      netMg: 2_000_000,
    });
    expect(told.fold.usage.days('technical')[0]).toMatchObject({ netMg: 600_000 });
  });

  test('a second line an hour later closes no day and loses nothing', () => {
    const told = holm();
    told.goTo(1, 21).tell('day-line', dayLine(1, whole(1)));
    told.goTo(1, 22).tell('day-line', dayLine(1, { condensate: 993, product: 0, strokes: 20, flushes: 0 }));
    told.goTo(2, 21).tell('day-line', dayLine(2, whole(2)));
    const days = told.fold.usage.days('drinking');
    expect(days.map(({ day }) => day)).toEqual([1, 2]);
    expect(days[1]?.netMg).toBe(2_500_000);
  });

  test('use that nothing on the port explains is use all the same', () => {
    const told = holm();
    told
      .goTo(1, 8)
      .tell('declared-empty', { store: 'C-02', port: 'flush feed', counters: readings({ flushes: 4 }) });
    told.goTo(1, 21).tell('day-line', dayLine(1, whole(1)));
    expect(told.accountL('unplaced')).toBeCloseTo(-0.4, 9);
    expect(told.fold.usage.days('technical')[0]).toMatchObject({ netMg: 600_000 });
  });
});
