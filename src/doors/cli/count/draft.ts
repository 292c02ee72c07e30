// A stock count that is not finished: what was typed so far, in a small file beside the book and never in it.
import { readFileSync, rmSync } from 'node:fs';
import { writeDurably } from '../../disk/index.ts';

export interface CountDraft {
  /** UTC milliseconds at which it was begun, by the book's own time. */
  readonly begunMs: number;
  readonly by: string;
  /** Texts as typed, by store or part. */
  readonly typed: ReadonlyMap<string, string>;
}

const FORMAT = 'waterwright stock count';
const VERSION = 1;

function draftPath(bookPath: string): string {
  return `${bookPath}.stock-count`;
}

export function readCountDraft(bookPath: string): CountDraft | null {
  try {
    const value = JSON.parse(readFileSync(draftPath(bookPath), 'utf8')) as Record<string, unknown>;
    const { format, version, begunMs, by, typed } = value;
    if (format !== FORMAT || version !== VERSION || typeof begunMs !== 'number' || typeof by !== 'string')
      return null;
    return isTexts(typed) ? { begunMs, by, typed: new Map(Object.entries(typed)) } : null;
  } catch {
    // No count under way, or a file that is none of ours.
    return null;
  }
}

function isTexts(value: unknown): value is Record<string, string> {
  return (
    typeof value === 'object' &&
    value !== null &&
    Object.values(value).every((text) => typeof text === 'string')
  );
}

/** What was typed is safe when this returns. */
export function keepCountDraft(bookPath: string, { begunMs, by, typed }: CountDraft): void {
  const text = JSON.stringify({
    format: FORMAT,
    version: VERSION,
    begunMs,
    by,
    typed: Object.fromEntries(typed),
  });
  writeDurably(draftPath(bookPath), `${text}\n`);
}

export function forgetCountDraft(bookPath: string): void {
  rmSync(draftPath(bookPath), { force: true });
}
