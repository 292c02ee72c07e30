// Starts the writing process, under other programs where wanted, and hears what it said.
import { type ChildProcess, spawn } from 'node:child_process';
import { join } from 'node:path';
import type { WriterOrders } from './writer.ts';

export interface WriterSaid {
  /** The number up to which appends were acknowledged; −1 before the book was made, or when nothing was. */
  readonly acked: number;
  readonly acks: number;
  /** Codes of the problems, in their order; `UNCLEAR …` for anything that is no problem of the disk. */
  readonly errors: readonly string[];
  /** What it said about writing when it opened the book; null when it did not get so far. */
  readonly opened: string | null;
  readonly done: boolean;
  readonly lines: readonly string[];
  readonly stderr: string;
}

export interface RunningWriter {
  readonly child: ChildProcess;
  /** Comes with the first acknowledgement, or with the end. */
  readonly firstAck: Promise<void>;
  readonly said: Promise<WriterSaid>;
}

const WRITER = join(import.meta.dirname, 'writer.ts');

/** @param before a command that runs the writer, e.g. `['strace', '-f']` */
export function startWriter(orders: WriterOrders, before: readonly string[] = []): RunningWriter {
  const words = [...before, process.execPath, '--no-warnings', WRITER, JSON.stringify(orders)];
  const child = spawn(words[0] as string, words.slice(1), { stdio: ['ignore', 'pipe', 'pipe'] });
  let text = '';
  let stderr = '';
  child.stderr?.on('data', (chunk) => {
    stderr += chunk;
  });
  const firstAck = new Promise<void>((resolve) => {
    child.stdout?.on('data', (chunk) => {
      text += chunk;
      if (text.includes('ack ')) resolve();
    });
    child.once('close', () => resolve());
  });
  const said = new Promise<WriterSaid>((resolve) => {
    child.once('close', () => resolve(hear(text, stderr)));
  });
  return { child, firstAck, said };
}

export function hear(text: string, stderr = ''): WriterSaid {
  // A line without its end was cut off in the middle of being said: nobody heard it.
  const lines = text.split('\n').slice(0, -1);
  const after = (word: string) =>
    lines.filter((line) => line.startsWith(`${word} `)).map((line) => line.slice(word.length + 1));
  const acks = after('ack').map(Number);
  return {
    acked: Math.max(-1, ...acks),
    acks: acks.length,
    errors: after('err'),
    opened: after('open').at(0) ?? null,
    done: lines.includes('done'),
    lines,
    stderr,
  };
}

/** Runs jobs two at a time, as many as the smallest machine has cores. */
export async function inPairs<T, R>(
  jobs: readonly T[],
  work: (job: T, at: number) => Promise<R>,
): Promise<R[]> {
  const results: R[] = [];
  let next = 0;
  const worker = async () => {
    for (let at = next++; at < jobs.length; at = next++) results[at] = await work(jobs[at] as T, at);
  };
  await Promise.all([worker(), worker()]);
  return results;
}
