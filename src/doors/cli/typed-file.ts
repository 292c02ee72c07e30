// A small file beside the book with what was typed and is no entry yet: a day line or a stock count that is not finished.
import { readFileSync, rmSync } from 'node:fs';
import { writeDurably } from '../disk/index.ts';

export interface TypedFile<Head> {
  /** What else the file says: of which day, begun when, by whom. */
  readonly head: Head;
  /** Texts as typed, by instrument, store or part. */
  readonly typed: ReadonlyMap<string, string>;
}

const VERSION = 1;

/** @param isHead tells whether what was read is what was written; else there is no such file */
export function readTyped<Head>(
  path: string,
  format: string,
  isHead: (value: Readonly<Record<string, unknown>>) => value is Readonly<Record<string, unknown>> & Head,
): TypedFile<Head> | null {
  try {
    return typedOfText(readFileSync(path, 'utf8'), format, isHead);
  } catch {
    // Nothing was typed, or the file cannot be read: then everything is asked anew.
    return null;
  }
}

/** Null where the text is none of ours, or not whole. */
export function typedOfText<Head>(
  text: string,
  format: string,
  isHead: (value: Readonly<Record<string, unknown>>) => value is Readonly<Record<string, unknown>> & Head,
): TypedFile<Head> | null {
  try {
    const value = JSON.parse(text) as Record<string, unknown>;
    const { typed } = value;
    if (value['format'] !== format || value['version'] !== VERSION || !isTexts(typed) || !isHead(value))
      return null;
    return { head: value, typed: new Map(Object.entries(typed)) };
  } catch {
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
export function keepTyped<Head extends object>(
  path: string,
  format: string,
  { head, typed }: TypedFile<Head>,
): void {
  writeDurably(path, textOfTyped(format, { head, typed }));
}

export function textOfTyped<Head extends object>(format: string, { head, typed }: TypedFile<Head>): string {
  return `${JSON.stringify({ format, version: VERSION, ...head, typed: Object.fromEntries(typed) })}\n`;
}

export function forgetTyped(path: string): void {
  rmSync(path, { force: true });
}
