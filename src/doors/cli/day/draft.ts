// A day line that is not finished: what was typed so far, in a small file beside the book and never in it.
import { forgetTyped, keepTyped, readTyped } from '../typed-file.ts';

interface Head {
  readonly day: number;
  readonly by: string;
}

export interface Draft extends Head {
  /** Texts as typed, by instrument. */
  readonly typed: ReadonlyMap<string, string>;
}

const FORMAT = 'waterwright day line';

function draftPath(bookPath: string): string {
  return `${bookPath}.day-line`;
}

/** What was typed before; of another day it is `stale`, and is shown so that nothing is lost. */
export interface FoundDraft {
  readonly draft: Draft;
  readonly stale: boolean;
}

export function readDraft(bookPath: string, day: number): FoundDraft | null {
  const read = readTyped(draftPath(bookPath), FORMAT, isHead);
  if (read === null) return null;
  const { head, typed } = read;
  return { draft: { day: head.day, by: head.by, typed }, stale: head.day !== day };
}

function isHead(value: Readonly<Record<string, unknown>>): value is Readonly<Record<string, unknown>> & Head {
  return typeof value['day'] === 'number' && typeof value['by'] === 'string';
}

export function keepDraft(bookPath: string, { day, by, typed }: Draft): void {
  keepTyped(draftPath(bookPath), FORMAT, { head: { day, by }, typed });
}

export function forgetDraft(bookPath: string): void {
  forgetTyped(draftPath(bookPath));
}
