// A practice book of ten thousand entries: the opening of Corrie, then day after day of drinks and a day line.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { type AnyDraft, entryId, keepDrafts, kindVersion } from '../src/book/index.ts';
import { Desk, startPractice } from '../src/desk/index.ts';
import { createBook, nodeHash, openBook } from '../src/doors/disk/index.ts';

const ENTRIES = 10_000;
const DRINKS_A_DAY = 15;
const DAY_MS = 86_400_000;
const ROOT = join(import.meta.dirname, '..');

export async function makeLongBook(path: string): Promise<void> {
  createBook(path, { bookId: 'bench', site: 'corrie', purpose: 'practice', createdAtMs: 0 });
  using port = await openBook(path, { owner: 'bench' });
  let bytes = 0;
  const chance = () => Uint8Array.from({ length: 10 }, () => (bytes = (bytes * 31 + 7) & 0xff));
  const desk = await Desk.open(port, { hash: nodeHash, chance });
  const example = (name: string) => readFileSync(join(ROOT, 'examples/corrie', name), 'utf8');
  const lines = example('field-log.jsonl').split('\n').slice(0, 1);
  const outpost = { name: 'outpost.yaml', text: example('outpost.yaml') };
  const moment = { nowUtcMs: 0, offsetMin: 0, by: 'keeper' };
  await startPractice(desk, moment, { outpost, log: { name: 'log', lines } });
  const opened = await desk.account();
  if (!opened.ok) throw new Error('the book of the bench has no account');
  const drafts = madeUp(opened.value.fold.openingMs ?? 0);
  for (let from = 0; from < drafts.length; from += 1000) {
    const kept = await keepDrafts(port, drafts.slice(from, from + 1000), { hash: nodeHash, keptAtMs: 0 });
    if (!kept.ok) throw new Error(`the book of the bench was not kept: ${JSON.stringify(kept.findings[0])}`);
  }
}

function madeUp(openingMs: number): readonly AnyDraft[] {
  return Array.from({ length: ENTRIES - 2 }, (_, k) => {
    const day = Math.floor(k / (DRINKS_A_DAY + 1));
    const place = k % (DRINKS_A_DAY + 1);
    const atMs = openingMs + day * DAY_MS + (place + 1) * (DAY_MS / (DRINKS_A_DAY + 1));
    return place === DRINKS_A_DAY ? dayLine(k, atMs, day + 1) : drink(k, atMs);
  });
}

function envelope(k: number, atMs: number) {
  const id = entryId(
    Math.floor(atMs),
    Uint8Array.from({ length: 10 }, (_, at) => (k >> (at % 4)) & 0xff),
  );
  return {
    id,
    happenedAtMs: Math.floor(atMs),
    happenedOffsetMin: 0,
    enteredAtMs: Math.floor(atMs),
    enteredOffsetMin: 0,
    by: 'keeper',
  };
}

function drink(k: number, atMs: number): AnyDraft {
  const raw = { value: 8, unit: 'strokes', mgPerUnit: 24_945 };
  const body = {
    from: 'dispenser',
    to: 'people',
    amount: { massMg: 199_560, raw },
    use: 'drink',
    instrument: 'strokes',
  };
  return { ...envelope(k, atMs), kind: 'movement', version: kindVersion('movement'), body } as AnyDraft;
}

function dayLine(k: number, atMs: number, day: number): AnyDraft {
  const readings = [
    { instrument: 'strokes', value: 420 + (k % 37) },
    { instrument: 'product', value: 6.4 },
    { instrument: 'condensate', value: (862.4 + 6.3 * day) % 1000 },
    { instrument: 'electrolyser-feed', value: 2.9 },
    { instrument: 'flushes', value: 24 },
  ].map(({ instrument, value }) => ({ instrument, value: Math.round(value * 100) / 100 }));
  const body = { day, peopleAboard: 4, readings };
  return { ...envelope(k, atMs), kind: 'day-line', version: kindVersion('day-line'), body } as AnyDraft;
}
