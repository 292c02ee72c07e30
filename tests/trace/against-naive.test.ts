// Contact tracing against a tracer that follows every parcel, on random histories, and the relations that any tracer keeps.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type ContactTrace,
  cleanWordsOf,
  suspicionAt,
  suspicionOfSample,
  traceContacts,
  type WaterHistory,
} from '../../src/account/index.ts';
import { recordCounts } from '../verification/record.ts';
import { type Fault, type NaiveTrace, NaiveTracer } from './naive-tracer.ts';
import { anyDice, type Dice, type RandomHistory, randomHistory } from './random-history.ts';

/** Ten thousand histories by `TRACE_TIMES=5`, others by `TRACE_SEED=7`. */
const TIMES = Number(process.env['TRACE_TIMES'] ?? 1);
const SEED = Number(process.env['TRACE_SEED'] ?? 21470501);
const HISTORIES = 2000 * TIMES;

const counts = { histories: 0, contacts: 0, cuts: 0, drunk: 0, compared: 0 };

/** A sample of the history if it has one, else one that is drawn of a store now. */
function suspicionIn({ history, samples }: RandomHistory, choice: number) {
  const sample = samples.length === 0 || choice % 4 === 0 ? undefined : samples[choice % samples.length];
  const known = sample === undefined ? null : suspicionOfSample(history, sample);
  const atMs = ((history.steps.at(-1)?.atMs ?? 0) * (choice % 100)) / 100;
  const store = ['A', 'B', 'C', 'D', 'R', 'W'][choice % 6] ?? 'A';
  return known ?? suspicionAt(history, choice % 5 === 0 ? { hose: 'H-1' } : { store }, atMs);
}

function both(random: RandomHistory, choice: number, fault: Fault = 'none') {
  const suspicion = suspicionIn(random, choice);
  const { trace, drunk } = traceContacts(random.history, suspicion, { clean: random.clean });
  const naive = new NaiveTracer(random.history, random.clean, fault).trace(suspicion);
  return { trace, drunk, naive, suspicion };
}

/** Rounding to whole milligrams by the largest remainder, twice. */
const CLOSE_MG = 1.5;

function mustAgree(history: WaterHistory, { trace, drunk, naive }: ReturnType<typeof both>): void {
  history.accounts.forEach(({ kind, name }, at) => {
    const contact = trace.contacts.find((one) => one.kind === kind && one.name === name);
    near(contact?.suspectMg ?? 0, naive.suspectMg[at] ?? 0, name);
    near(contact?.receivedMg ?? 0, naive.receivedMg[at] ?? 0, `${name} received`);
    counts.compared += 1;
  });
  near(trace.startedMg, naive.startedMg, 'started');
  near(sumOf(trace.cuts, 'clearedMg'), naive.clearedMg, 'cleared', CLOSE_MG + trace.cuts.length);
  near(sumOf(drunk, 'suspectMg'), naive.drunkMg, 'drunk');
}

function near(found: number, expected: number, what: string, mostMg = CLOSE_MG): void {
  if (!(Math.abs(found - expected) <= mostMg)) throw new Error(`${what}: ${found} and not ${expected}`);
}

function sumOf<Key extends string>(list: readonly Readonly<Record<Key, number>>[], key: Key): number {
  return list.reduce((sum, one) => sum + one[key], 0);
}

function mustClose({ contacts, cuts, startedMg, changedMg, elsewhereMg }: ContactTrace): void {
  expect(sumOf(contacts, 'suspectMg') + sumOf(cuts, 'clearedMg') + elsewhereMg).toBe(startedMg + changedMg);
  expect(elsewhereMg >= 0 && elsewhereMg < 10).toBe(true);
  for (const { suspectMg } of contacts) expect(Number.isSafeInteger(suspectMg) && suspectMg >= 0).toBe(true);
}

function mustKeepTime(history: WaterHistory, { contacts }: ContactTrace): void {
  const lastMs = history.steps.at(-1)?.atMs ?? 0;
  for (const { path, isSource, firstMs, lastMs: until, name } of contacts) {
    expect(firstMs <= until && (isSource || until <= lastMs)).toBe(true);
    if (isSource) continue;
    expect(path.at(-1)?.to).toBe(name);
    expect(contacts.find((one) => one.isSource && one.name === path[0]?.from)).toBeDefined();
    path.forEach((hop, k) => {
      const before = path[k - 1];
      if (before !== undefined) expect([hop.from, before.atMs <= hop.atMs]).toEqual([before.to, true]);
    });
  }
}

const anyCase = fc.tuple(anyDice, fc.nat({ max: 9999 }));

function always(
  check: (random: RandomHistory, choice: number, dice: readonly Dice[]) => void,
  numRuns: number,
): void {
  fc.assert(
    fc.property(anyCase, ([dice, choice]) => check(randomHistory(dice), choice, dice)),
    { seed: SEED, numRuns },
  );
}

test(`${HISTORIES} histories, seed ${SEED}: as the tracer of parcels has it`, {
  timeout: 120_000 * TIMES,
}, () => {
  always((random, choice) => {
    const traced = both(random, choice);
    mustAgree(random.history, traced);
    mustClose(traced.trace);
    mustKeepTime(random.history, traced.trace);
    counts.histories += 1;
    counts.contacts += traced.trace.contacts.filter(({ isSource }) => !isSource).length;
    counts.cuts += traced.trace.cuts.length;
    counts.drunk += traced.drunk.length;
  }, HISTORIES);
  expect(counts.histories).toBe(HISTORIES);
  for (const key of ['contacts', 'cuts', 'drunk'] as const)
    expect([key, counts[key] > HISTORIES / 20]).toEqual([key, true]);
});

describe('a tracer that is wrong on purpose is caught', () => {
  test.each([
    'suspect water first',
    'no cuts',
    'from the sample on',
    'nothing is taken back',
    'readings lose it',
  ] as const)('%s', (fault) => {
    let caught = 0;
    always((random, choice) => {
      try {
        mustAgree(random.history, both(random, choice, fault));
      } catch {
        caught += 1;
      }
    }, 300);
    expect(caught).toBeGreaterThan(5);
  });
});

describe('a trace', () => {
  test('goes nowhere without a flow', () => {
    always(({ history, clean, ...rest }, choice) => {
      const still = history.steps.filter(({ what }) => what !== 'flow');
      const { trace, drunk } = both({ ...rest, clean, history: { ...history, steps: still } }, choice);
      expect(trace.contacts.every(({ isSource }) => isSource)).toBe(true);
      expect(drunk).toEqual([]);
    }, 300);
  });

  test('has no less in it with another source beside', () => {
    let more = 0;
    always(({ history, clean, ...rest }, choice) => {
      const suspicion = suspicionIn({ history, clean, ...rest }, choice);
      const other = ['A', 'B', 'C', 'D', 'R', 'W'][(choice >> 3) % 6] ?? 'A';
      const one = traceContacts(history, suspicion, { clean }).trace;
      const two = traceContacts(
        history,
        { ...suspicion, sources: [...suspicion.sources, other] },
        { clean },
      ).trace;
      for (const contact of one.contacts) {
        const again = two.contacts.find(({ kind, name }) => kind === contact.kind && name === contact.name);
        expect((again?.suspectMg ?? 0) + 2).toBeGreaterThanOrEqual(contact.suspectMg);
      }
      if (two.startedMg > one.startedMg) more += 1;
    }, 400);
    expect(more).toBeGreaterThan(50);
  });

  test('is less by exactly what lies behind its cuts', () => {
    let cuts = 0;
    always(({ history, clean, ...rest }, choice) => {
      const random = withoutTakingBack({ history, clean, ...rest });
      const suspicion = suspicionIn(random, choice);
      const { trace } = traceContacts(random.history, suspicion, { clean });
      const naive = new NaiveTracer(random.history, clean).trace(suspicion);
      const uncut = withoutLaterWords(random, naive);
      const whole = traceContacts(uncut.history, suspicion, { clean: uncut.clean }).trace;
      if (JSON.stringify(whole.windows) !== JSON.stringify(trace.windows)) return;
      random.history.accounts.forEach(({ kind, name }, at) => {
        const of = (one: ContactTrace) =>
          one.contacts.find((contact) => contact.kind === kind && contact.name === name)?.suspectMg ?? 0;
        near(of(whole), of(trace) + (naive.clearedThereMg[at] ?? 0), name, 2 * CLOSE_MG);
      });
      cuts += trace.cuts.length;
    }, 600);
    expect(cuts).toBeGreaterThan(60);
  });

  test('is the same when every movement is told in two parts', () => {
    always((random, choice) => {
      const plain = both(random, choice).trace;
      const split = both({ ...random, history: inTwoParts(random.history) }, choice).trace;
      expect(split.contacts.map(({ kind, name }) => `${kind} ${name}`)).toEqual(
        plain.contacts.map(({ kind, name }) => `${kind} ${name}`),
      );
      plain.contacts.forEach((contact, k) => {
        const other = split.contacts[k];
        near(other?.suspectMg ?? -9, contact.suspectMg, contact.name);
        expect([other?.firstMs, other?.lastMs]).toEqual([contact.firstMs, contact.lastMs]);
      });
    }, 400);
  });
});

function withoutTakingBack(random: RandomHistory): RandomHistory {
  const steps = random.history.steps.filter((step) => step.what !== 'flow' || step.massMg > 0);
  return { ...random, history: { ...random.history, steps } };
}

/** What speaks well of water after the suspicion began speaks no more. */
function withoutLaterWords(random: RandomHistory, { fromStep }: NaiveTrace): RandomHistory {
  const first = Math.min(...fromStep.values());
  const later = [...cleanWordsOf(random.history, random.clean)].filter(([k]) => k > first);
  const silent = new Set(later.flatMap(([, words]) => words.map(({ entry }) => entry)));
  const steps = random.history.steps.filter((step) => step.what !== 'release' || !silent.has(step.entry));
  const clean = new Set([...random.clean].filter((entry) => !silent.has(entry)));
  return { ...random, clean, history: { ...random.history, steps } };
}

function inTwoParts(history: WaterHistory): WaterHistory {
  const steps = history.steps.flatMap((step) => {
    if (step.what !== 'flow' || step.massMg < 2) return [step];
    const firstMg = Math.floor(step.massMg / 3) + 1;
    const { fromHeldMg, toHeldMg } = step;
    // Who gives more than anybody knew of gives it all at once.
    if (firstMg >= step.massMg || step.massMg > fromHeldMg) return [step];
    const rest = { ...step, massMg: step.massMg - firstMg, begins: false };
    return [
      { ...step, massMg: firstMg },
      { ...rest, fromHeldMg: fromHeldMg - firstMg, toHeldMg: toHeldMg + firstMg },
    ];
  });
  return { ...history, steps };
}

test('what was counted is written down', () => {
  recordCounts('contact-tracing', import.meta.filename, {
    seed: SEED,
    counts: {
      histories: counts.histories,
      'accounts compared with a tracer of parcels': counts.compared,
      'contacts beside the sources': counts.contacts,
      cuts: counts.cuts,
    },
  });
});
