// Times and orders that cannot be are asked about; late work that says so, and acts at their usual hour, are not.
import { describe, expect, test } from 'vitest';
import { at, dayLine, holm, litres, type Told } from '../../../tests/journeys/told.ts';

const whole = (day: number) => ({
  condensate: (990 + 3.4 * day) % 1000,
  product: 3.26,
  strokes: 216,
  flushes: 12,
});
const reasons = (told: Told) =>
  [...told.findings('time-implausible'), ...told.findings('order-impossible')].map(({ data }) => data['why']);
const hookup = { store: 'C-04', port: 'tap feed' };

describe('entered and happened', () => {
  test.each([
    [at(2, 6), {}, []],
    [at(2, 9), {}, ['written late']],
    [at(2, 9), { late: 'found on paper' }, []],
    [at(2, 9), { note: 'forgotten yesterday' }, []],
    [at(1, 11), {}, ['after entered']],
  ])('entered at %d', (enteredAtMs, more, expected) => {
    const told = holm();
    told.goTo(1, 12).tell('hookup', hookup, { enteredAtMs, ...more });
    expect(reasons(told)).toEqual(expected);
  });

  test('what is made up for at one sitting is asked about once', () => {
    const told = holm();
    for (let hour = 8; hour < 14; hour++)
      told
        .goTo(1, hour)
        .tell('sample', { store: 'R1', sample: `S-${hour}`, tests: [] }, { enteredAtMs: at(3, 8) });
    expect(reasons(told)).toEqual(['written late']);
  });

  test('words about other entries may come at any time', () => {
    const told = holm();
    told.goTo(1, 12).tell('note', { text: 'all is well' }, { enteredAtMs: at(9, 8) });
    expect(reasons(told)).toEqual([]);
  });
});

describe('day lines', () => {
  test.each([
    [19, []],
    [23, []],
    [9, ['line hour']],
  ])('a line at %d h', (hour, expected) => {
    const told = holm();
    told.goTo(1, hour).tell('day-line', dayLine(1, whole(1)));
    expect(reasons(told)).toEqual(expected);
  });

  test('a second line on one day names the first', () => {
    const told = holm();
    const first = told.goTo(1, 21).tell('day-line', dayLine(1, whole(1)));
    told.goTo(1, 21.5).tell('day-line', dayLine(1, { ...whole(1), flushes: 13 }));
    expect(reasons(told)).toEqual(['line twice']);
    expect(told.findings('time-implausible')[0]?.entries).toContain(first.id);
  });

  test('people in a line that nobody has seen come, once', () => {
    const told = holm();
    for (let day = 1; day <= 3; day++) told.goTo(day, 21).tell('day-line', dayLine(day, whole(day), 5));
    expect(told.findings('people-differ')).toMatchObject([{ data: { said: 5, fewest: 2, most: 2 } }]);
  });

  test('whoever came between two lines may be counted or not', () => {
    for (const people of [2, 3]) {
      const told = holm();
      told.goTo(1, 12).tell('roster', { change: 'arrive', people: 1 });
      told.goTo(1, 21).tell('day-line', dayLine(1, whole(1), people));
      expect(told.findings('people-differ')).toEqual([]);
    }
  });
});

describe('flows', () => {
  const flow = (
    told: Told,
    hour: number,
    more: { startAtMs?: number; flowMinutes?: number; hose?: string } = {},
  ) =>
    told
      .goTo(1, hour)
      .tell('movement', { from: 'R1', to: 'outside', amount: litres(4 + hour / 100), ...more });

  test.each([
    [{ startAtMs: at(1, 13) }, ['ends before start']],
    [{ startAtMs: at(1, 9), flowMinutes: 15 }, ['flow length']],
    [{ startAtMs: at(1, 11.7), flowMinutes: 16 }, []],
  ])('%o', (more, expected) => {
    const told = holm();
    flow(told, 12, more);
    expect(reasons(told)).toEqual(expected);
  });

  test('one flow at a time through one hose; one after the other is fine', () => {
    const told = holm();
    flow(told, 9.5, { hose: 'H-1', startAtMs: at(1, 9) });
    flow(told, 10, { hose: 'H-1', startAtMs: at(1, 9.5) });
    expect(reasons(told)).toEqual([]);
    flow(told, 10.4, { hose: 'H-1', startAtMs: at(1, 9.9) });
    expect(reasons(told)).toEqual(['hose busy']);
  });

  test('an hour at which it was never done, once: the second one is a habit', () => {
    const told = holm();
    const move = (day: number, hour: number) =>
      told
        .goTo(day, hour)
        .tell('movement', { from: 'R1', to: 'C-03', amount: litres(0.5 + told.entries.length / 100) });
    for (const [day, hour] of [
      [1, 9],
      [1, 10],
      [2, 11],
    ] as const)
      move(day, hour);
    move(3, 13);
    expect(reasons(told)).toEqual([]);
    move(3, 22);
    expect(reasons(told)).toEqual(['unusual hour']);
    move(4, 22);
    move(5, 22);
    expect(reasons(told)).toHaveLength(2);
  });
});

describe('ports', () => {
  test('a store comes off after the next one was put on: both are named', () => {
    const told = holm();
    const on = told.goTo(1, 9).tell('hookup', hookup);
    told.goTo(1, 14).tell('declared-empty', { store: 'C-01', port: 'tap feed', counters: [] });
    expect(reasons(told)).toEqual(['off after on']);
    expect(told.findings('order-impossible')[0]?.entries).toContain(on.id);
  });

  test.each([
    [0.1, []],
    [5.5, ['port empty']],
    [60, []],
  ])('a port that was empty for %d h', (hours, expected) => {
    const told = holm();
    told.goTo(1, 9).tell('declared-empty', { store: 'C-01', port: 'tap feed', counters: [] });
    told.goTo(1, 9 + hours).tell('hookup', hookup);
    expect(reasons(told)).toEqual(expected);
  });

  test('a port is empty as long as water comes from elsewhere, where that is told', () => {
    const told = holm();
    told.goTo(1, 9).tell('declared-empty', { store: 'C-01', port: 'tap feed', counters: [] });
    const draw = { counter: 'strokes', store: 'R1', sinceMs: at(1, 9), amount: litres(0.3), reserve: true };
    told.goTo(1, 12).tell('source-change', draw);
    told.goTo(1, 15).tell('hookup', hookup);
    expect(reasons(told)).toEqual([]);
  });
});
