// A stock count that is not finished: what was typed so far, in a small file beside the book and never in it.
import { forgetTyped, keepTyped, readTyped } from '../typed-file.ts';

interface Head {
  /** UTC milliseconds at which it was begun, by the book's own time. */
  readonly begunMs: number;
  readonly by: string;
}

export interface CountDraft extends Head {
  /** Texts as typed, by store or part. */
  readonly typed: ReadonlyMap<string, string>;
}

const FORMAT = 'waterwright stock count';

function draftPath(bookPath: string): string {
  return `${bookPath}.stock-count`;
}

export function readCountDraft(bookPath: string): CountDraft | null {
  const read = readTyped(draftPath(bookPath), FORMAT, isHead);
  return read === null ? null : { begunMs: read.head.begunMs, by: read.head.by, typed: read.typed };
}

function isHead(value: Readonly<Record<string, unknown>>): value is Readonly<Record<string, unknown>> & Head {
  return typeof value['begunMs'] === 'number' && typeof value['by'] === 'string';
}

export function keepCountDraft(bookPath: string, { begunMs, by, typed }: CountDraft): void {
  keepTyped(draftPath(bookPath), FORMAT, { head: { begunMs, by }, typed });
}

export function forgetCountDraft(bookPath: string): void {
  forgetTyped(draftPath(bookPath));
}
