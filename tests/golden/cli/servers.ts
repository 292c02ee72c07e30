// Servers for the books of a console: with them every command line goes through a server, as it does while one runs.
import { existsSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { nodeHash, openBook } from '../../../src/doors/disk/index.ts';
import { type Serving, serve } from '../../../src/doors/server/index.ts';

/** Set by the tests that run the records a second time. */
export function isThroughServer(): boolean {
  return process.env['WATERWRIGHT_TEST_THROUGH'] === 'server';
}

interface Place {
  readonly folder: string;
  readonly nowMs: number;
  readonly env: Readonly<Record<string, string>>;
}

export class Servers {
  readonly #byPath = new Map<string, Serving>();

  get count(): number {
    return this.#byPath.size;
  }

  /** Serves the book that a command line names, if it is there and not served yet. */
  async holdBookOf(words: readonly string[], { folder, nowMs, env }: Place): Promise<void> {
    const at = words.indexOf('--book');
    const named = (at >= 0 ? words[at + 1] : undefined) ?? env['WATERWRIGHT_BOOK'] ?? 'waterwright.book';
    const path = resolve(folder, named);
    if (!existsSync(path) || this.#byPath.has(path)) return;
    const book = await openBook(path, { owner: 'serve', alone: true });
    const serving = await serve({
      book,
      tools: { hash: nodeHash, chance: () => crypto.getRandomValues(new Uint8Array(10)) },
      clock: { now: () => nowMs, offsetMin: () => 0 },
      version: 'of the tests',
      build: 'from sources',
      pageFolder: join(folder, 'no-page'),
      port: 0,
    });
    this.#byPath.set(path, serving);
  }

  async close(): Promise<void> {
    for (const serving of this.#byPath.values()) await serving.close();
    this.#byPath.clear();
  }
}
