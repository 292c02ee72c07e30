// The fill of Corrie that was broken off on Day 7 and went on on Day 8, as a run of its card; and what its hose teaches.
import { describe, expect, test } from 'vitest';
import { type CardValue, type FillAsked, type FilledCard, fillCard } from '../../src/outpost/index.ts';
import {
  dueDrafts,
  flowPlan,
  learnedHose,
  live,
  type RunEvent,
  type RunState,
  replay,
} from '../../src/runs/index.ts';
import { LOG_OBJECTS } from '../field-log/corrie-log.ts';
import { CORRIE, cardNamed, storesOf, value } from './corrie-cards.ts';

const CARD = cardNamed('fill a container from a tank');
const RUN = 'fill-7-4';

function filledWith(values: ReadonlyMap<string, CardValue>, chosen: FillAsked['chosen'] = {}): FilledCard {
  return fillCard(CARD, {
    index: CORRIE,
    values,
    chosen: { from: 'FA', to: 'C-11', hose: 'H-1', amount: value(20.5, 'L'), ...chosen },
    stores: storesOf(CORRIE),
    rules: () => [],
  });
}

const BEGUN = filledWith(new Map([['C-11.content', value(0, 'L', 0.05)]]));

type Event = Readonly<Record<string, unknown>> & { readonly at: string };

/** The run as a desk would keep it: what is due goes into the book with the event that follows. */
function kept(events: readonly Event[]) {
  const all: RunEvent[] = [];
  const posted: { key: string; kind: string; fields: unknown }[] = [];
  let state: RunState | null = null;
  for (const { at, ...event } of events) {
    const due = state === null ? [] : dueDrafts(CARD, state);
    posted.push(...due);
    const said = {
      id: `E${all.length}`,
      run: RUN,
      atMs: Date.parse(at),
      site: 'corrie',
      no: all.length,
      by: 'keeper',
    };
    all.push({ ...said, posted: due.map(({ key }) => key), ...event } as unknown as RunEvent);
    const replayed = replay(CARD, RUN, all);
    expect(replayed.findings).toEqual([]);
    state = replayed.state;
  }
  return { all, state: state as unknown as RunState, posted };
}

const step = (at: string, id: string, found: unknown = { is: 'tick' }, by = 'keeper'): Event => ({
  at,
  kind: 'card-step',
  step: id,
  found,
  verified: true,
  by,
});
const number = (figure: number) => ({ is: 'number', value: figure });
const choice = (word: string) => ({ is: 'choice', choice: word });

const FIRST: readonly Event[] = [
  {
    at: '2147-03-07T13:10:00Z',
    kind: 'card-begin',
    card: CARD.id,
    revision: CARD.revision,
    form: BEGUN.form,
    chosen: Object.fromEntries(BEGUN.chosen),
    leaves: Object.fromEntries(BEGUN.leaves),
  },
  step('2147-03-07T13:12:00Z', 'labels', choice('as in the book')),
  step('2147-03-07T13:13:00Z', 'cabin_before', number(101.2)),
  step('2147-03-07T13:15:00Z', 'mate'),
  step('2147-03-07T13:17:00Z', 'leak_start', number(150)),
  step('2147-03-07T13:27:00Z', 'leak_end', number(149.7)),
  step('2147-03-07T13:28:00Z', 'seen_tight', { is: 'tick' }, 'second'),
  step('2147-03-07T13:29:00Z', 'push', number(49.8)),
  step('2147-03-07T13:30:00Z', 'open'),
  step('2147-03-07T13:31:00Z', 'gas', choice('water only')),
  step('2147-03-07T13:32:00Z', 'push_flowing', number(49.8)),
];
const BREAK: Event = {
  at: '2147-03-07T13:38:54Z',
  kind: 'card-pause',
  why: 'interrupt',
  reason: 'compressor over-temperature',
  moved: { litres: 11.4, u: 0.15, lineLitres: 0.3 },
};
const SECOND: readonly Event[] = [
  { at: '2147-03-08T09:05:00Z', kind: 'card-resume' },
  step('2147-03-08T09:06:00Z', 'leak_start', number(150)),
  step('2147-03-08T09:16:00Z', 'leak_end', number(149.8)),
  step('2147-03-08T09:18:00Z', 'push', number(48.9)),
  step('2147-03-08T09:20:00Z', 'open'),
  step('2147-03-08T09:27:06Z', 'shut'),
  step('2147-03-08T09:28:00Z', 'litres', number(9.1)),
  step('2147-03-08T09:32:00Z', 'vented', number(0.2)),
  step('2147-03-08T09:34:00Z', 'part'),
  step('2147-03-08T09:36:00Z', 'cabin_after', number(101.1)),
  { at: '2147-03-08T09:37:00Z', kind: 'card-end', end: 'finish', reason: '' },
];

test('the outpost file says that so much stands in the line, and the card shows it', () => {
  expect(BEGUN.flow?.lineContent).toMatchObject({ is: 'known', value: expect.closeTo(0.3, 2) });
});

test('broken off on Day 7, it stands on the marked line on Day 8, books its line content and no litre twice', () => {
  const broken = kept([...FIRST, BREAK]);
  expect(broken.state).toMatchObject({ status: 'interrupted', marked: 'shut' });
  const { state, posted } = kept([...FIRST, BREAK, ...SECOND]);
  expect(state.status).toBe('finished');
  const entries = [...posted, ...dueDrafts(CARD, state)];
  expect(entries.map(({ kind }) => kind)).toEqual([
    'run-start',
    'run-pause',
    'run-resume',
    'check',
    'check',
    'run-finish',
  ]);
  expect(new Set(entries.map(({ key }) => key)).size).toBe(entries.length);
  const litresOf = (kind: string, field: string): number => {
    const fields = entries.find((each) => each.kind === kind)?.fields as Record<
      string,
      { figure: { value: number } }
    >;
    return fields[field]?.figure.value as number;
  };
  expect(Math.abs(litresOf('run-pause', 'lineContent') - 0.3)).toBeLessThanOrEqual(0.02);
  expect(litresOf('run-pause', 'amount') + litresOf('run-finish', 'amount')).toBeCloseTo(20.5, 9);
  expect(litresOf('run-pause', 'flowMinutes')).toBeCloseTo(8.9, 6);
  expect(litresOf('run-finish', 'flowMinutes')).toBeCloseTo(7.1, 6);
});

test('its countdown is right after a night, whenever somebody looks', () => {
  const plan = flowPlan(BEGUN);
  if (plan === null) throw new Error('the fill has a plan');
  expect(plan.pushKPa).toBeCloseTo(50, 9);
  const { state } = kept([...FIRST, BREAK, ...SECOND.slice(0, 5)]);
  const nowMs = Date.parse('2147-03-08T09:25:00Z');
  const said = live({ plan, stretches: state.flow, readings: [], nowMs });
  expect(said.elapsedMs / 60_000).toBeCloseTo(8.9 + 5, 6);
  expect(said.limitAtMs).toBe(said.fullAtMs?.early);
  expect(said.fullAtMs?.middle).toBeGreaterThan(nowMs);
});

describe('what the hose of Corrie teaches', () => {
  const fills = LOG_OBJECTS.filter(({ kind, hose }) => kind === 'transfer' && hose === 'H-1').map((line) => {
    const pushed = new Map([['push.set', value(line['dP_kPa'] as number, 'kPa over cabin')]]);
    const card = filledWith(pushed, { amount: value(line['litres'] as number, 'L') });
    const minutes = card.values.find(({ id }) => id === 'minutes')?.figure;
    if (minutes?.is !== 'known') throw new Error('the minutes are not known');
    const interrupted = line['status'] !== undefined;
    return {
      predictedSeconds: 60 * minutes.value,
      takenSeconds: 60 * (line['flow_min'] as number),
      interrupted,
    };
  });

  test('its fills went as they were predicted, within five parts in a hundred', () => {
    const { factor, used } = learnedHose(fills);
    expect(used).toBeGreaterThanOrEqual(15);
    expect(Math.abs(factor.value - 1)).toBeLessThan(0.05);
  });

  test('and the next card has a band that is less than half as wide', () => {
    const width = (card: FilledCard): number => {
      const plan = flowPlan(card);
      if (plan === null) throw new Error('the fill has a plan');
      return plan.minutes.u / plan.minutes.value;
    };
    const { value: factor, u } = learnedHose(fills.slice(0, 5)).factor;
    const taught = filledWith(new Map([['H-1.factor', value(factor, 'plain', u)]]));
    expect(width(taught)).toBeLessThan(width(filledWith(new Map())) / 2);
  });
});
