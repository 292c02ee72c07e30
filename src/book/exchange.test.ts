// The exchange by lines: the same digest after a round trip, however often and in whatever pieces it is made.
import { expect, test } from 'vitest';
import { chanceFrom, makeDrafts, sealedAs } from '../../tests/contract/made-up-entries.ts';
import { recordCounts } from '../../tests/verification/record.ts';
import { checkBook } from './check.ts';
import { acceptLines, exportLines, readHeader, type Since } from './exchange.ts';
import { MemoryStore } from './memory-store.ts';
import type { BookInfo } from './port.ts';
import { plainHash } from './seal.ts';

const INFO: BookInfo = { bookId: 'b', site: 'corrie', purpose: 'practice', createdAtMs: 0 };
const by = { hash: plainHash, keptAtMs: 7, firstLine: 2 };

async function bookOf(seed: number, counts: Record<string, number>): Promise<MemoryStore> {
  const port = new MemoryStore(INFO);
  for (const [site, count] of Object.entries(counts))
    await port.append(sealedAs(site, makeDrafts(seed + count, count)), []);
  return port;
}

function linesOf(port: MemoryStore, since?: Since): Promise<string[]> {
  return Array.fromAsync(exportLines(port, since));
}

const digestOf = async (port: MemoryStore) => (await checkBook(port, { hash: plainHash })).digest;

test('a book that went out as lines and came in again has the same digest', async () => {
  const port = await bookOf(1, { corrie: 60, 'north-ridge': 25 });
  const [header, ...lines] = (await linesOf(port)) as [string, ...string[]];
  expect(readHeader(header)).toMatchObject({ ok: true, header: { site: 'corrie', purpose: 'practice' } });
  const copy = new MemoryStore(INFO);
  expect(await acceptLines(copy, lines, by)).toMatchObject({ ok: true, accepted: 85, alreadyKept: 0 });
  expect(await digestOf(copy)).toBe(await digestOf(port));
  expect(await acceptLines(copy, lines, by)).toMatchObject({ ok: true, accepted: 0, alreadyKept: 85 });
});

test('only what the other does not have goes out, and pieces may overlap', async () => {
  const port = await bookOf(2, { corrie: 60, 'north-ridge': 25 });
  const copy = new MemoryStore(INFO);
  let at: Since = [];
  for (const numbers of [20, 45, 45, 60]) {
    const lines = (await linesOf(port, at)).slice(1);
    expect(lines).toHaveLength(85 - at.reduce((sum, { number }) => sum + number, 0));
    await acceptLines(copy, lines.slice(0, numbers), by);
    at = (await copy.heads()).map(({ site, number }) => ({ site, number: Math.max(0, number - 3) }));
  }
  await acceptLines(copy, (await linesOf(port, at)).slice(1), by);
  expect(await digestOf(copy)).toBe(await digestOf(port));
});

test('of 400 lines with one changed letter none changes the book', async () => {
  const port = await bookOf(3, { corrie: 20 });
  const lines = (await linesOf(port)).slice(1);
  const chance = chanceFrom(2147);
  const copy = await bookOf(3, {});
  await acceptLines(copy, lines.slice(0, 10), by);
  const before = await digestOf(copy);
  let changed = 0;
  let taken = 0;
  for (let run = 0; run < 400; run++) {
    const line = Math.floor(chance() * 11);
    const text = lines[line] as string;
    const place = Math.floor(chance() * text.length);
    const bad =
      text.slice(0, place) +
      String.fromCharCode(text.charCodeAt(place) ^ (1 << Math.floor(chance() * 7))) +
      text.slice(place + 1);
    changed += 1;
    const outcome = await acceptLines(copy, lines.slice(0, 11).with(line, bad), by);
    if (outcome.ok) taken += 1;
    expect(outcome, bad).toMatchObject({ ok: false });
    if (!outcome.ok) expect(outcome.findings[0]?.where.line).toBe(line + 2);
    expect(await digestOf(copy)).toBe(before);
  }
  expect(changed).toBe(400);
  recordCounts('changed-letters', import.meta.filename, {
    seed: 2147,
    counts: { 'lines with a changed letter': changed, 'lines taken': taken },
  });
});

test('a gap, other content under a known number, an id twice: nothing is taken, and the line is named', async () => {
  const port = await bookOf(4, { corrie: 10 });
  const lines = (await linesOf(port)).slice(1);
  const copy = new MemoryStore(INFO);
  expect(await acceptLines(copy, lines.toSpliced(4, 1), by)).toMatchObject({
    ok: false,
    findings: [{ code: 'chain-gap', where: { line: 6 }, data: { site: 'corrie', number: 6, next: 5 } }],
  });
  const other = (await linesOf(await bookOf(5, { corrie: 12 }))).slice(1);
  await acceptLines(copy, lines, by);
  expect(await acceptLines(copy, other, by)).toMatchObject({
    ok: false,
    findings: [{ code: 'number-reused', where: { line: 2 } }],
  });
  const same = sealedAs('north-ridge', makeDrafts(4 + 10, 3)).map(
    (row) => `{"entry":${row.text},"seal":"${row.seal}"}`,
  );
  expect(await acceptLines(copy, same, by)).toMatchObject({ ok: false, findings: [{ code: 'id-reused' }] });
  expect(await copy.count()).toBe(10);
});

test.each([
  ['no JSON', '{"entry":', 'line-no-json'],
  ['a list', '[]', 'line-no-json'],
  ['no seal', '{"entry":{"kind":"note"}}', 'line-no-json'],
  ['an unknown kind', '{"entry":{"kind":"nota"},"seal":"x"}', 'kind-unknown'],
  ['a newer shape', '{"entry":{"kind":"note","version":2},"seal":"x"}', 'shape-newer'],
])('a line with %s is a finding', async (_, line, code) => {
  const outcome = await acceptLines(new MemoryStore(INFO), [line], by);
  expect(outcome).toMatchObject({ ok: false, findings: [{ code, where: { line: 2 } }] });
});

test('the header tells an export from anything else, and a newer one apart', () => {
  expect(readHeader('{"format":"other"}')).toMatchObject({ ok: false, finding: { code: 'line-no-json' } });
  expect(readHeader('no JSON')).toMatchObject({ ok: false, finding: { code: 'line-no-json' } });
  const newer = '{"format":"waterwright book","site":"corrie","version":2}';
  expect(readHeader(newer)).toMatchObject({
    ok: false,
    finding: { code: 'shape-newer', data: { known: 1 } },
  });
});
