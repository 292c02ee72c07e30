// Runs of every card that ships, by sequences of commands made at random, a crash after any of them, and arrival in any order.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type Card, fitsExpected } from '../../src/outpost/index.ts';
import {
  askRun,
  draftsOf,
  dueDrafts,
  expectedInRun,
  type Found,
  type RunEvent,
  type RunState,
  replay,
} from '../../src/runs/index.ts';
import { recordCounts } from '../verification/record.ts';
import { CARDS, CHOSEN, filled, value } from './corrie-cards.ts';

const SEED = 21470304;
const SEQUENCES = 5000;
const PEOPLE = ['keeper', 'second', 'chief'];
const counts = {
  sequences: 0,
  commands: 0,
  refused: 0,
  finished: 0,
  aborted: 0,
  drafts: 0,
  'checks passed': 0,
};

/** What the account might know; enough that every card can begin. */
const VALUES = new Map([
  ['FA.content', value(10, 'L', 0.3)],
  ['C-11.content', value(0.6, 'L', 0.05)],
  ['C-13.content', value(0.6, 'L', 0.05)],
  ['C-01.content', value(20.4, 'L', 0.1)],
  ['C-08.content', value(20.1, 'L', 0.1)],
  ['R2.content', value(156, 'L', 1.5)],
  ['W-01.content', value(18, 'L', 0.2)],
  ['purifier.through', value(840, 'L', 2)],
]);

const BEGUN = CARDS.map((card) => filled(card.id, { values: VALUES }));

interface Command {
  readonly what: number;
  readonly line: number;
  readonly who: number;
  readonly second: number;
  readonly good: boolean;
  readonly part: number;
}

const command: fc.Arbitrary<Command> = fc.record({
  what: fc.integer({ min: 0, max: 99 }),
  line: fc.nat(30),
  who: fc.nat(2),
  second: fc.nat(3),
  good: fc.boolean().map((good) => good),
  part: fc.nat(1000),
});

class Random {
  readonly card: Card;
  readonly events: RunEvent[] = [];
  state: RunState | null = null;
  atMs = Date.UTC(2147, 2, 7);
  readonly posted: string[] = [];
  readonly #begun: (typeof BEGUN)[number];

  constructor(which: number) {
    this.#begun = BEGUN[which % BEGUN.length] as (typeof BEGUN)[number];
    this.card = this.#begun.card;
    this.do({ kind: 'card-begin', ...this.#beginning() });
  }

  #beginning() {
    const { card, chosen, leaves, form } = this.#begun;
    return {
      card: card.id,
      revision: card.revision,
      form,
      chosen: Object.fromEntries(chosen),
      leaves: Object.fromEntries(leaves),
    };
  }

  /** Asks; what may follow is kept. Now and then a refused one is kept all the same, as a fact of another site would be. */
  do(event: Readonly<Record<string, unknown>>, by = 'keeper', asFact = false): void {
    counts.commands += 1;
    this.atMs += 30_000;
    const no = this.events.length + 1;
    const due = this.state === null ? [] : dueDrafts(this.card, this.state).map(({ key }) => key);
    const placed = {
      id: `E${no}`,
      run: 'r',
      atMs: this.atMs,
      site: 'a',
      no,
      by,
      posted: due,
      ...event,
    } as unknown as RunEvent;
    const asked = askRun(this.card, this.state, placed);
    if (asked.ok) {
      this.events.push(placed);
      this.state = asked.state;
      this.posted.push(...due);
    } else {
      counts.refused += 1;
      if (asFact) this.events.push(placed);
    }
  }

  take({ what, line, who, second, good, part }: Command): void {
    const state = this.state as RunState;
    // Most of the time a person does what the card asks.
    const asAsked = what < 60;
    const by = asAsked ? 'keeper' : (PEOPLE[who] as string);
    const marked =
      what < 75 && state.marked !== null ? state.marked : this.card.steps[line % this.card.steps.length]?.id;
    const step = this.card.steps.find(({ id }) => id === marked) as Card['steps'][number];
    const moved = { litres: part / 100, u: 0.1, lineLitres: 0.3 };
    const asFact = part % 7 === 0;
    if (what < 70) {
      const found = foundFor(step, expectedInRun(this.card, state, step), asAsked || good);
      const other = asAsked ? 'second' : PEOPLE[second];
      const one = asAsked && step.holdPoint ? 'second' : by;
      const two = other === undefined ? {} : { second: other };
      this.do({ kind: 'card-step', step: step.id, found, verified: good, ...two }, one, asFact);
    } else if (what < 86) {
      const choice = (['recheck', 'recheck', 'record', 'skip', 'skip', 'stop'] as const)[part % 6];
      // A stop ends nearly every sequence, so it is rare.
      const rare = choice === 'stop' && part % 5 !== 0 ? 'recheck' : choice;
      this.do({ kind: 'card-deviation', step: step.id, choice: rare, reason: good ? 'so' : '' }, by, asFact);
    } else if (what < 91)
      this.do(
        { kind: 'card-pause', why: good ? 'pause' : 'interrupt', reason: '', ...(part % 4 > 0 && { moved }) },
        by,
        asFact,
      );
    else if (what < 97) this.do({ kind: 'card-resume' }, by, asFact);
    else
      this.do(
        { kind: 'card-end', end: what < 99 ? 'finish' : 'abort', reason: good ? 'so' : '', moved },
        by,
        asFact,
      );
  }
}

function foundFor(
  step: Card['steps'][number],
  expected: ReturnType<typeof expectedInRun>,
  good: boolean,
): Found {
  const { kind, choices } = step.input;
  if (kind === 'choice') {
    const right = step.expect.right ?? choices ?? [];
    const wrong = choices?.find((each) => !right.includes(each));
    return { is: 'choice', choice: (good ? right[0] : wrong) ?? right[0] ?? '' };
  }
  if (kind === 'time') return { is: 'time', atMs: 1 };
  if (kind === 'text') return { is: 'text', text: 'Hearth' };
  if (kind === 'tick') return { is: 'tick' };
  const bound = expected.is === 'bounds' ? (expected.about ?? expected.high ?? expected.low) : null;
  const near = bound?.is === 'known' ? bound.value : 20;
  return { is: 'number', value: good ? near : near * 3 + 50 };
}

function check(random: Random, order: number): void {
  const { card, events, state } = random;
  const again = replay(card, 'r', events);
  expect(again.state).toEqual(state);
  // Any order of arrival, with lines that arrive twice.
  const shuffled = [...events, ...events.filter((_, k) => k % 3 === 0)]
    .map((event, k) => ({ event, at: (k * 7919 + order * 104_729) % 1009 }))
    .sort((a, b) => a.at - b.at)
    .map(({ event }) => event);
  expect(replay(card, 'r', shuffled)).toEqual(again);
  if (state === null) throw new Error('every card of the list may begin');
  for (const step of card.steps) {
    const line = state.lines.get(step.id);
    if (step.mustPass === undefined || line === undefined) continue;
    expect(['open', 'off', 'done']).toContain(line.status);
    if (line.status === 'done') {
      counts['checks passed'] += 1;
      const found =
        line.found?.is === 'number' ? line.found.value : line.found?.is === 'choice' ? line.found.choice : '';
      const expected = expectedInRun(card, state, step);
      expect(found === '' || fitsExpected(expected, found)).toBe(true);
    }
  }
  expect(new Set(random.posted).size).toBe(random.posted.length);
  const keys = draftsOf(card, state).map(({ key }) => key);
  expect(new Set(keys).size).toBe(keys.length);
  counts.drafts += random.posted.length;
}

test(`${SEQUENCES} sequences: no check is passed over, nothing is posted twice, and replay is the same`, () => {
  for (const { mayStart, card, findings } of BEGUN)
    expect(mayStart, `${card.id} ${JSON.stringify(findings)}`).toBe(true);
  expect(Object.keys(CHOSEN)).toHaveLength(BEGUN.length);
  fc.assert(
    fc.property(
      fc.nat(13),
      fc.array(command, { minLength: 1, maxLength: 45, size: 'max' }),
      fc.nat(500),
      (which, commands, order) => {
        const random = new Random(which);
        counts.sequences += 1;
        for (const each of commands) random.take(each);
        check(random, order);
        // A crash after any event: what was kept by then leads to where the run stood then.
        const upTo = order % (random.events.length + 1);
        const half = replay(random.card, 'r', random.events.slice(0, upTo));
        let state: RunState | null = null;
        for (const event of random.events.slice(0, upTo)) {
          const asked = askRun(random.card, state, event);
          if (asked.ok) state = asked.state;
        }
        expect(half.state).toEqual(state);
        if (random.state?.status === 'finished') counts.finished += 1;
        if (random.state?.status === 'aborted') counts.aborted += 1;
      },
    ),
    { numRuns: SEQUENCES, seed: SEED },
  );
  for (const count of Object.values(counts)) expect(count).toBeGreaterThan(20);
  recordCounts('card-runs', import.meta.filename, { seed: SEED, counts });
}, 120_000);
