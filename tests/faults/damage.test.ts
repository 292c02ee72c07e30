// Silent damage: whatever a damaged book shows without a finding is what was written.
import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import type { KeptEntry, ScanQuery } from '../../src/book/index.ts';
import {
  checkBookFile,
  createBook,
  type DiskBook,
  DiskProblem,
  openBook,
} from '../../src/doors/disk/index.ts';
import { chanceFrom, makeDrafts, sealedAs } from '../contract/made-up-entries.ts';
import { recordCounts } from '../verification/record.ts';
import { DAMAGE_KINDS, type DamageKind, damage } from './damage.ts';
import { ramFolder } from './needs.ts';
import { INFO } from './writer.ts';

const IMAGES = 1600;
const SEED = 1063;
let folder = '';
let path = '';
let whole = Buffer.alloc(0);
let truth: readonly KeptEntry[] = [];

beforeEach(async () => {
  folder = ramFolder('damage');
  mkdirSync(join(folder, 'images'));
  path = join(folder, 'images', 'corrie.book');
  createBook(path, INFO);
  const chains = [sealedAs('corrie', makeDrafts(1, 1400)), sealedAs('north-ridge', makeDrafts(2, 600))];
  {
    using book = await openBook(path, { owner: 'faults' });
    for (let at = 0; at < 1400; at += 100)
      await book.append(
        chains.flatMap((chain) => chain.slice(at, at + 100)),
        [],
      );
  }
  whole = readFileSync(path);
  truth = chains.flat();
  // Without the receipt, so that the file alone has to show its damage; how a receipt is held is tested elsewhere.
  for (const name of ['.receipt', '-journal']) rmSync(`${path}${name}`, { force: true });
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

/** How damage came out. `wrong, unsaid` must not happen. */
type Verdict = 'refused at open' | 'found by pages' | 'found by chains only' | 'harmless' | 'wrong, unsaid';

async function judge(bytes: Buffer): Promise<Verdict> {
  writeFileSync(path, bytes);
  rmSync(`${path}-journal`, { force: true });
  try {
    using book = await openBook(path, { owner: 'faults', readOnly: true });
    const { findings } = await checkBookFile(book);
    if (findings.some(({ code }) => code === 'page-damaged' || code === 'book-damaged'))
      return 'found by pages';
    if (findings.length > 0) return 'found by chains only';
    return (await showsTruth(book)) ? 'harmless' : 'wrong, unsaid';
  } catch (error) {
    if (error instanceof DiskProblem) return 'refused at open';
    throw error;
  }
}

const QUERIES: readonly ScanQuery[] = [
  { order: 'site' },
  { order: 'total' },
  { order: 'total', site: 'corrie' },
  { order: 'total', kinds: ['undo', 'note'] },
];

/** Does every way to read show what was written? When a book got it is no part of the seal, and of no view. */
async function showsTruth(book: DiskBook): Promise<boolean> {
  const bare = ({ keptAtMs: _, ...row }: KeptEntry) => JSON.stringify(row);
  const wanted = new Set(truth.map(bare));
  for (const query of QUERIES) {
    const rows = (await Array.fromAsync(book.scan(query))).flat();
    const expected = truth.filter(
      (row) => (query.site ?? row.site) === row.site && (query.kinds ?? [row.kind]).includes(row.kind),
    );
    if (rows.length !== expected.length) return false;
    if (!rows.every((row) => wanted.has(bare(row)))) return false;
  }
  for (const row of truth.filter((_, at) => at % 40 === 0)) {
    const found = await book.find(row.id);
    if (found === null || bare(found) !== bare(row)) return false;
  }
  return true;
}

test(`of ${IMAGES} damaged books none shows anything wrong without a finding`, async () => {
  const chance = chanceFrom(SEED);
  const tally = new Map<string, number>();
  const unsaid: string[] = [];
  for (let image = 0; image < IMAGES; image++) {
    const kind = DAMAGE_KINDS[image % DAMAGE_KINDS.length] as DamageKind;
    const { bytes, what } = damage(whole, kind, chance);
    const verdict = bytes.equals(whole) ? 'no damage' : await judge(bytes);
    tally.set(`${kind}: ${verdict}`, (tally.get(`${kind}: ${verdict}`) ?? 0) + 1);
    if (verdict === 'wrong, unsaid') unsaid.push(what);
  }
  const count = (verdict: string) =>
    [...tally].filter(([name]) => name.endsWith(verdict)).reduce((sum, [, times]) => sum + times, 0);
  console.log(
    `damage: seed ${SEED}, ${IMAGES} images of ${whole.length} bytes\n${[...tally]
      .toSorted()
      .map(([name, times]) => `  ${name} ${times}`)
      .join('\n')}`,
  );
  expect(unsaid).toEqual([]);
  expect(IMAGES - count('no damage')).toBeGreaterThanOrEqual(1500);
  for (const verdict of ['refused at open', 'found by pages', 'found by chains only'])
    expect(count(verdict), verdict).toBeGreaterThan(0);
  for (const kind of DAMAGE_KINDS)
    expect(
      [...tally].filter(([name]) => name.startsWith(kind) && !/harmless|no damage/.test(name)).length,
      kind,
    ).toBeGreaterThan(0);
  const counts = {
    images: IMAGES,
    'refused at open': count('refused at open'),
    'found by pages': count('found by pages'),
    'found by chains only': count('found by chains only'),
    harmless: count('harmless') + count('no damage'),
    'wrong and unsaid': unsaid.length,
  };
  recordCounts('damage', import.meta.filename, { seed: SEED, counts });
});

test('control: without the chains wrong entries would be shown and nothing said', async () => {
  const chance = chanceFrom(SEED);
  let onlyByChains = 0;
  for (let image = 0; image < 200; image++) {
    const { bytes } = damage(whole, 'bit flip', chance);
    if ((await judge(bytes)) !== 'found by chains only') continue;
    using book = await openBook(path, { owner: 'faults', readOnly: true });
    if (!(await showsTruth(book))) onlyByChains += 1;
  }
  console.log(
    `control of damage: ${onlyByChains} of 200 flipped bits would show something wrong without the chains`,
  );
  expect(onlyByChains).toBeGreaterThan(20);
  const counts = { 'flipped bits': 200, 'wrong and unsaid without chains': onlyByChains };
  recordCounts('damage-control', import.meta.filename, { seed: SEED, counts });
});
