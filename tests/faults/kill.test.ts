// A process killed at any moment: what it had acknowledged is in the book, and the chain is whole.
import { mkdtempSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { createBook } from '../../src/doors/disk/index.ts';
import { chanceFrom } from '../contract/made-up-entries.ts';
import { recordCounts } from '../verification/record.ts';
import { startWriter } from './run-writer.ts';
import { whatIsWrong } from './whole-book.ts';
import { chainOf, INFO, LONGEST_CHAIN } from './writer.ts';

const KILLS = 60;
const LONGEST_MS = 40;
const SEED = 4711;
/** Two single entries, then twenty at once, and again. */
const PLAN = Array.from({ length: 600 }, (_, at) => (at % 3 === 2 ? 20 : 1));
const chain = chainOf(LONGEST_CHAIN);
let folder = '';

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'waterwright-kill-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

interface Tally {
  killed: number;
  /** Kills that left a journal to be played back: they came in the middle of a write. */
  halfWay: number;
  acks: number;
  readonly faults: string[];
}

/** Starts a writer, kills it a random while after its first acknowledgement, and looks at the book. */
async function killOnce(path: string, tally: Tally, afterMs: number, ackEarly: boolean): Promise<void> {
  const writer = startWriter({ path, plan: PLAN, ackEarly });
  await writer.firstAck;
  await new Promise((done) => setTimeout(done, afterMs));
  writer.child.kill('SIGKILL');
  const said = await writer.said;
  if (writer.child.signalCode === 'SIGKILL') tally.killed += 1;
  tally.acks += said.acks;
  if ((statSync(`${path}-journal`, { throwIfNoEntry: false })?.size ?? 0) > 0) tally.halfWay += 1;
  // The chain goes on from book to book, so an append may end at any number that a plan brings it to.
  const ends = new Set(Array.from({ length: chain.length }, (_, at) => at));
  const fault = await whatIsWrong(path, { chain, acked: said.acked, ends });
  if (fault !== null) tally.faults.push(`after ${afterMs} ms: ${fault}`);
}

test(`${KILLS} kills at random moments lose nothing that was acknowledged`, async () => {
  const chance = chanceFrom(SEED);
  const tally: Tally = { killed: 0, halfWay: 0, acks: 0, faults: [] };
  let path = '';
  for (let run = 0; run < KILLS; run++) {
    // A fresh book now and then, because the chain of the writer has an end.
    if (run % 10 === 0) {
      path = join(folder, `${run}.book`);
      createBook(path, INFO);
    }
    await killOnce(path, tally, chance() * LONGEST_MS, false);
  }
  console.log(
    `kills: seed ${SEED}, ${tally.killed} killed, ${tally.halfWay} of them in a write, ${tally.acks} acknowledgements, ${tally.faults.length} faults`,
  );
  expect(tally.faults).toEqual([]);
  expect(tally.killed).toBeGreaterThanOrEqual(50);
  expect(tally.halfWay).toBeGreaterThan(0);
  expect(tally.acks).toBeGreaterThan(tally.killed);
  const counts = {
    kills: tally.killed,
    'kills in a write': tally.halfWay,
    'books with something lost': tally.faults.length,
  };
  recordCounts('kills', import.meta.filename, { seed: SEED, counts });
});

test('control: a writer that acknowledges before its commit is found out', async () => {
  const chance = chanceFrom(SEED);
  const tally: Tally = { killed: 0, halfWay: 0, acks: 0, faults: [] };
  const path = join(folder, 'early.book');
  createBook(path, INFO);
  for (let run = 0; run < 40 && tally.faults.length === 0; run++)
    await killOnce(path, tally, chance() * LONGEST_MS, true);
  console.log(`control of kills: seed ${SEED}, found after ${tally.killed} kills: ${tally.faults[0]}`);
  expect(tally.faults[0]).toMatch(/lost: acknowledged/);
  const counts = { 'kills until a loss was found': tally.killed };
  recordCounts('kills-control', import.meta.filename, { seed: SEED, counts });
});
