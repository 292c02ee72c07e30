// Command lines typed into the program itself, on a practice book in a folder of its own, until a finding comes of it.
import { truncateSync } from 'node:fs';
import { join } from 'node:path';
import type { CliFindingCode, WordedFinding } from '../../../src/papers/index.ts';
import { Console } from '../../golden/cli/console.ts';
import type { Failure } from './sample.ts';

export interface TypedFile {
  readonly name: string;
  readonly content: string | Uint8Array;
  /** Grown with empty bytes up to this size, for files too large to be written out. */
  readonly bytes?: number;
}

let made: Promise<Console> | null = null;

/** A console with the practice book up to the end of Day 3; the samples change nothing in it. */
function practiceConsole(): Promise<Console> {
  made ??= makePractice();
  return made;
}

/** Takes the folder away again; the next line typed makes another. */
export async function forgetPractice(): Promise<void> {
  const console = await made;
  made = null;
  console?.end();
}

async function makePractice(): Promise<Console> {
  const console = new Console('gallery');
  const { code, err } = await console.run('init --practice --until D3 --book waterwright.book');
  if (code !== 0) throw new Error(`the practice book was not made: ${err}`);
  return console;
}

/** Types a line where the practice book is. */
export async function typedFailure(code: CliFindingCode, line: string, file?: TypedFile): Promise<Failure> {
  return await typedInto(await practiceConsole(), code, line, file);
}

/** Types a line where no book is. */
export async function typedWithoutBook(code: CliFindingCode, line: string): Promise<Failure> {
  const console = new Console('nowhere');
  try {
    return await typedInto(console, code, line);
  } finally {
    console.end();
  }
}

/** Types lines where the practice book is, one after the other; the last one brings the finding. */
export async function typedAfter(code: string, ...lines: readonly [string, ...string[]]): Promise<Failure> {
  const console = await practiceConsole();
  for (const line of lines.slice(0, -1)) await console.run(line);
  const { finding } = await typedInto(console, code, lines.at(-1) ?? '');
  return { given: lines.map((line) => `waterwright ${line}`), finding };
}

/** Types a line on a machine whose clock has failed. */
export async function typedWithoutClock(code: CliFindingCode, line: string): Promise<Failure> {
  const console = await practiceConsole();
  const { nowMs } = console;
  const clock = {
    get: () => {
      throw new Error('no clock');
    },
    configurable: true,
  };
  Object.defineProperty(console, 'nowMs', clock);
  try {
    return await typedInto(console, code, line);
  } finally {
    Object.defineProperty(console, 'nowMs', { value: nowMs, writable: true, configurable: true });
  }
}

async function typedInto(console: Console, code: string, line: string, file?: TypedFile): Promise<Failure> {
  if (file !== undefined) {
    console.write(file.name, file.content);
    if (file.bytes !== undefined) truncateSync(join(console.folder, file.name), file.bytes);
  }
  const { err } = await console.run(`--json ${line}`);
  const findings = err === '' ? [] : (JSON.parse(err) as { data: readonly WordedFinding[] }).data;
  const finding = findings.find((each) => each.code === code);
  if (finding === undefined) throw new Error(`${code} is not what came of ${line}: ${err}`);
  return { given: [`waterwright ${line}`, ...(file === undefined ? [] : contentOf(file))], finding };
}

function contentOf({ name, content, bytes }: TypedFile): readonly string[] {
  if (bytes !== undefined) return [`(${name} has ${bytes} bytes)`];
  const text = typeof content === 'string' ? content : Buffer.from(content).toString('latin1');
  if (text.length > 200) return [`(${name} has one line of ${text.length} signs)`];
  return [`(${name}:)`, ...text.trimEnd().split('\n')];
}
