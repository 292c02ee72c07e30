// Runs with pauses, pushes with several legs, and names that are nowhere.
import { describe, expect, test } from 'vitest';
import { holm, litres } from '../../tests/journeys/told.ts';
import type { Body } from '../book/index.ts';

const push = (
  from: [string, number][],
  to: [string, number][],
  valueL: number,
  uL?: number,
): Body<'push'> => ({
  from: from.map(([store, each]) => ({ store, amount: litres(each) })),
  to: to.map(([store, each]) => ({ store, amount: litres(each) })),
  amount: litres(valueL, uL),
});

describe('a run', () => {
  test('in two parts leaves its line content in the hose in between, and ends whole', () => {
    const told = holm();
    told.goTo(1, 9).tell('run-start', { run: 'run 1', from: 'R1', to: 'C-03' });
    told.goTo(1, 10).tell('run-pause', { run: 'run 1', amount: litres(8), lineContentMg: 300_000 });
    expect([told.ledgerL('R1'), told.ledgerL('C-03'), told.accountL('line:run 1')]).toEqual([142, 7.7, 0.3]);
    told.goTo(2, 9).tell('run-resume', { run: 'run 1' });
    told.goTo(2, 10).tell('run-finish', { run: 'run 1', amount: litres(12.5) });
    expect([told.ledgerL('R1'), told.ledgerL('C-03'), told.accountL('line:run 1')]).toEqual([129.5, 20.5, 0]);
    expect(told.fold.runs.size).toBe(0);
  });

  test('may be told whole at its end, and paused twice', () => {
    const told = holm();
    told.tell('run-finish', { run: 'run 2', from: 'R1', to: 'C-03', amount: litres(5) });
    told.tell('run-start', { run: 'run 3', from: 'R1', to: 'C-03' });
    told.tell('run-pause', { run: 'run 3', amount: litres(2), lineContentMg: 300_000 });
    told.tell('run-pause', { run: 'run 3', amount: litres(2), lineContentMg: 100_000 });
    expect([told.ledgerL('C-03'), told.accountL('line:run 3')]).toEqual([5 + 1.7 + 0.3 + 1.9, 0.1]);
  });

  test('that nobody knows is said and moves nothing', () => {
    const told = holm();
    told.tell('run-finish', { run: 'run 9', amount: litres(5) });
    expect(told.findings('run-unknown')).toHaveLength(1);
    expect(told.ledgerL('R1')).toBe(150);
  });

  test('whose line empties into an emptied container breaks no rule by that', () => {
    const told = holm();
    told.tell('declared-empty', { store: 'C-04', counters: [] });
    told.tell('run-start', { run: 'run 4', from: 'C-02', to: 'C-03' });
    told.tell('run-pause', { run: 'run 4', amount: litres(3), lineContentMg: 300_000 });
    told.tell('run-finish', { run: 'run 4', to: 'C-04', amount: litres(4) });
    expect(told.findings('grade-may-not-flow')).toHaveLength(0);
    expect(told.ledgerL('C-04')).toBeCloseTo(18 + 4.3, 9);
    expect(told.fold.stores.get('C-04')).toMatchObject({ grade: 'technical', hold: null });
  });
});

describe('a push', () => {
  test('with several legs on both sides gives what each gave and got', () => {
    const told = holm();
    told.tell(
      'push',
      push(
        [
          ['C-04', 6],
          ['C-01', 8],
        ],
        [
          ['C-03', 10],
          ['W-02', 4],
        ],
        14,
      ),
    );
    expect(['C-04', 'C-01', 'C-03', 'W-02'].map((id) => told.ledgerL(id))).toEqual([12, 12, 10, 4]);
    expect(told.findings('legs-differ')).toHaveLength(0);
  });

  test('whose legs differ keeps what was given, says so, and is as doubtful as they differ', () => {
    const told = holm();
    told.tell('push', push([['C-04', 6]], [['C-03', 5.5]], 6, 0.01));
    expect(told.ledgerL('C-03')).toBe(6);
    expect(told.findings('legs-differ')[0]?.data).toMatchObject({ givenMg: 6_000_000, gotMg: 5_500_000 });
    expect(told.believed('C-03').uL).toBeGreaterThan(0.4);
    const more = holm();
    more.tell('push', push([['C-04', 6]], [['C-03', 6.5]], 6, 0.01));
    expect(more.ledgerL('C-03')).toBe(6);
    expect(more.believed('C-03').uL).toBeGreaterThan(0.4);
  });

  test('has its doubt once, over all of its legs', () => {
    const told = holm();
    told.tell(
      'push',
      push(
        [
          ['C-04', 6],
          ['C-01', 6],
        ],
        [['C-03', 12]],
        12,
        0.5,
      ),
    );
    expect(told.believed('C-03').uL).toBeCloseTo(Math.sqrt(0.5 ** 2 + 0.05 ** 2), 5);
    expect(told.believed('C-04').uL).toBeCloseTo(told.believed('C-01').uL, 6);
    const split = holm();
    split.tell(
      'push',
      push(
        [['C-04', 12]],
        [
          ['C-03', 6],
          ['W-02', 6],
        ],
        12,
        0.5,
      ),
    );
    expect(split.believed('C-04').uL).toBeCloseTo(Math.sqrt(0.5 ** 2 + 0.25 ** 2), 5);
    expect(split.believed('C-03').uL ** 2 - 0.05 ** 2).toBeCloseTo(
      split.believed('W-02').uL ** 2 - 0.1 ** 2,
      5,
    );
  });
});

describe('names', () => {
  test('a store that is nowhere: the water is unplaced, and the nearest name is offered', () => {
    const told = holm();
    told.tell('movement', { from: 'C-04', to: 'C-O3', amount: litres(2) });
    expect(told.accountL('unplaced')).toBe(2);
    expect(told.findings('store-unknown')[0]?.data).toMatchObject({
      name: 'C-O3',
      nearest: expect.arrayContaining(['C-03']),
    });
    told.tell('weigh', { store: 'C-0l', amount: litres(2) });
    expect(told.findings('store-unknown')[1]?.data).toMatchObject({
      name: 'C-0l',
      nearest: expect.arrayContaining(['C-01']),
    });
  });

  test('a port stands for what is on it; with nothing on it the water is unplaced', () => {
    const told = holm();
    told.tell('movement', { from: 'tap feed', to: 'C-03', amount: litres(2) });
    expect(told.ledgerL('C-01')).toBe(18);
    told.tell('declared-empty', { store: 'C-01', port: 'tap feed', counters: [] });
    told.tell('movement', { from: 'C-04', to: 'tap feed', amount: litres(1) });
    expect([told.accountL('unplaced'), told.findings('port-empty').length]).toEqual([1, 1]);
  });

  test('more than a store can hold is kept and said', () => {
    const told = holm();
    told.tell('movement', { from: 'R1', to: 'C-04', amount: litres(20) });
    expect(told.ledgerL('C-04')).toBe(38);
    expect(told.findings('over-capacity')).toHaveLength(1);
  });
});
