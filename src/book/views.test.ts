// Order, undo, corrections and views: what counts, as known at one instant and as of another.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  chanceFrom,
  DAY_ONE_MS,
  idFrom,
  makeDrafts,
  sealedAs,
} from '../../tests/contract/made-up-entries.ts';
import { amend, readAmendments } from './amendments.ts';
import type { AnyDraft, AnyEntry } from './entry.ts';
import { entryId, entryIdPattern, entryIdTimeMs } from './entry-id.ts';
import { MemoryStore } from './memory-store.ts';
import { compareOrder } from './order.ts';
import { amendmentsOf, readBook, type View } from './read.ts';

const INFO = { bookId: 'b', site: 'corrie', purpose: 'practice', createdAtMs: 0 } as const;
const HOUR_MS = 3_600_000;

/** Drafts of one hour after another: texts are notes, the others point at an earlier draft by its place. */
function story(...told: (string | { undo: number } | { correct: number; text: string })[]): AnyDraft[] {
  const chance = chanceFrom(7);
  const ids = told.map((_, at) => idFrom(chance, DAY_ONE_MS + at * HOUR_MS));
  return told.map((what, at) => {
    const envelope = {
      id: ids[at] as string,
      version: 1,
      by: 'keeper',
      happenedAtMs: DAY_ONE_MS + at * HOUR_MS,
      happenedOffsetMin: 0,
      enteredAtMs: DAY_ONE_MS + at * HOUR_MS,
      enteredOffsetMin: 0,
    };
    if (typeof what === 'string') return { ...envelope, kind: 'note', body: { text: what } };
    if ('undo' in what) return { ...envelope, kind: 'undo', body: { target: ids[what.undo] as string } };
    const body = { target: ids[what.correct] as string, reason: 'slip', body: { text: what.text } };
    return { ...envelope, kind: 'correction', body };
  }) as AnyDraft[];
}

async function notes(drafts: AnyDraft[], view: View = {}): Promise<string[]> {
  const port = new MemoryStore(INFO);
  await port.append(sealedAs('corrie', drafts), []);
  const said: string[] = [];
  for await (const batch of readBook(port, view))
    for (const entry of batch) if (entry.kind === 'note') said.push(entry.body.text);
  return said;
}

test('an undo takes an entry out, an undo of the undo brings it back, and so on', async () => {
  expect(await notes(story('a', 'b', { undo: 0 }))).toEqual(['b']);
  expect(await notes(story('a', 'b', { undo: 0 }, { undo: 2 }))).toEqual(['a', 'b']);
  expect(await notes(story('a', 'b', { undo: 0 }, { undo: 2 }, { undo: 3 }))).toEqual(['b']);
});

test('of several corrections the last counts; one that is undone does not', async () => {
  expect(await notes(story('a', { correct: 0, text: 'a2' }, { correct: 0, text: 'a3' }))).toEqual(['a3']);
  expect(
    await notes(story('a', { correct: 0, text: 'a2' }, { correct: 0, text: 'a3' }, { undo: 2 })),
  ).toEqual(['a2']);
});

test('as known at an instant, later undo and corrections are not there; as of an instant, later acts are not', async () => {
  const drafts = story('a', 'b', { undo: 0 }, { correct: 1, text: 'b2' });
  expect(await notes(drafts, { knownAtMs: DAY_ONE_MS + HOUR_MS })).toEqual(['a', 'b']);
  expect(await notes(drafts, { knownAtMs: DAY_ONE_MS + 2 * HOUR_MS })).toEqual(['b']);
  expect(await notes(drafts, { asOfMs: DAY_ONE_MS })).toEqual([]);
  expect(await notes(drafts, { asOfMs: DAY_ONE_MS + HOUR_MS })).toEqual(['b2']);
});

test('what counts does not depend on the order of arrival', () => {
  const entries = sealedAs(
    'corrie',
    story('a', 'b', { undo: 0 }, { undo: 2 }, { correct: 1, text: 'b2' }, { undo: 3 }),
  ).map((row) => JSON.parse(row.text) as AnyEntry);
  const count = (list: readonly AnyEntry[]) =>
    entries.map((entry) => amend(entry, readAmendments(list.filter(({ kind }) => kind !== 'note'))));
  const wanted = count(entries);
  expect(wanted.filter((entry) => entry === null)).toHaveLength(2);
  fc.assert(
    fc.property(fc.shuffledSubarray(entries, { minLength: entries.length }), (shuffled) => {
      expect(count(shuffled)).toEqual(wanted);
    }),
    { numRuns: 200 },
  );
});

test('reading goes on behind a place, with the amendments of the whole book', async () => {
  const port = new MemoryStore(INFO);
  await port.append(sealedAs('corrie', makeDrafts(12, 2500)), []);
  const whole = (await Array.fromAsync(readBook(port))).flat();
  const after = whole[1300] as AnyEntry;
  const rest = (
    await Array.fromAsync(readBook(port, {}, { after, amendments: await amendmentsOf(port, {}) }))
  ).flat();
  expect(rest).toEqual(whole.slice(1301));
});

test('the total order is one: antisymmetric, transitive, and by code units of the site', () => {
  const key = fc.record({
    happenedAtMs: fc.integer({ min: 0, max: 3 }),
    site: fc.constantFrom('a', 'a-b', 'b', '7'),
    number: fc.integer({ min: 1, max: 3 }),
  });
  fc.assert(
    fc.property(key, key, key, (a, b, c) => {
      expect(Math.sign(compareOrder(a, b))).toBe(-Math.sign(compareOrder(b, a)) + 0);
      if (compareOrder(a, b) <= 0 && compareOrder(b, c) <= 0)
        expect(compareOrder(a, c)).toBeLessThanOrEqual(0);
    }),
    { numRuns: 2000 },
  );
});

test('an id carries its time, and sorts by it', () => {
  const chance = chanceFrom(3);
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 2 ** 48 - 2 }), (ms) => {
      const id = idFrom(chance, ms);
      expect(id).toMatch(entryIdPattern);
      expect(entryIdTimeMs(id)).toBe(ms);
      expect(id < idFrom(chance, ms + 1)).toBe(true);
    }),
    { numRuns: 500 },
  );
  for (const ms of [-1, 2 ** 48, 0.5, Number.NaN])
    expect(() => entryId(ms, new Uint8Array(10))).toThrow(RangeError);
  expect(() => entryId(0, new Uint8Array(9))).toThrow(RangeError);
});

test('a correction that does not fit the kind of its target corrects nothing', () => {
  const target = {
    id: '00000000-0000-7000-8000-000000000001',
    site: 'corrie',
    number: 1,
    version: 1,
    kind: 'note',
    happenedAtMs: 0,
    happenedOffsetMin: 0,
    enteredAtMs: 0,
    enteredOffsetMin: 0,
    by: 'keeper',
    body: { text: 'clear' },
  } as AnyEntry;
  const correct = (body: Record<string, unknown>) =>
    readAmendments([
      {
        ...target,
        id: '00000000-0000-7000-8000-000000000002',
        number: 2,
        kind: 'correction',
        body: { target: target.id, reason: 'slip', body },
      } as AnyEntry,
    ]);
  expect(amend(target, correct({ text: 'cloudy' }))?.body).toEqual({ text: 'cloudy' });
  expect(amend(target, correct({ store: 'C-01', amount: 1e9 }))).toBe(target);
});
