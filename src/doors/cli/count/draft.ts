// A stock count that is not finished: what was typed so far, in a small file beside the book and never in it.
import { readFileSync } from 'node:fs';
import type { CountUnderWay } from '../../../desk/index.ts';
import { BookBusy, changeDurably } from '../../disk/index.ts';
import { badInput } from '../problem.ts';

const FORMAT = 'waterwright stock count';
const VERSION = 1;

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
  const count = parsed(text);
  if (count === null) throw badInput('count-file-unreadable', {}, { file: path });
  return count;
}

function parsed(text: string): CountUnderWay | null {
  try {
    const value = JSON.parse(text) as Record<string, unknown>;
    const { format, version, id, begunMs, by, places, typed } = value;
    if (format !== FORMAT || version !== VERSION) return null;
    if (typeof id !== 'string' || typeof by !== 'string' || !Number.isSafeInteger(begunMs)) return null;
    if (places !== null && !isTexts(places)) return null;
    if (!Array.isArray(typed) || !typed.every((pair) => isTexts(pair) && pair.length === 2)) return null;
    const pairs = typed as readonly (readonly [string, string])[];
    return { id, begunMs: begunMs as number, by, places, typed: new Map(pairs) };
  } catch {
    return null;
  }
}

function isTexts(value: unknown): value is readonly string[] {
  return Array.isArray(value) && value.every((text) => typeof text === 'string');
}

function textOfCount({ id, begunMs, by, places, typed }: CountUnderWay): string {
  const value = { format: FORMAT, version: VERSION, id, begunMs, by, places, typed: [...typed] };
  return `${JSON.stringify(value, null, 1)}\n`;
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
