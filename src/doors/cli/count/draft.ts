// A stock count that is not finished: what was typed so far, in a small file beside the book and never in it.
import { readFileSync } from 'node:fs';
import type { CountUnderWay } from '../../../desk/index.ts';
import { BookBusy, changeDurably } from '../../disk/index.ts';
import { badInput } from '../problem.ts';
import { textOfTyped, typedOfText } from '../typed-file.ts';

const FORMAT = 'waterwright stock count';

export function draftPath(bookPath: string): string {
  return `${bookPath}.stock-count`;
}

/** Null where no count is under way. */
export function readCountDraft(bookPath: string): CountUnderWay | null {
  const path = draftPath(bookPath);
  let text: string;
  try {
    text = readFileSync(path, 'utf8');
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return null;
    throw badInput('count-file-unreadable', {}, { file: path });
  }
  return countOfText(text, path);
}

/** What somebody typed is never taken for nothing because it cannot be read. */
function countOfText(text: string, path: string): CountUnderWay {
  const read = typedOfText(text, FORMAT, isHead);
  if (read === null) throw badInput('count-file-unreadable', {}, { file: path });
  const { id, begunMs, by, places } = read.head;
  return { id, begunMs, by, places, typed: read.typed };
}

type Head = Omit<CountUnderWay, 'typed'>;

function isHead(value: Readonly<Record<string, unknown>>): value is Readonly<Record<string, unknown>> & Head {
  const { id, begunMs, by, places } = value;
  const isPlaces =
    places === null || (Array.isArray(places) && places.every((place) => typeof place === 'string'));
  return typeof id === 'string' && Number.isSafeInteger(begunMs) && typeof by === 'string' && isPlaces;
}

function textOfCount({ typed, ...head }: CountUnderWay): string {
  return textOfTyped(FORMAT, { head, typed });
}

/** Puts a new count in the place of whatever was there. */
export function beginCountDraft(bookPath: string, count: CountUnderWay): void {
  change(bookPath, () => count);
}

/**
 * Adds to what was typed, by whomever, up to this moment. What was typed is safe when this returns.
 * @param add the new readings by those that stand there; null: no count is under way any more
 */
export function addToCountDraft(
  bookPath: string,
  add: (count: CountUnderWay | null) => CountUnderWay,
): CountUnderWay {
  let added: CountUnderWay | null = null;
  change(bookPath, (now) => {
    added = add(now());
    return added;
  });
  if (added === null) throw new Error('a count was changed and is none');
  return added;
}

/** What was entered goes; what somebody typed meanwhile stays, as a count of its own. */
export function settleCountDraft(bookPath: string, entered: CountUnderWay, nextId: string): void {
  change(bookPath, (now) => {
    const count = now();
    if (count === null || count.id !== entered.id) return count;
    const rest = [...count.typed].filter(([id, text]) => entered.typed.get(id) !== text);
    return rest.length === 0 ? null : { ...count, id: nextId, typed: new Map(rest) };
  });
}

/** Two people may type at two terminals: each change takes a few milliseconds, so the other one waits. */
const WAIT_MS = 2000;
const PAUSE_MS = 20;

type Change = (now: () => CountUnderWay | null) => CountUnderWay | null;

function change(bookPath: string, make: Change): void {
  const path = draftPath(bookPath);
  for (let waitedMs = 0; ; waitedMs += PAUSE_MS) {
    const isDone = changeDurably(path, (old) => {
      const count = make(() => {
        const text = old();
        return text === null ? null : countOfText(text, path);
      });
      return count === null ? null : textOfCount(count);
    });
    if (isDone) return;
    if (waitedMs >= WAIT_MS) throw new BookBusy(path, { pid: null, command: null, sinceMs: null }, waitedMs);
    Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, PAUSE_MS);
  }
}
