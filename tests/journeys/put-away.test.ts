// An account that was put away and taken up again is the account from scratch, to the last bit, whatever came in between.
import { deserialize, serialize } from 'node:v8';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { Account, type AccountSnapshot, type SnapshotPlace } from '../../src/account/index.ts';
import type { AnyEntry } from '../../src/book/index.ts';
import { bookOf, reckon } from './checks.ts';
import { stateOf } from './fold-state.ts';
import { anyJourney, type Journey, journeyOf } from './journey.ts';
import { CORRIE_WORLD, HOLM_WORLD, type World } from './world.ts';

const SEED = 60221023;
const PLACES: readonly { readonly world: World; readonly histories: number }[] = [
  { world: HOLM_WORLD, histories: 500 },
  { world: CORRIE_WORLD, histories: 60 },
];

/** As a door keeps it: nothing but bytes between the two runs. */
class Shelf implements SnapshotPlace {
  readonly keepAfter = 1;
  bytes: Buffer | null = null;
  loaded = 0;

  load(): AccountSnapshot | null {
    if (this.bytes === null) return null;
    this.loaded += 1;
    return deserialize(this.bytes) as AccountSnapshot;
  }

  keep(snapshot: AccountSnapshot): void {
    this.bytes = serialize(snapshot);
  }
}

async function open(entries: readonly AnyEntry[], snapshots: SnapshotPlace): Promise<Account> {
  const opened = await Account.open(await bookOf(entries), { snapshots, checkpointEvery: 3 });
  if (!opened.ok) throw new Error(JSON.stringify(opened.findings));
  return opened.account;
}

/** Put away after some entries have arrived, taken up when all have. */
async function inTwoRuns({ arrived }: Journey, cut: number, shelf: Shelf): Promise<Account> {
  await open(arrived.slice(0, 2 + (cut % Math.max(1, arrived.length - 1))), shelf);
  return open(arrived, shelf);
}

describe.each(PLACES)('through $world.name', ({ world, histories }) => {
  test(`${histories} histories in two runs, seed ${SEED}`, { timeout: 120_000 }, async () => {
    let takenUp = 0;
    await fc.assert(
      fc.asyncProperty(anyJourney, fc.nat({ max: 40 }), async (acts, cut) => {
        const journey = journeyOf(world, acts);
        const shelf = new Shelf();
        const account = await inTwoRuns(journey, cut, shelf);
        takenUp += shelf.loaded;
        expect(stateOf(account.fold)).toBe(stateOf((await reckon(await bookOf(journey.arrived))).fold));
      }),
      { numRuns: histories, seed: SEED },
    );
    expect(takenUp).toBe(histories);
  });
});

const STORY = journeyOf(
  HOLM_WORLD,
  Array.from({ length: 20 }, (_, k) => ({
    what: (['move', 'line', 'weigh', 'undo'] as const)[k % 4] ?? 'move',
    a: k,
    b: k + 1,
    c: k,
    minutes: 300,
    late: 0,
  })),
);

async function scratchOf({ arrived }: Journey): Promise<string> {
  return stateOf((await reckon(await bookOf(arrived))).fold);
}

test('control: what lies on the shelf is what is taken up', async () => {
  const shelf = new Shelf();
  await open(STORY.arrived, shelf);
  const snapshot = shelf.load();
  if (snapshot === null) throw new Error('nothing was put away');
  snapshot.fold.fields.peopleAboard += 1;
  shelf.keep(snapshot);
  expect(stateOf((await open(STORY.arrived, shelf)).fold)).not.toBe(await scratchOf(STORY));
});

test('an account of another book is not taken up', async () => {
  const shelf = new Shelf();
  await open(STORY.arrived.slice(0, 12), shelf);
  const snapshot = shelf.load();
  if (snapshot === null) throw new Error('nothing was put away');
  shelf.keep({ ...snapshot, heads: snapshot.heads.map((head) => ({ ...head, seal: 'of another book' })) });
  expect(stateOf((await open(STORY.arrived, shelf)).fold)).toBe(await scratchOf(STORY));
});

test('an account that knows more than the book is not taken up', async () => {
  const shelf = new Shelf();
  await open(STORY.arrived, shelf);
  const fewer = { ...STORY, arrived: STORY.arrived.slice(0, 10) };
  expect(stateOf((await open(fewer.arrived, shelf)).fold)).toBe(await scratchOf(fewer));
});
