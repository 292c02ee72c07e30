// No held, unreleased, unknown or waste water is in a free figure: random histories against a naive model of fitness.
import { expect, test } from 'vitest';
import { recordCounts } from '../verification/record.ts';
import { PLANTED } from './fitness/planted.ts';
import { nothingWalked, type Planted, walk } from './fitness/walk.ts';

/** A hundred thousand by `npm run study:free`; others by `FREE_SEED=7`. */
const HISTORIES = 1000;
const FIRST_SEED = Number(process.env['FREE_SEED'] ?? 1);
/** A planted bug is found in fewer. */
const MOST_UNTIL_FOUND = 300;

test(`${HISTORIES} histories, from seed ${FIRST_SEED}: what is free is fit`, { timeout: 60_000 }, () => {
  const walked = nothingWalked();
  for (let seed = FIRST_SEED; seed < FIRST_SEED + HISTORIES; seed++) {
    const found = walk(seed, walked);
    expect(
      found && { seed: found.seed, act: found.entries.length, store: found.store, why: found.why },
    ).toBeNull();
  }
  expect(walked.histories).toBe(HISTORIES);
  // A walk in which nothing is free, or nothing is tainted, would prove nothing.
  expect(walked.free).toBeGreaterThan(walked.looked / 10);
  for (const why of [
    'hold',
    'conditional',
    'not released',
    'grade unknown',
    'waste',
    'release over',
    'row off',
  ])
    expect([why, (walked.tainted.get(why) ?? 0) > HISTORIES]).toEqual([why, true]);
  recordCounts('falsely-free', import.meta.filename, {
    seed: FIRST_SEED,
    counts: {
      histories: walked.histories,
      acts: walked.acts,
      'stores looked at': walked.looked,
      'of them free': walked.free,
      'falsely free': 0,
    },
  });
});

function histories(planted: Planted): number {
  for (let many = 1; many <= MOST_UNTIL_FOUND; many++)
    if (walk(FIRST_SEED + many - 1, nothingWalked(), planted) !== null) return many;
  return Number.POSITIVE_INFINITY;
}

test.each(Object.entries(PLANTED))(
  'an account is found out in which %s',
  { timeout: 60_000 },
  (_, planted) => {
    expect(histories(planted)).toBeLessThanOrEqual(MOST_UNTIL_FOUND);
  },
);
