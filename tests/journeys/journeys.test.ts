// Thousands of random stories: whole milligrams close, the account is the plain model's, and grows as it is reckoned.
import fc from 'fast-check';
import { beforeAll, describe, expect, test } from 'vitest';
import type { Account } from '../../src/account/index.ts';
import { recordCounts } from '../verification/record.ts';
import {
  agreesWith,
  arrivalIsNoOrder,
  closingChangesNothing,
  knownIsTruncated,
  type MakeModel,
  naive,
  sameHoweverItGrew,
  undoneIsNeverEntered,
} from './checks.ts';
import { anyJourney, type Journey, journeyOf } from './journey.ts';
import { keptHistories } from './kept-histories.ts';
import { NaiveLedger } from './naive-ledger.ts';
import { CORRIE_WORLD, HOLM_WORLD, type World } from './world.ts';

/** Another seed by `JOURNEY_SEED=7`, a longer run by `JOURNEY_TIMES=10`; what fails is shrunk and kept in kept-histories.ts. */
const SEED = Number(process.env['JOURNEY_SEED'] ?? 21470301);
const TIMES = Number(process.env['JOURNEY_TIMES'] ?? 1);

const PLACES: readonly { readonly world: World; readonly histories: number }[] = [
  { world: HOLM_WORLD, histories: 4500 },
  { world: CORRIE_WORLD, histories: 600 },
];

const counts = { histories: 0, entries: 0, compared: 0, undone: 0, closed: 0, unknown: 0 };

describe.each(PLACES)('through $world.name', ({ world, histories }) => {
  test(`${histories} histories, seed ${SEED}`, { timeout: 240_000 * TIMES }, async () => {
    const before = { ...counts };
    await fc.assert(
      fc.asyncProperty(anyJourney, fc.nat(), async (acts, choice) => {
        const journey = journeyOf(world, acts);
        const account = await sameHoweverItGrew(journey);
        counts.compared += agreesWith(naive(world, journey.arrived), journey, account);
        // Each of these folds the book twice more: every history has one of them.
        if (choice % 3 === 0) counts.undone += Number(await undoneIsNeverEntered(journey, choice));
        else if (choice % 3 === 1) counts.unknown += await knownIsTruncated(journey, choice);
        else counts.closed += await closingChangesNothing(journey);
        counts.histories += 1;
        counts.entries += journey.arrived.length;
      }),
      { numRuns: histories * TIMES, seed: SEED },
    );
    expect(counts.histories - before.histories).toBe(histories * TIMES);
    for (const key of ['entries', 'compared', 'undone', 'closed', 'unknown'] as const)
      expect([key, counts[key] - before[key] > histories / 20]).toEqual([key, true]);
  });
});

describe('stories that failed once', () => {
  test.each(keptHistories)('$name', async ({ world, acts }) => {
    const journey = journeyOf(world, acts);
    agreesWith(naive(world, journey.arrived), journey, await sameHoweverItGrew(journey));
    await closingChangesNothing(journey);
    for (let choice = 0; choice < 12; choice++) {
      await undoneIsNeverEntered(journey, choice);
      await knownIsTruncated(journey, choice);
    }
  });
});

describe('models that are wrong on purpose are caught', () => {
  /** Every model is held against the same stories, of which the true one has been told first. */
  const stories: { readonly journey: Journey; readonly account: Account }[] = [];
  beforeAll(async () => {
    await fc.assert(
      fc.asyncProperty(anyJourney, async (acts) => {
        const journey = journeyOf(HOLM_WORLD, acts);
        const account = await sameHoweverItGrew(journey);
        agreesWith(naive(HOLM_WORLD, journey.arrived), journey, account);
        stories.push({ journey, account });
      }),
      { numRuns: 150, seed: SEED },
    );
  }, 120_000);

  /** What a movement takes and what it gives, rounded to grams each for itself. */
  const roundsEachLeg: MakeModel = (world, entries) => {
    const { balances, tapInAllMg } = new NaiveLedger(world, entries);
    const rounded = [...balances].map(([name, massMg]) => [name, Math.round(massMg / 1000) * 1000] as const);
    return { balances: new Map(rounded), tapInAllMg };
  };
  /** Single uses added to what the counter says. */
  const addsDrinks: MakeModel = (world, entries) => {
    const { balances, tapInAllMg } = new NaiveLedger(world, entries);
    const drinks = entries.reduce(
      (sum, { kind, body }) =>
        kind === 'movement' && body.from === world.tap.unit ? sum + body.amount.massMg : sum,
      0,
    );
    return { balances, tapInAllMg: tapInAllMg + drinks };
  };
  const without =
    (kind: string): MakeModel =>
    (world, entries) =>
      new NaiveLedger(
        world,
        entries.filter((entry) => entry.kind !== kind),
      );
  const ordersByArrival: MakeModel = (world, entries) =>
    new NaiveLedger(
      world,
      entries.map((entry) => ({ ...entry, happenedAtMs: entry.enteredAtMs })),
    );
  const countsCopies: MakeModel = (world, entries) =>
    new NaiveLedger(
      world,
      entries.map((entry) =>
        entry.kind === 'movement' && entry.source !== undefined
          ? { ...entry, body: { ...entry.body, amount: { ...entry.body.amount, massMg: 7 } } }
          : entry,
      ),
    );

  /** Several means averaged by hand. */
  const averagesMeans: MakeModel = (world, entries) =>
    new NaiveLedger(
      world,
      entries.map((entry) => {
        if (entry.kind !== 'movement' || entry.body.alsoRead === undefined) return entry;
        const all = [entry.body, ...entry.body.alsoRead].map(({ amount }) => amount.massMg);
        const massMg = Math.round(all.reduce((sum, each) => sum + each, 0) / all.length);
        return { ...entry, body: { ...entry.body, amount: { ...entry.body.amount, massMg } } };
      }),
    );

  test.each([
    ['rounds each leg', roundsEachLeg],
    ['adds drinks to the counter', addsDrinks],
    ['forgets undo', without('undo')],
    ['forgets corrections', without('correction')],
    ['forgets decisions', without('duplicate-decision')],
    ['takes the order of arrival', ordersByArrival],
    ['counts copies', countsCopies],
    ['averages means', averagesMeans],
    ['forgets replaced counters', without('instrument-replaced')],
    ['forgets what a count is worth now', without('instrument-calibrated')],
  ] as const)('a ledger that %s', (_name, model) => {
    const caught = stories.filter(({ journey, account }) => {
      try {
        agreesWith(model(HOLM_WORLD, journey.arrived), journey, account);
        return false;
      } catch {
        return true;
      }
    });
    expect(stories).toHaveLength(150);
    expect(caught.length).toBeGreaterThan(0);
  });

  test('an account that takes entries as they arrive and never goes back', async () => {
    let caught = 0;
    await fc.assert(
      fc.asyncProperty(anyJourney, async (acts) => {
        if (!(await arrivalIsNoOrder(journeyOf(HOLM_WORLD, acts)))) caught += 1;
      }),
      { numRuns: 60, seed: SEED },
    );
    expect(caught).toBeGreaterThan(30);
  });
});

test('what was counted is written down', () => {
  expect(counts.histories).toBeGreaterThanOrEqual(5000);
  const { histories, entries, compared, undone, closed, unknown } = counts;
  recordCounts('journeys', import.meta.filename, {
    seed: SEED,
    counts: {
      histories,
      entries,
      'accounts compared with a plain map': compared,
      'entries taken back': undone,
      'days closed in between': closed,
      'entries not known yet': unknown,
    },
  });
});
