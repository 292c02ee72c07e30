// Where data goes: standard output, or a file that appears whole or not at all.
import {
  closeSync,
  openSync,
  readSync,
  realpathSync,
  renameSync,
  rmSync,
  statSync,
  writeSync,
} from 'node:fs';
import { join, resolve } from 'node:path';
import { findBook } from './book-path.ts';
import type { Call } from './call.ts';
import { EXIT } from './exit-code.ts';
import { CliProblem, cliFinding, wrongUse } from './problem.ts';

/** Written in pieces of about this length: a write for each line would take its time. */
const PIECE = 65_536;

/** The file that `-o` names; undefined for standard output. */
function outputFile(call: Call): string | undefined {
  const typed = call.text('output');
  return typed === undefined || typed === '-' ? undefined : resolve(call.terminal.cwd, typed);
}

/**
 * @param fileName what it is called where `-o` names a folder
 * @returns the file that was written; undefined for standard output
 */
export async function writeData(
  call: Call,
  pieces: Iterable<string> | AsyncIterable<string>,
  fileName?: string,
): Promise<string | undefined> {
  const typed = outputFile(call);
  if (typed === undefined) {
    await inPieces(pieces, (text) => call.terminal.stdout.write(text));
    return undefined;
  }
  const path = fileName !== undefined && isFolder(typed) ? join(typed, fileName) : typed;
  await writeWhole(path, pieces);
  return path;
}

function isFolder(path: string): boolean {
  return statSync(path, { throwIfNoEntry: false })?.isDirectory() === true;
}

/** Under a passing name first: who reads FILE meanwhile sees the old one or the new one. */
async function writeWhole(path: string, pieces: Iterable<string> | AsyncIterable<string>): Promise<void> {
  const fresh = `${path}.${process.pid}.new`;
  try {
    const fd = openSync(fresh, 'w');
    try {
      await inPieces(pieces, (text) => writeAll(fd, text));
    } finally {
      closeSync(fd);
    }
    renameSync(fresh, path);
  } catch (error) {
    rmSync(fresh, { force: true });
    const { code } = error as NodeJS.ErrnoException;
    if (code === undefined || error instanceof CliProblem || !/^E[A-Z]+$/.test(code)) throw error;
    throw new CliProblem(EXIT.failure, [cliFinding('file-not-written', { says: code }, { file: path })]);
  }
}

function writeAll(fd: number, text: string): void {
  const bytes = Buffer.from(text);
  for (let from = 0; from < bytes.length; ) from += writeSync(fd, bytes, from);
}

async function inPieces(
  pieces: Iterable<string> | AsyncIterable<string>,
  write: (text: string) => void,
): Promise<void> {
  let waiting = '';
  for await (const piece of pieces) {
    waiting += piece;
    if (waiting.length < PIECE) continue;
    write(waiting);
    waiting = '';
  }
  if (waiting !== '') write(waiting);
}

/** A slip of the pen must not put a page over a book or the receipt beside it. Asked before the command does its work. */
export function holdOutput(call: Call): void {
  const path = outputFile(call);
  if (path === undefined) return;
  const book = findBook(call)?.path;
  const isBeside = book !== undefined && [book, `${book}.receipt`].map(real).includes(real(path));
  if (isBeside || beginsLikeBook(path)) throw wrongUse('output-is-book', {}, { file: path });
}

function real(path: string): string {
  try {
    return realpathSync(path);
  } catch {
    return path;
  }
}

/** The first bytes of every SQLite file. @source sqlite.org/fileformat2.html 1.3 */
const MARK = 'SQLite format 3\0';

function beginsLikeBook(path: string): boolean {
  try {
    const fd = openSync(path, 'r');
    try {
      const start = new Uint8Array(MARK.length);
      return readSync(fd, start) === MARK.length && Buffer.from(start).toString('latin1') === MARK;
    } finally {
      closeSync(fd);
    }
  } catch {
    return false;
  }
}
