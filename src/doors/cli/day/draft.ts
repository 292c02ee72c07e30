// A day line that is not finished: what was typed so far, in a small file beside the book and never in it.
import { readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';

export interface Draft {
  readonly day: number;
  readonly by: string;
  /** Texts as typed, by instrument. */
  readonly typed: ReadonlyMap<string, string>;
}

const FORMAT = 'waterwright day line';
const VERSION = 1;

function draftPath(bookPath: string): string {
  return `${bookPath}.day-line`;
}

/** What was typed before; of another day it is `stale`, and is shown so that nothing is lost. */
export interface FoundDraft {
  readonly draft: Draft;
  readonly stale: boolean;
}

export function readDraft(bookPath: string, day: number): FoundDraft | null {
  try {
    const value = JSON.parse(readFileSync(draftPath(bookPath), 'utf8')) as Record<string, unknown>;
    const { format, version, by, typed } = value;
    if (format !== FORMAT || version !== VERSION || typeof by !== 'string' || !isTexts(typed)) return null;
    const draft = { day: value['day'] as number, by, typed: new Map(Object.entries(typed)) };
    return { draft, stale: draft.day !== day };
  } catch {
    // No draft, or one that cannot be read: the meters are asked from the first one on.
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

export function keepDraft(bookPath: string, { day, by, typed }: Draft): void {
  const text = JSON.stringify({
    format: FORMAT,
    version: VERSION,
    day,
    by,
    typed: Object.fromEntries(typed),
  });
  const fresh = `${draftPath(bookPath)}.new`;
  writeFileSync(fresh, `${text}\n`);
  renameSync(fresh, draftPath(bookPath));
}

export function forgetDraft(bookPath: string): void {
  rmSync(draftPath(bookPath), { force: true });
}
