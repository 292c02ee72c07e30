// Stores that look mistaken for others, grades in every kind that names one, and entries that say again what another said.
import { describe, expect, test } from 'vitest';
import { at, holm, litres, type Told } from '../../../tests/journeys/told.ts';

const doubts = (told: Told) =>
  told.findings('store-doubtful').map(({ data, where }) => [data['why'], where.store, data['candidates']]);

describe('another store', () => {
  test('taken off a port on which it does not stand', () => {
    const told = holm();
    told.goTo(1).tell('declared-empty', { store: 'C-04', port: 'tap feed', counters: [] });
    expect(doubts(told)).toEqual([['not on port', 'C-04', ['C-01']]]);
  });

  test.each([
    ['C-03', 'empty on feed'],
    ['C-02', 'other grade'],
  ])('%s on the tap: %s', (store, why) => {
    const told = holm();
    told.goTo(1).tell('hookup', { store, port: 'tap feed' });
    expect(doubts(told)).toEqual([[why, store, ['C-04']]]);
  });

  test('water on hold is not put on the tap, and a released one may be', () => {
    const told = holm();
    told.goTo(1, 8).tell('hold', { hold: 'Q-1', stores: ['C-04'], conditional: [], reason: 'plate count' });
    told.goTo(1, 9).tell('hookup', { store: 'C-04', port: 'tap feed' });
    expect(doubts(told)).toEqual([['held', 'C-04', []]]);
    const free = holm();
    free.goTo(1, 9).tell('hookup', { store: 'C-04', port: 'tap feed' });
    expect(doubts(free)).toEqual([]);
  });

  test('water into a full one, where an empty one stands beside it', () => {
    const told = holm();
    told.goTo(1).tell('movement', { from: 'R1', to: 'C-04', amount: litres(12) });
    expect(doubts(told)).toEqual([['full', 'C-04', ['C-03']]]);
  });

  test('a weight that is far from the named one and that of another', () => {
    const told = holm();
    told.goTo(1).tell('weigh', { store: 'C-03', amount: litres(18, 0.2), method: 'balance' });
    expect(doubts(told)).toEqual([['fits other', 'C-03', ['C-04']]]);
  });

  test('a result of another store than its sample, a sample of an empty store, a release of what is not held', () => {
    const told = holm();
    told.goTo(1, 8).tell('sample', { store: 'C-04', sample: 'S-1', tests: [] });
    told.goTo(1, 9).tell('sample', { store: 'C-03', sample: 'S-2', tests: [] });
    told.goTo(1, 10).tell('result', { sample: 'S-1', store: 'C-01', values: [] });
    told.goTo(1, 11).tell('release', { hold: 'Q-1', stores: ['C-04'], values: [] });
    expect(doubts(told).map(([why]) => why)).toEqual(['emptied already', 'sample of other', 'not held']);
  });

  test('a result before its sample', () => {
    const told = holm();
    told.goTo(1, 8).tell('result', { sample: 'S-1', store: 'C-04', values: [] });
    told.goTo(1, 9).tell('sample', { store: 'C-04', sample: 'S-1', tests: [] });
    expect(told.findings('order-impossible')).toMatchObject([{ data: { why: 'result before sample' } }]);
  });
});

describe('a grade that is not that of the water', () => {
  const said = (tell: (told: Told) => unknown) => {
    const told = holm();
    tell(told.goTo(1));
    return told
      .findings('grade-mismatch')
      .map(({ data, where }) => [where.store, data['said'], data['believed']]);
  };
  const flow = { from: 'C-04', to: 'C-03', amount: litres(2), grade: 'technical' };
  const wrong = [['C-04', 'technical', 'drinking']];

  test.each([
    ['a movement', (told: Told) => told.tell('movement', flow), wrong],
    ['a run that stops', (told: Told) => told.tell('run-pause', { run: 'T-1', ...flow }), wrong],
    ['a run that ends', (told: Told) => told.tell('run-finish', { run: 'T-1', ...flow }), wrong],
    [
      'a push',
      (told: Told) =>
        told.tell('push', {
          ...{ from: [{ store: 'C-04', amount: litres(2) }], to: [{ store: 'C-03', amount: litres(2) }] },
          ...{ amount: litres(2), grade: 'technical' },
        }),
      wrong,
    ],
    [
      'what was in a receiver before',
      (told: Told) =>
        told.tell('movement', { from: 'R1', to: 'C-04', amount: litres(1), receiverWas: 'technical' }),
      wrong,
    ],
    [
      'a label',
      (told: Told) =>
        told.tell('relabel', { store: 'C-04', fromLabel: 'Technical', toGrade: 'waste', twoPersons: true }),
      wrong,
    ],
    [
      'a downgrade',
      (told: Told) =>
        told.tell('downgrade', { store: 'C-04', fromGrade: 'technical', toGrade: 'waste', values: [] }),
      wrong,
    ],
  ])('%s', (_name, tell, expected) => {
    expect(said(tell)).toEqual(expected);
  });
});

describe('the same again', () => {
  const weigh = { store: 'C-04', amount: litres(18.1), method: 'balance' };
  const ground = { by: 'planner', source: 'copied on the ground' };

  test('a copy by a clock that is 5:30 ahead is left out until somebody decides', () => {
    const told = holm();
    const first = told.goTo(1, 9).tell('weigh', weigh);
    const before = told.believed('C-04');
    told.goTo(1, 14.5).tell('weigh', weigh, ground);
    expect(told.findings('copy-proposed')).toMatchObject([
      { data: { reason: 'clock apart', apartMin: 330 } },
    ]);
    expect(told.findings('copy-proposed')[0]?.entries).toContain(first.id);
    expect(told.believed('C-04')).toEqual(before);
  });

  test.each([
    ['merge', 0],
    ['both are true', 1],
  ] as const)('decided: %s', (decision, counts) => {
    const told = holm();
    const first = told.goTo(1, 9).tell('roster', { change: 'arrive', people: 1 });
    const id = first.id.replace(/^.{8}/, 'ffffffff');
    told.fold.decisions = new Map([[id, { first: first.id, decision }]]);
    told.goTo(1, 14.5).tell('roster', { change: 'arrive', people: 1 }, { ...ground, id });
    expect(told.findings('copy-proposed')).toEqual([]);
    expect(told.fold.peopleAboard).toBe(3 + counts);
  });

  test('typed twice: acts within two minutes, readings only at the same instant', () => {
    const told = holm();
    told.goTo(1, 9).tell('hookup', { store: 'C-04', port: 'tap feed' });
    told.goTo(1, 9 + 1 / 60).tell('hookup', { store: 'C-04', port: 'tap feed' });
    told.goTo(1, 10).tell('weigh', weigh);
    told.goTo(1, 10 + 1 / 60).tell('weigh', weigh);
    expect(told.findings('copy-proposed')).toHaveLength(1);
    told.tell('weigh', weigh);
    expect(told.findings('copy-proposed')).toHaveLength(2);
  });

  test('times inside go with the clock that told them', () => {
    const draw = (hour: number) => ({
      ...{ counter: 'strokes', store: 'R1', sinceMs: at(1, hour - 1), amount: litres(0.3), reserve: true },
    });
    const told = holm();
    told.goTo(1, 9).tell('source-change', draw(9));
    told.goTo(1, 14.5).tell('source-change', draw(14.5), ground);
    expect(told.findings('copy-proposed')).toHaveLength(1);
  });

  test('another content, or clocks that differ by no quarter of an hour, are another act', () => {
    const told = holm();
    told.goTo(1, 9).tell('weigh', weigh);
    told.goTo(1, 14.6).tell('weigh', weigh, ground);
    told.goTo(1, 15).tell('weigh', { ...weigh, amount: litres(18.2) }, ground);
    expect(told.findings('copy-proposed')).toEqual([]);
  });
});
