// The bad sample of the practice outpost: what it touches when its result is there, and what the releases after it end.
import { beforeAll, describe, expect, test } from 'vitest';
import {
  type HistoryOutcome,
  historyOf,
  holdProposal,
  originsOf,
  suspicionAt,
  suspicionOfSample,
  type Traced,
  traceContacts,
  type WaterHistory,
} from '../../src/account/index.ts';
import type { BookPort } from '../../src/book/index.ts';
import { corrieDesk } from '../reckon/corrie-at-the-end.ts';

const MG_PER_L = 997_800;
const EIGHT = ['C-05', 'C-06', 'C-11', 'C-12', 'C-13', 'C-14', 'C-15', 'C-16'];
const at = (day: number, hour: number, minute = 0) => Date.UTC(2147, 2, day, hour, minute);
const litresOf = (massMg: number) => massMg / MG_PER_L;

let port: BookPort;
beforeAll(async () => {
  port = (await corrieDesk()).port;
});

function mustBe(outcome: HistoryOutcome): WaterHistory {
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.findings));
  return outcome.history;
}

async function asOf(asOfMs: number): Promise<WaterHistory> {
  return mustBe(await historyOf(port, { view: { asOfMs } }));
}

function traced(history: WaterHistory, clean: ReadonlySet<string> = new Set()): Traced {
  const suspicion = suspicionOfSample(history, 'SMP-03');
  if (suspicion === null) throw new Error('the sample is not in the book');
  return traceContacts(history, suspicion, { clean });
}

function of({ trace }: Traced, name: string) {
  const contact = trace.contacts.find((one) => one.name === name);
  if (contact === undefined) throw new Error(`${name} was not touched`);
  return contact;
}

describe('SMP-03, when its result is there on Day 14', () => {
  let history: WaterHistory;
  beforeAll(async () => {
    history = await asOf(at(14, 16, 20));
  });

  test('speaks of the freighter tank since that came aboard, by the hose of the fills', () => {
    const suspicion = suspicionOfSample(history, 'SMP-03');
    expect(suspicion).toMatchObject({ sources: ['FA'], hose: 'H-1', takenAtMs: at(8, 13, 10) });
    const [window] = traced(history).trace.windows;
    expect(window).toMatchObject({ store: 'FA', opened: 'first told', fromMs: at(6, 11, 40) });
  });

  test('proposes exactly the eight containers, and the reserve tank as conditional', () => {
    const proposal = holdProposal(history, traced(history).trace);
    expect([...proposal.hold].sort()).toEqual(EIGHT);
    expect(proposal.conditional).toEqual(['R2']);
    expect(Math.abs(litresOf(proposal.heldMg) - 164)).toBeLessThan(3);
  });

  test('is all of each container, 23 L in the reserve tank by another way, and the rest with waste in FA', () => {
    const all = traced(history);
    for (const name of EIGHT) expect(of(all, name)).toMatchObject({ share: 1, bySampledWay: true });
    const reserve = of(all, 'R2');
    expect(reserve.bySampledWay).toBe(false);
    expect(Math.abs(litresOf(reserve.suspectMg) - 23)).toBeLessThan(0.3);
    expect(Math.abs((reserve.share ?? 0) - 23 / 179.5)).toBeLessThan(0.01);
    expect(reserve.path).toMatchObject([{ from: 'FA', to: 'R2', hose: 'H-2', atMs: at(10, 9, 40) }]);
    expect(Math.abs(litresOf(of(all, 'FA').suspectMg) - 11)).toBeLessThan(0.5);
  });

  test('was in nobody, and went nowhere else', () => {
    const { trace, drunk } = traced(history);
    expect(drunk).toEqual([]);
    const names = trace.contacts.filter(({ suspectMg }) => suspectMg > 0).map(({ name }) => name);
    expect(names.sort()).toEqual([...EIGHT, 'FA', 'R2']);
    expect(trace.contacts.some(({ kind }) => kind === 'pool')).toBe(false);
    expect(of({ trace, drunk }, 'RUN-04')).toMatchObject({ kind: 'hose', suspectMg: 0 });
  });

  test('the twin of the fill of C-16 counts once', () => {
    expect(Math.abs(litresOf(of(traced(history), 'C-16').receivedMg) - 20.5)).toBeLessThan(0.01);
  });

  test('the water of R2 comes from its opening stock and from the delivery', () => {
    const origins = originsOf(history, 'R2')?.origins ?? [];
    expect(origins).toMatchObject([
      { kind: 'told', name: 'R2', visit: null },
      { kind: 'told', name: 'FA', visit: 'Pannier 8' },
    ]);
    const fromFa = origins[1]?.massMg ?? 0;
    expect(Math.abs(fromFa - of(traced(history), 'R2').suspectMg)).toBeLessThan(2);
  });

  test('a sample at the dispenser would speak of what feeds it, at the hose of what went through it last', () => {
    expect(suspicionAt(history, { unit: 'dispenser' }, at(13, 12)).sources).toEqual(['PB', 'C-18']);
    expect(suspicionAt(history, { port: 'dispenser feed' }, at(7, 12)).sources).toEqual(['C-01']);
    expect(suspicionAt(history, { hose: 'H-2' }, at(11, 0))).toMatchObject({
      sources: ['R2'].slice(1).concat('FA'),
    });
  });
});

test('by the ledger alone it is the same eight', async () => {
  const view = { asOfMs: at(14, 16, 20) };
  const history = mustBe(await historyOf(port, { view, estimating: false }));
  const proposal = holdProposal(history, traced(history).trace);
  expect([...proposal.hold].sort()).toEqual(EIGHT);
  expect(proposal.conditional).toEqual(['R2']);
});

describe('on Day 19', () => {
  test('the release ends it in seven containers, after the dose that came before; C-06 goes on', async () => {
    const history = await asOf(at(19, 8, 35));
    const { trace } = traced(history);
    expect(trace.cuts.map(({ store }) => store).sort()).toEqual(EIGHT.filter((name) => name !== 'C-06'));
    for (const cut of trace.cuts) {
      expect(cut).toMatchObject({ how: 'release', atMs: at(19, 8, 30) });
      expect(cut.treatedBy).not.toBeNull();
      expect(Math.abs(litresOf(cut.clearedMg) - 20.5)).toBeLessThan(0.1);
    }
    expect(holdProposal(history, trace)).toMatchObject({ hold: ['C-06'], conditional: ['R2'] });
  });

  test('a result that passed ends it by itself, as of its sample', async () => {
    const history = await asOf(at(19, 8, 25));
    const passed = history.steps.filter((step) => step.what === 'result' && step.sample === 'SMP-05');
    const { trace } = traced(history, new Set(passed.map(({ entry }) => entry)));
    expect(trace.cuts).toMatchObject([{ store: 'C-05', how: 'clean result', atMs: at(16, 15) }]);
    expect(of({ trace, drunk: [] }, 'C-05').suspectMg).toBe(0);
  });

  test('nobody drank of it to the end, but the electrolyser got what was downgraded', async () => {
    const history = await asOf(at(60, 23));
    const { trace, drunk } = traced(history);
    expect(of({ trace, drunk }, 'electrolyser').path.map(({ from }) => from)).toEqual(['FA', 'C-06']);
    expect(drunk).toEqual([]);
  });
});
