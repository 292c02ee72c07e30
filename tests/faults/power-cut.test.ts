// The power cut at every call, on a disk that keeps no more than it has to: nothing acknowledged is lost, nothing is half there.
import { mkdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { recordCounts } from '../verification/record.ts';
import { type CutTally, cutEverywhere } from './cut-images.ts';
import { ramFolder } from './needs.ts';
import { type PlainSettings, recordPlain, whatIsWrongWithPlain } from './plain-writer.ts';
import type { Survival } from './posix-disk.ts';
import { recordWriter } from './record.ts';
import { endsOf, whatIsWrong } from './whole-book.ts';
import { chainOf, LONGEST_CHAIN } from './writer.ts';

const SEED = 20_260_313;
/** Singles, an import, singles, a close and a new opening (with its receipt), singles. */
const PLAN = [1, 1, 1, 1, 1, 1, 500, 1, 1, 0, 1, 1, 1, 1, 0, 1];
const WAYS: readonly Survival[] = [
  'nothing',
  'everything',
  'a prefix',
  'a prefix',
  'any part',
  'any part',
  'any part',
  'any part, torn',
  'any part, torn',
  'any part, torn',
];
let folder = '';

beforeEach(() => {
  folder = ramFolder('cut');
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

function tell(name: string, tally: CutTally): void {
  const ways = [...tally.bySurvival].map(([way, count]) => `${way} ${count}`).join(', ');
  console.log(
    `${name}: seed ${SEED}, ${tally.events} calls, ${tally.images} images (${ways}), ${tally.faulty} with something missing, ` +
      `${tally.faults.length} faults${tally.faults.length > 0 ? `, first ${tally.faults[0]}` : ''}`,
  );
}

/** Kept for the page of promises, when the test has passed. */
function keep(name: string, { events, images, faulty, faults }: CutTally): void {
  const counts = {
    calls: events,
    images,
    'images with something missing': faulty,
    'images with a loss': faults.length,
  };
  recordCounts(name, import.meta.filename, { seed: SEED, counts });
}

/** Records a writer, cuts its disk everywhere, and judges each book by where it may stand. */
async function cutBook(plan: readonly number[], ends: ReadonlySet<number>, ways = WAYS): Promise<CutTally> {
  const chain = chainOf(LONGEST_CHAIN);
  const disk = join(folder, 'disk');
  mkdirSync(disk);
  const path = join(disk, 'corrie.book');
  const { events, said } = await recordWriter({ path, create: true, plan }, disk);
  expect(said, said.stderr).toMatchObject({ done: true, errors: [], acked: Math.max(...ends) });
  const images = join(folder, 'images');
  return cutEverywhere(events, images, {
    survivals: ways,
    seed: SEED,
    look: (_, names, acked) => {
      if (names.has('corrie.book')) return whatIsWrong(join(images, 'corrie.book'), { chain, acked, ends });
      // Until the making of the book was acknowledged there may be no book; where there is one, it is whole.
      return Promise.resolve(acked < 0 ? null : 'the book is gone');
    },
  });
}

test('a book on a disk that may lose, reorder and tear whatever was not synced', async () => {
  const tally = await cutBook(PLAN, endsOf(PLAN));
  tell('power cuts', tally);
  expect(tally.faults).toEqual([]);
  expect(tally.images).toBeGreaterThanOrEqual(5000);
  expect(tally.faulty).toBeGreaterThan(1000);
  keep('power-cuts', tally);
});

test('control: an import that is written entry by entry is found half there', async () => {
  const tally = await cutBook(
    Array.from({ length: 12 }, () => 1),
    new Set([0, 12]),
    ['nothing', 'any part, torn'],
  );
  tell('control of the whole import', tally);
  expect(tally.faults.filter((fault) => fault.includes('half an append')).length).toBeGreaterThan(0);
  keep('power-cuts-control-whole-import', tally);
});

/** The same cuts through plain SQLite: what is known to lose has to lose here, or these tests see nothing. */
async function cutPlain(settings: PlainSettings): Promise<CutTally> {
  const disk = join(folder, 'disk');
  mkdirSync(disk);
  const events = recordPlain(join(disk, 'plain.db'), disk, settings);
  const images = join(folder, 'images');
  const tally = await cutEverywhere(events, images, {
    survivals: WAYS,
    seed: SEED,
    skip: /-shm$/,
    look: (_, __, acked) => Promise.resolve(whatIsWrongWithPlain(join(images, 'plain.db'), acked)),
  });
  tell(`control ${settings.journal} and ${settings.synchronous}`, tally);
  return tally;
}

test('control: the write-ahead log with NORMAL loses acknowledged rows', async () => {
  const tally = await cutPlain({ journal: 'WAL', synchronous: 'NORMAL' });
  expect(tally.faults.filter((fault) => fault.includes('lost: acknowledged')).length).toBeGreaterThan(0);
  keep('power-cuts-control-wal-normal', tally);
});

test('control: DELETE with FULL loses the last row where a folder is not synced, TRUNCATE with EXTRA does not', async () => {
  const tally = await cutPlain({ journal: 'DELETE', synchronous: 'FULL' });
  expect(tally.faults.filter((fault) => fault.includes('lost: acknowledged')).length).toBeGreaterThan(0);
  rmSync(join(folder, 'disk'), { recursive: true });
  expect((await cutPlain({ journal: 'TRUNCATE', synchronous: 'EXTRA' })).faults).toEqual([]);
  keep('power-cuts-control-delete-full', tally);
});
