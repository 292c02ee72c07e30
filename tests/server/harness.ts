// A server for tests: on a copy of the practice book, in this process, with a clock and chance of its own, asked with whatever header lines a test wants.
import { cpSync, mkdtempSync, rmSync } from 'node:fs';
import { type IncomingHttpHeaders, request } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type DiskBook, findServer, nodeHash, openBook } from '../../src/doors/disk/index.ts';
import { type ServeOptions, type ServerEvent, type Serving, serve } from '../../src/doors/server/index.ts';
import { Console } from '../golden/cli/console.ts';
import { SHIPPED } from '../limits/practice.ts';

const NOW_MS = Date.UTC(2147, 4, 1, 8, 0);

export interface Answered {
  readonly status: number;
  readonly headers: IncomingHttpHeaders;
  readonly text: string;
  /** The `data` of the answer, or of the error. */
  readonly data: never;
  readonly schema: string | undefined;
}

export interface Asking {
  readonly method?: string;
  readonly headers?: Readonly<Record<string, string | readonly string[]>>;
  /** Sent as JSON, with its type. */
  readonly body?: unknown;
  /** Sent as it is. */
  readonly raw?: string | Uint8Array;
  /** Without the key. */
  readonly stranger?: true;
}

export interface StartOptions extends Omit<Partial<ServeOptions>, 'book'> {
  /** A book that does not do as it should. */
  readonly spoil?: (book: DiskBook) => DiskBook;
}

export class TestServer {
  readonly folder: string;
  readonly path: string;
  readonly key: string;
  readonly serving: Serving;
  readonly events: readonly ServerEvent[];

  private constructor(parts: Pick<TestServer, 'folder' | 'path' | 'key' | 'serving' | 'events'>) {
    this.folder = parts.folder;
    this.path = parts.path;
    this.key = parts.key;
    this.serving = parts.serving;
    this.events = parts.events;
  }

  static async start({ spoil, ...options }: StartOptions = {}): Promise<TestServer> {
    const folder = mkdtempSync(join(tmpdir(), 'waterwright-server-'));
    const path = join(folder, 'p.book');
    const console = await new Console().withPractice('p.book');
    cpSync(join(console.folder, 'p.book'), path);
    await console.end();
    const book = await openBook(path, { owner: 'serve', alone: true });
    const events: ServerEvent[] = [];
    const serving = await serve({
      book: spoil === undefined ? book : spoil(book),
      tools: {
        hash: nodeHash,
        chance: () => crypto.getRandomValues(new Uint8Array(10)),
        limitFiles: () => Promise.resolve(SHIPPED),
      },
      clock: { now: () => NOW_MS, offsetMin: () => 0 },
      version: '0.0.0',
      build: 'from sources',
      pageFolder: join(folder, 'web'),
      port: 0,
      note: (event) => events.push(event),
      ...options,
    });
    const key = findServer(path)?.key;
    if (key === undefined) throw new Error('the server left no note beside its book');
    return new TestServer({ folder, path, key, serving, events });
  }

  get port(): number {
    return this.serving.port;
  }

  ask(path: string, asking: Asking = {}): Promise<Answered> {
    const { body, raw, stranger } = asking;
    const sent = raw ?? (body === undefined ? undefined : JSON.stringify(body));
    const headers = {
      ...(stranger !== true && { Authorization: `Bearer ${this.key}` }),
      ...(body !== undefined && { 'Content-Type': 'application/json' }),
      ...asking.headers,
    };
    const method = asking.method ?? (sent === undefined ? 'GET' : 'POST');
    return new Promise((done, fail) => {
      const asked = request(
        { host: '127.0.0.1', port: this.port, path, method, headers: headers as never, agent: false },
        (answer) => {
          // A line that stays open tells all that is asked here with its first words.
          if (String(answer.headers['content-type']).startsWith('text/event-stream')) {
            done(answered(answer.statusCode ?? 0, answer.headers, ''));
            asked.destroy();
            return;
          }
          const pieces: Buffer[] = [];
          answer.on('data', (piece: Buffer) => pieces.push(piece));
          answer.on('error', fail);
          answer.on('end', () =>
            done(answered(answer.statusCode ?? 0, answer.headers, Buffer.concat(pieces).toString('utf8'))),
          );
        },
      );
      asked.on('error', fail);
      asked.end(sent);
    });
  }

  /** Lets a page in, as a browser does: the value of its Cookie header. */
  async letIn(): Promise<string> {
    const token = new URL(this.serving.launchAddress()).searchParams.get('token');
    const let_in = await this.ask('/api/session', { body: { token }, stranger: true });
    return String(let_in.headers['set-cookie']).split(';')[0] ?? '';
  }

  /** How far the book has come, so that a test can say that nothing changed. */
  async digest(): Promise<string> {
    const { data } = await this.ask('/api/health');
    return (data as { digest: string }).digest;
  }

  async end(): Promise<void> {
    await this.serving.close();
    rmSync(this.folder, { recursive: true, force: true });
  }
}

function answered(status: number, headers: IncomingHttpHeaders, text: string): Answered {
  const isJson = String(headers['content-type']).startsWith('application/json');
  const { data, schema } = isJson
    ? (JSON.parse(text) as { data: never; schema?: string })
    : { data: null as never };
  return { status, headers, text, data, schema };
}

/** Codes of the findings of a refusal. */
export function codesOf({ data }: Answered): readonly string[] {
  return (data as { code: string }[]).map(({ code }) => code);
}

/** A book of which one function is another one. */
export function changedBook(
  book: DiskBook,
  name: keyof DiskBook,
  instead: (...args: never[]) => unknown,
): DiskBook {
  return new Proxy(book, {
    get: (own, key) => {
      if (key === name) return instead;
      const value: unknown = Reflect.get(own, key, own);
      return typeof value === 'function' ? value.bind(own) : value;
    },
  });
}
