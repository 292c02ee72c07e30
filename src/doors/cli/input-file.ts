// Files that people give: read with caps on size and on lines, as UTF-8 that is held to it.
import { closeSync, fstatSync, openSync, readSync } from 'node:fs';
import { resolve } from 'node:path';
import { firstBadLine } from '../workers/index.ts';
import type { Call } from './call.ts';
import { badInput, wrongUse } from './problem.ts';

/** A field log of a hundred years of a small outpost is smaller. */
const MOST_BYTES = 20_000_000;
const MOST_LINE_BYTES = 1_000_000;
const PIECE_BYTES = 65_536;
const LINE_END = 10;

export interface InputFile {
  /** As it was typed; `-` is standard input. */
  readonly name: string;
  readonly text: string;
}

/** A file as its bytes, for what is no UTF-8. */
export interface InputBytes {
  readonly name: string;
  readonly bytes: Uint8Array;
  /** The text, if it is one. */
  readonly text: () => string;
}

/** Reads a whole file; nothing is kept of one that is too large, or whose line is too long. */
export async function readInput(call: Call, typed: string): Promise<InputFile> {
  const { name, text } = await readBytes(call, typed);
  return { name, text: text() };
}

export async function readBytes(call: Call, typed: string): Promise<InputBytes> {
  const pieces = new Pieces(typed === '-' ? 'standard input' : typed);
  if (typed === '-') for await (const piece of call.terminal.readStdin()) pieces.take(piece);
  else readFile(resolve(call.terminal.cwd, typed), pieces);
  const bytes = pieces.bytes();
  return { name: pieces.name, bytes, text: () => textOf(pieces.name, bytes) };
}

/** Lines without their ends; the empty one behind the last end is none. */
export function linesOf(text: string): string[] {
  const lines = text.split('\n');
  if (lines.at(-1) === '') lines.pop();
  return lines;
}

function readFile(path: string, pieces: Pieces): void {
  let fd: number;
  try {
    fd = openSync(path, 'r');
  } catch (error) {
    throw notRead(pieces.name, error);
  }
  try {
    pieces.announce(fstatSync(fd).size);
    const piece = new Uint8Array(PIECE_BYTES);
    for (let read = readSync(fd, piece); read > 0; read = readSync(fd, piece)) {
      pieces.take(piece.slice(0, read));
    }
  } catch (error) {
    throw (error as NodeJS.ErrnoException).code === undefined ? error : notRead(pieces.name, error);
  } finally {
    closeSync(fd);
  }
}

function notRead(name: string, error: unknown): Error {
  return wrongUse(
    'file-not-read',
    { says: (error as NodeJS.ErrnoException).code ?? 'unknown' },
    { file: name },
  );
}

/** Bytes as they come, with the caps held while they come. */
class Pieces {
  readonly name: string;
  readonly #pieces: Uint8Array[] = [];
  #bytes = 0;
  #lineBytes = 0;
  #line = 1;

  constructor(name: string) {
    this.name = name;
  }

  /** The size that the system tells, before anything is read. */
  announce(bytes: number): void {
    if (bytes > MOST_BYTES)
      throw badInput('input-file-too-large', { bytes, most: MOST_BYTES }, { file: this.name });
  }

  take(piece: Uint8Array): void {
    this.#bytes += piece.length;
    if (this.#bytes > MOST_BYTES) {
      throw badInput('input-file-too-large', { bytes: null, most: MOST_BYTES }, { file: this.name });
    }
    this.#measureLines(piece);
    this.#pieces.push(piece);
  }

  #measureLines(piece: Uint8Array): void {
    let from = 0;
    for (;;) {
      const end = piece.indexOf(LINE_END, from);
      this.#lineBytes += (end < 0 ? piece.length : end) - from;
      if (this.#lineBytes > MOST_LINE_BYTES) {
        throw badInput(
          'line-of-file-too-long',
          { most: MOST_LINE_BYTES },
          { file: this.name, line: this.#line },
        );
      }
      if (end < 0) return;
      this.#line += 1;
      this.#lineBytes = 0;
      from = end + 1;
    }
  }

  bytes(): Uint8Array {
    return new Uint8Array(Buffer.concat(this.#pieces));
  }
}

function textOf(name: string, bytes: Uint8Array): string {
  try {
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: false }).decode(bytes);
  } catch {
    throw badInput('file-not-text', {}, { file: name, line: firstBadLine(bytes) });
  }
}
