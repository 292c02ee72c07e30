// Contact tracing on small stories of Holm: who drank, hoses, doses, words that cut, water taken back, points of sampling.
import { describe, expect, test } from 'vitest';
import { draftOf, holmBook, keep } from '../../../tests/journeys/kept.ts';
import { at, dayLine, litres } from '../../../tests/journeys/told.ts';
import type { AnyEntry, Body, Kind } from '../../book/index.ts';
import { type Traced, traceContacts } from './contacts.ts';
import { historyOf } from './history.ts';
import { Mixing } from './mixing.ts';
import { originsOf } from './origins.ts';
import { holdProposal } from './proposal.ts';
import type { WaterHistory } from './step.ts';
import { suspicionAt, suspicionOfSample } from './suspicion.ts';

const MG = 1_000_000;

type Line = { [K in Kind]: readonly [hour: number, kind: K, body: Body<K>] }[Kind];

/** A story of Day 1 of Holm, hour by hour, by the ledger alone. */
async function story(
  ...lines: readonly Line[]
): Promise<{ history: WaterHistory; entries: readonly AnyEntry[] }> {
  const port = await holmBook();
  const drafts = lines.map(([hour, kind, body], k) =>
    draftOf(kind, body, { atMs: at(1, hour), count: 10 + k }),
  );
  const entries = await keep(port, drafts);
  const outcome = await historyOf(port, { estimating: false });
  if (!outcome.ok) throw new Error('no history');
  return { history: outcome.history, entries };
}

const move = (hour: number, from: string, to: string, valueL: number, hose = 'H-1'): Line => [
  hour,
  'movement',
  { from, to, amount: litres(valueL), hose },
];
const sample = (hour: number, store: string, name: string, drawnFrom?: string): Line => [
  hour,
  'sample',
  { store, sample: name, tests: [], ...(drawnFrom !== undefined && { drawnFrom }) },
];
const release = (hour: number, ...stores: string[]): Line => [hour, 'release', { stores, values: [] }];
const dose = (hour: number, store: string): Line => [
  hour,
  'dose',
  { stores: [store], biocide: 'silver', doseEach: litres(0.01) },
];

/** `C-03 4 of 4, R1 2 of 152` */
function said({ trace }: Traced): string {
  const litresOf = (massMg: number | null) => (massMg === null ? '∞' : `${Math.round(massMg / 1000) / 1000}`);
  return trace.contacts
    .map(({ name, suspectMg, heldMg }) => `${name} ${litresOf(suspectMg)} of ${litresOf(heldMg)}`)
    .join(', ');
}

test('mixing keeps what it started with and what readings changed', () => {
  const mixing = new Mixing(['a', 'b', 'c'].map((name) => ({ kind: 'store', name })));
  const all = () => [0, 1, 2].reduce((sum, account) => sum + mixing.suspectMg(account), 0);
  mixing.open(0, 9 * MG);
  mixing.close(0);
  mixing.meet(1, 3 * MG);
  expect(mixing.flow(0, 1, 3 * MG)).toBe(3 * MG);
  expect(mixing.flow(1, 2, 2 * MG)).toBe(MG);
  expect([mixing.startedMg, mixing.changedMg, all()]).toEqual([9 * MG, 0, 9 * MG]);
  mixing.meet(1, 2 * MG);
  expect([mixing.shareOf(1), mixing.changedMg, all()]).toEqual([0.5, -MG, 8 * MG]);
  expect(mixing.clear(1)).toBe(MG);
  expect(all()).toBe(7 * MG);
});

describe('forward', () => {
  test('litres, dilution and the way, by perfect mixing', async () => {
    const { history } = await story(
      move(8, 'C-04', 'C-03', 4),
      sample(9, 'C-03', 'S1'),
      move(10, 'C-01', 'C-03', 4),
      move(11, 'C-03', 'R1', 2, 'H-2'),
    );
    const traced = traceContacts(
      history,
      suspicionOfSample(history, 'S1') ?? suspicionAt(history, { store: '' }, 0),
    );
    expect(said(traced)).toBe('C-03 3 of 6, R1 1 of 152');
    expect(traced.trace).toMatchObject({ startedMg: 4 * MG, changedMg: 0, elsewhereMg: 0 });
    expect(traced.trace.contacts[1]).toMatchObject({
      firstMs: at(1, 11),
      lastMs: at(1, 11),
      bySampledWay: true,
    });
    expect(traced.trace.contacts[1]?.path).toMatchObject([{ from: 'C-03', to: 'R1', hose: 'H-2' }]);
    expect(holdProposal(history, traced.trace)).toMatchObject({ hold: ['C-03'], conditional: ['R1'] });
  });

  test('what left the same source before the sample is under suspicion, back to its last clean word', async () => {
    const { history, entries } = await story(
      move(8, 'C-04', 'C-03', 2),
      sample(9, 'C-04', 'good'),
      move(10, 'C-04', 'W-02', 3),
      sample(11, 'C-04', 'bad'),
      [12, 'result', { sample: 'good', values: [] }],
      [12.5, 'result', { sample: 'bad', values: [] }],
    );
    const suspicion = suspicionOfSample(history, 'bad');
    if (suspicion === null) throw new Error('no sample');
    expect(said(traceContacts(history, suspicion))).toBe('C-04 13 of 13, C-03 2 of 2, W-02 3 of 3');
    const clean = new Set([entries[4]?.id ?? '']);
    const { trace, drunk } = traceContacts(history, suspicion, { clean });
    expect(said({ trace, drunk })).toBe('C-04 13 of 13, W-02 3 of 3');
    expect(trace.windows).toMatchObject([
      { opened: 'clean result', entry: entries[4]?.id, fromMs: at(1, 9) },
    ]);
  });

  test('a filling that began after the store was empty opens the window', async () => {
    const { history } = await story(
      move(8, 'C-04', 'C-03', 3),
      move(8.5, 'C-03', 'R1', 2.9),
      [9, 'declared-empty', { store: 'C-03', counters: [] }],
      move(10, 'C-01', 'C-03', 5),
      move(11, 'C-03', 'W-02', 1),
    );
    const { trace } = traceContacts(history, suspicionAt(history, { store: 'C-03' }, at(1, 10.5)));
    expect(trace.windows).toMatchObject([{ opened: 'filling began', fromMs: at(1, 10) }]);
    expect(trace.contacts.map(({ name }) => name)).toEqual(['C-03', 'W-02']);
  });

  test('a release ends it and names the dose before; a dose alone does not', async () => {
    const lines = [move(8, 'C-04', 'C-03', 4), sample(9, 'C-04', 'S1'), dose(10, 'C-03')];
    const dosed = await story(...lines);
    const suspicion = suspicionOfSample(dosed.history, 'S1');
    if (suspicion === null) throw new Error('no sample');
    expect(said(traceContacts(dosed.history, suspicion))).toBe('C-04 14 of 14, C-03 4 of 4.01');
    const { history, entries } = await story(...lines, release(12, 'C-03'), move(13, 'C-03', 'R1', 1));
    const traced = traceContacts(history, suspicion);
    expect(said(traced)).toBe('C-04 14 of 14, C-03 0 of 3.01');
    expect(traced.trace.cuts).toEqual([
      {
        store: 'C-03',
        how: 'release',
        entry: entries[3]?.id,
        treatedBy: entries[2]?.id,
        atMs: at(1, 12),
        clearedMg: 4 * MG,
      },
    ]);
  });

  test('a sample of the fill hose speaks of the store behind it, and of its own way', async () => {
    const { history } = await story(
      move(8, 'C-04', 'C-03', 2, 'H-1'),
      sample(9, 'C-03', 'S1', 'fill hose'),
      move(10, 'C-04', 'R1', 1, 'H-2'),
    );
    const suspicion = suspicionOfSample(history, 'S1');
    expect(suspicion).toMatchObject({ sources: ['C-04'], hose: 'H-1' });
    const { trace } = traceContacts(history, suspicion ?? suspicionAt(history, { store: '' }, 0));
    expect(trace.contacts.map(({ name, bySampledWay }) => [name, bySampledWay])).toEqual([
      ['C-04', true],
      ['C-03', true],
      ['R1', false],
    ]);
  });

  test('what stands in a hose between two parts of a run is found there', async () => {
    const { history } = await story(
      [8, 'run-start', { run: 'RUN-1', from: 'C-04', to: 'C-03', hose: 'H-1' }],
      [9, 'run-pause', { run: 'RUN-1', amount: litres(3), lineContentMg: 300_000 }],
      sample(10, 'C-04', 'S1'),
    );
    const traced = traceContacts(history, suspicionAt(history, { store: 'C-04' }, at(1, 10)));
    expect(said(traced)).toBe('C-04 15 of 15, C-03 2.7 of 2.7, RUN-1 0.3 of 0.3');
    expect(suspicionAt(history, { hose: 'H-1' }, at(1, 10)).sources).toEqual(['C-04']);
  });

  test('who drank is told apart, with the person where one is named', async () => {
    const { history, entries } = await story(
      sample(7, 'C-04', 'S1'),
      [8, 'movement', { from: 'C-04', to: 'people', amount: litres(0.4), use: 'drink', person: 'chief' }],
      [9, 'movement', { from: 'C-01', to: 'people', amount: litres(0.3), use: 'drink', person: 'medic' }],
    );
    const { trace, drunk } = traceContacts(history, suspicionAt(history, { store: 'C-04' }, at(1, 10)));
    expect(drunk).toEqual([
      {
        atMs: at(1, 8),
        entry: entries[1]?.id,
        from: 'C-04',
        massMg: 400_000,
        suspectMg: 400_000,
        person: 'chief',
      },
    ]);
    expect(JSON.stringify(trace)).not.toContain('chief');
    expect(said({ trace, drunk })).toBe('C-04 17.6 of 17.6, people 0.4 of ∞');
  });

  test('what a counter counted is drunk by nobody in particular', async () => {
    const { history } = await story([
      21,
      'day-line',
      dayLine(1, { condensate: 990, product: 0, strokes: 200, flushes: 0 }),
    ]);
    const { drunk } = traceContacts(history, suspicionAt(history, { unit: 'tap' }, at(1, 22)));
    expect(drunk.length).toBeGreaterThan(0);
    expect(drunk.every(({ person }) => person === null)).toBe(true);
    expect(Math.round(drunk.reduce((sum, { suspectMg }) => sum + suspectMg, 0))).toBe(5 * MG);
  });

  test('a point at which nothing is speaks of nothing', async () => {
    const { history } = await story();
    expect(suspicionOfSample(history, 'nowhere')).toBeNull();
    for (const point of [{ store: 'X' }, { hose: 'X' }, { port: 'X' }, { unit: 'X' }])
      expect(suspicionAt(history, point, at(1, 12)).sources).toEqual([]);
    expect(traceContacts(history, suspicionAt(history, { store: 'X' }, at(1, 12))).trace.contacts).toEqual(
      [],
    );
    expect(originsOf(history, 'X')).toBeNull();
  });
});

describe('backward', () => {
  test('says where the water began, and through what it came', async () => {
    const { history } = await story(
      move(8, 'C-04', 'C-03', 4),
      move(9, 'C-01', 'C-03', 4),
      move(10, 'C-03', 'W-02', 2),
    );
    const origins = originsOf(history, 'W-02');
    expect(origins?.origins.map(({ kind, name, massMg }) => [kind, name, massMg])).toEqual([
      ['told', 'C-04', MG],
      ['told', 'C-01', MG],
    ]);
    expect(origins?.passedOn.map(({ name, massMg, isGiver }) => [name, massMg, isGiver])).toEqual([
      ['C-03', 2 * MG, true],
      ['C-01', MG, false],
      ['C-04', MG, false],
    ]);
  });

  test('ends at a release, unless it is to go through; and where the time that is looked at began', async () => {
    const { history, entries } = await story(
      move(8, 'C-04', 'C-03', 4),
      release(9, 'C-03'),
      move(10, 'C-03', 'W-02', 2),
    );
    const [released] = originsOf(history, 'W-02')?.origins ?? [];
    expect(released).toMatchObject({
      kind: 'release',
      name: 'C-03',
      massMg: 2 * MG,
      entries: [entries[1]?.id],
    });
    expect(originsOf(history, 'W-02', { throughCuts: true })?.origins).toMatchObject([
      { kind: 'told', name: 'C-04' },
    ]);
    expect(originsOf(history, 'W-02', { sinceMs: at(1, 9.5) })?.origins).toMatchObject([
      { kind: 'stood in', name: 'C-03', massMg: 2 * MG },
    ]);
    expect(originsOf(history, 'C-03', { atMs: at(1, 9) })).toMatchObject({ heldMg: 4 * MG });
  });
});
