// The receipt beside a book: where its chains stood, kept outside the file, so that a file that lost its end is noticed.
import { readFileSync, rmSync, statSync } from 'node:fs';
import { type BookInfo, FIRST_SEAL, type Head } from '../../book/index.ts';
import { writeDurably } from './durable-file.ts';
import { systemProblem } from './sqlite-error.ts';

const FORMAT = 'waterwright receipt';
const VERSION = 1;
/** A receipt longer than this is none. */
const MOST_BYTES = 1_000_000;

export interface Receipt {
  readonly bookId: string;
  readonly purpose: BookInfo['purpose'];
  readonly count: number;
  readonly heads: readonly Head[];
}

export function receiptPath(bookPath: string): string {
  return `${bookPath}.receipt`;
}

/** Null where there is none; `unreadable` where there is something else. */
export function readReceipt(bookPath: string): Receipt | 'unreadable' | null {
  const path = receiptPath(bookPath);
  try {
    if (statSync(path).size > MOST_BYTES) return 'unreadable';
    return parseReceipt(readFileSync(path, 'utf8')) ?? 'unreadable';
  } catch (error) {
    const problem = systemProblem(String((error as { code?: unknown }).code), path);
    return problem?.code === 'book-missing' ? null : 'unreadable';
  }
}

function parseReceipt(text: string): Receipt | null {
  try {
    const value = JSON.parse(text) as Receipt & { format?: unknown; version?: unknown };
    const isOurs = value.format === FORMAT && value.version === VERSION && Array.isArray(value.heads);
    const isWhole = typeof value.bookId === 'string' && Number.isSafeInteger(value.count);
    if (!isOurs || !isWhole || !value.heads.every(isHead)) return null;
    return {
      bookId: value.bookId,
      purpose: value.purpose === 'practice' ? 'practice' : 'book',
      count: value.count,
      heads: value.heads,
    };
  } catch {
    return null;
  }
}

function isHead(head: unknown): head is Head {
  const { site, number, seal } = (head ?? {}) as { site?: unknown; number?: unknown; seal?: unknown };
  const isPlace = typeof site === 'string' && Number.isSafeInteger(number) && (number as number) > 0;
  return isPlace && typeof seal === 'string' && seal.length === FIRST_SEAL.length;
}

/**
 * Writes down where the chains stand. Called after the commit only: a receipt may lag behind its book, it never leads.
 * @returns false when another process is writing it at this moment
 */
export function writeReceipt(bookPath: string, info: BookInfo, heads: readonly Head[]): boolean {
  const count = heads.reduce((sum, head) => sum + head.number, 0);
  const receipt = { format: FORMAT, version: VERSION, bookId: info.bookId, purpose: info.purpose, count };
  return writeDurably(receiptPath(bookPath), `${JSON.stringify({ ...receipt, heads }, null, 2)}\n`);
}

export function removeReceipt(bookPath: string): void {
  rmSync(receiptPath(bookPath), { force: true });
}
