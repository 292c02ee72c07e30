// A console for tests: runs command lines inside this process, in a folder of its own, with a clock and chance that repeat.
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { cpSync, existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type ExitCode, type Reply, runCommandLine, type Terminal } from '../../../src/doors/cli/index.ts';
import { isThroughServer, Servers } from './servers.ts';

/** Real books live by this clock; practice books have their own time. */
const NOW_MS = Date.UTC(2147, 4, 1, 8, 0);

export interface Ran {
  readonly code: ExitCode;
  readonly out: string;
  readonly err: string;
}

export interface RunOptions {
  readonly stdin?: string | Uint8Array;
  /** Answers of a person; given, the streams are those of a terminal. */
  readonly replies?: readonly (string | Reply)[];
  readonly env?: Readonly<Record<string, string>>;
  readonly isTty?: boolean;
  readonly columns?: number;
}

export class Console {
  readonly folder: string;
  nowMs = NOW_MS;
  build: string | null = null;
  readonly #seed: string;
  readonly #servers = new Servers();
  #chance = 0;

  constructor(seed = 'console') {
    this.#seed = seed;
    this.folder = mkdtempSync(join(tmpdir(), 'waterwright-console-'));
  }

  /** The practice book of Corrie, up to the end of Day 46 or whole; made once and copied. */
  async withPractice(name = 'waterwright.book', until: 'D46' | 'whole' = 'D46'): Promise<this> {
    cpSync(await practiceBook(until), join(this.folder, name));
    return this;
  }

  async run(line: string | readonly string[], options: RunOptions = {}): Promise<Ran> {
    const words = typeof line === 'string' ? wordsOf(line) : line;
    if (isThroughServer()) await this.#servers.holdBookOf(words, { ...this, env: options.env ?? {} });
    let [out, err] = ['', ''];
    const replies = [...(options.replies ?? [])];
    const isTty = options.isTty ?? options.replies !== undefined;
    const stream = (take: (text: string) => void) => ({ isTty, columns: options.columns, write: take });
    const terminal: Terminal = {
      env: {
        LANG: 'C.UTF-8',
        HOME: join(this.folder, 'home'),
        XDG_DATA_HOME: join(this.folder, 'data'),
        XDG_CACHE_HOME: join(this.folder, 'cache'),
        XDG_STATE_HOME: join(this.folder, 'state'),
        ...options.env,
      },
      cwd: this.folder,
      build: this.build,
      practiceFolder: () => this.folder,
      stdinIsTty: isTty,
      stdout: stream((text) => {
        out += text;
      }),
      stderr: stream((text) => {
        err += text;
      }),
      readStdin: () => pieces(options.stdin ?? ''),
      ask: (prompt) => {
        err += prompt;
        const reply = replies.shift() ?? 'end of input';
        if (typeof reply === 'string' && reply !== 'end of input' && reply !== 'stopped') {
          err += `${reply}\n`;
          return Promise.resolve({ said: reply });
        }
        err += `[${typeof reply === 'string' ? reply : reply.said}]\n`;
        return Promise.resolve(reply);
      },
      askHidden: (prompt) => {
        err += prompt;
        const reply = replies.shift() ?? 'end of input';
        err += '\n';
        const isWord = reply === 'end of input' || reply === 'stopped' || typeof reply === 'object';
        return Promise.resolve(isWord ? reply : { said: reply });
      },
      stopped: () => Promise.resolve(),
      now: () => this.nowMs,
      offsetMin: () => 0,
      chance: (bytes) => this.#bytes(bytes),
    };
    const code = await runCommandLine(words, terminal);
    return { code, out: this.#hidden(out), err: this.#hidden(err) };
  }

  /** The same every time, and never twice the same. */
  #bytes(count: number): Uint8Array {
    this.#chance += 1;
    const digest = createHash('sha256').update(`${this.#seed} ${this.#chance}`).digest();
    return new Uint8Array(digest.subarray(0, count));
  }

  /** A folder of one run is no part of a record. */
  #hidden(text: string): string {
    return text.replaceAll(this.folder, '~');
  }

  write(name: string, text: string | Uint8Array): void {
    writeFileSync(join(this.folder, name), text);
  }

  read(name: string): string {
    return readFileSync(join(this.folder, name), 'utf8');
  }

  /** Digests of every file of the folder, so that a test can say that nothing changed. */
  digests(): Readonly<Record<string, string>> {
    // Who serves a book is noted beside it, and says nothing of the book.
    const files = readdirSync(this.folder, { withFileTypes: true }).filter(
      (entry) => entry.isFile() && !/\.(owner|server)$/.test(entry.name),
    );
    return Object.fromEntries(
      files.map(({ name }) => [
        name,
        createHash('sha256')
          .update(bytesOf(join(this.folder, name)))
          .digest('hex'),
      ]),
    );
  }

  /** How many books were served for these commands. */
  get served(): number {
    return this.#servers.count;
  }

  async end(): Promise<void> {
    await this.#servers.close();
    rmSync(this.folder, { recursive: true, force: true });
  }
}

/**
 * A process that closes a file lets go of all locks that it holds on it: of a book that is served here, another one reads the bytes.
 * @source fcntl(2), advisory record locking
 */
function bytesOf(path: string): Uint8Array {
  return isThroughServer() ? spawnSync('cat', [path], { maxBuffer: 50_000_000 }).stdout : readFileSync(path);
}

/** What was typed, what came on both streams, and the exit code where it is not 0. */
export function record(line: string, { code, out, err }: Ran): string {
  const parts = [
    `$ ${line}\n`,
    out,
    err === '' ? '' : `[stderr]\n${err}`,
    code === 0 ? '' : `[exit ${code}]\n`,
  ];
  return parts.map((part) => (part === '' || part.endsWith('\n') ? part : `${part}\n`)).join('');
}

/** Words of a command line as a shell splits them: spaces part, double quotes hold together. */
export function wordsOf(line: string): string[] {
  const words = [...line.matchAll(/(?:[^\s"]|"[^"]*")+/g)].map(([word]) => word.replaceAll('"', ''));
  return words[0] === 'waterwright' ? words.slice(1) : words;
}

const made = new Map<string, Promise<string>>();

function practiceBook(until: 'D46' | 'whole'): Promise<string> {
  const known = made.get(until) ?? makePractice(until);
  made.set(until, known);
  return known;
}

async function makePractice(until: 'D46' | 'whole'): Promise<string> {
  const console = new Console('practice');
  process.once('exit', () => rmSync(console.folder, { recursive: true, force: true }));
  const words = ['init', '--practice', '--book', 'p.book', ...(until === 'whole' ? [] : ['--until', until])];
  const ran = await console.run(words);
  const path = join(console.folder, 'p.book');
  if (ran.code !== 0 || !existsSync(path)) throw new Error(`no practice book was made: ${ran.err}`);
  return path;
}

function pieces(stdin: string | Uint8Array): readonly Uint8Array[] {
  return [typeof stdin === 'string' ? new TextEncoder().encode(stdin) : stdin];
}
