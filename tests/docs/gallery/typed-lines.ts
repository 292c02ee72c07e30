// Command lines typed into the program itself, on a practice book in a folder of its own, until a finding comes of it.
import { mkdtempSync, realpathSync, rmSync, truncateSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { runCommandLine, type Terminal } from '../../../src/doors/cli/index.ts';
import type { CliFindingCode, WordedFinding } from '../../../src/papers/index.ts';
import type { Failure } from './sample.ts';

const BOOK = 'practice.book';

/** A terminal of which only what is written to standard error is kept. */
function terminalIn(folder: string, heard: string[], now: () => number): Terminal {
  let chance = 0;
  const stream = (write: (text: string) => void) => ({ isTty: false, columns: undefined, write });
  return {
    env: { HOME: folder, WATERWRIGHT_BOOK: join(folder, BOOK) },
    cwd: folder,
    stdinIsTty: false,
    stdout: stream(() => undefined),
    stderr: stream((text) => heard.push(text)),
    async *readStdin() {},
    ask: () => Promise.resolve('end of input' as const),
    now,
    offsetMin: () => 0,
    chance: (bytes) => Uint8Array.from({ length: bytes }, () => ++chance % 256),
  };
}

export interface TypedFile {
  readonly name: string;
  readonly content: string | Uint8Array;
  /** Grown with empty bytes up to this size, for files too large to be written out. */
  readonly bytes?: number;
}

const lastMoment = () => Date.UTC(2147, 2, 4, 12);
let made: Promise<string> | null = null;

/** The folder with the practice book, up to the end of Day 3; the samples change nothing in it. */
function practiceFolder(): Promise<string> {
  made ??= makePractice();
  return made;
}

/** Takes the folder away again; the next line typed makes another. */
export async function forgetPractice(): Promise<void> {
  const folder = await made;
  made = null;
  if (folder !== null) rmSync(folder, { recursive: true, force: true });
}

async function makePractice(): Promise<string> {
  const folder = realpathSync(mkdtempSync(join(tmpdir(), 'waterwright-typed-')));
  const heard: string[] = [];
  const code = await runCommandLine(
    ['init', '--practice', '--until', 'D3'],
    terminalIn(folder, heard, lastMoment),
  );
  if (code !== 0) throw new Error(`the practice book was not made: ${heard.join('')}`);
  return folder;
}

/** Types a line. Its words are given one by one, so that nothing depends on the quotes of a shell. */
export async function typedFailure(
  code: CliFindingCode,
  words: readonly string[],
  file?: TypedFile,
  now = lastMoment,
): Promise<Failure> {
  const folder = await practiceFolder();
  if (file !== undefined) writeFile(folder, file);
  const heard: string[] = [];
  await runCommandLine(['--json', ...words], terminalIn(folder, heard, now));
  const bare = heard.join('').replaceAll(`${folder}/`, '');
  const findings = bare === '' ? [] : (JSON.parse(bare) as { data: readonly WordedFinding[] }).data;
  const finding = findings.find((each) => each.code === code);
  const line = `waterwright ${words.map(quoted).join(' ')}`;
  if (finding === undefined) throw new Error(`${code} is not what came of ${line}: ${bare}`);
  return { given: [line, ...(file === undefined ? [] : contentOf(file))], finding };
}

function writeFile(folder: string, { name, content, bytes }: TypedFile): void {
  const path = join(folder, name);
  writeFileSync(path, content);
  if (bytes !== undefined) truncateSync(path, bytes);
}

function contentOf({ name, content, bytes }: TypedFile): readonly string[] {
  if (bytes !== undefined) return [`(${name} has ${bytes} bytes)`];
  const text = typeof content === 'string' ? content : Buffer.from(content).toString('latin1');
  if (text.length > 200) return [`(${name} has one line of ${text.length} signs)`];
  return [`(${name}:)`, ...text.trimEnd().split('\n')];
}

function quoted(word: string): string {
  return /^[\w.:/+,=<>-]+$/.test(word) ? word : `"${word}"`;
}
