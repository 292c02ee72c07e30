// Reads files in a thread of its own, so that whatever a file does to its reader, the program goes on.
import { existsSync } from 'node:fs';
import { Worker } from 'node:worker_threads';
import { TABLE_CAPS, type TableCaps } from './caps.ts';
import { outcomeOf, type TableReply, type TableRequest } from './message.ts';
import type { TableOutcome } from './parse-table.ts';
import { TableFault } from './table-fault.ts';

/** The source beside this file, or the bundle: this code may be in the program itself or in one of its chunks. */
const PLACES = ['./table-worker.ts', './table-worker.js', '../table-worker.js'];

function workerAddress(): URL {
  const found = PLACES.map((place) => new URL(place, import.meta.url)).find((url) => existsSync(url));
  if (found === undefined) throw new Error('the program has no table-worker');
  return found;
}

/** One thread, started with the first file and kept for the next: starting costs more than reading a sheet. */
export class TableReader {
  readonly #caps: TableCaps;
  #worker: Worker | null = null;
  #last: Promise<unknown> = Promise.resolve();

  constructor(caps: TableCaps = TABLE_CAPS) {
    this.#caps = caps;
  }

  /** One file after the other. */
  read(file: string, bytes: Uint8Array): Promise<TableOutcome> {
    const caps = this.#caps;
    const next = this.#last.then(() => this.#readNow({ file, bytes, caps }));
    this.#last = next.catch(() => {});
    return next;
  }

  async close(): Promise<void> {
    await this.#last;
    await this.#worker?.terminate();
    this.#worker = null;
  }

  async #readNow(request: TableRequest): Promise<TableOutcome> {
    // Said here too, so that a huge file is not even copied.
    if (request.bytes.length > this.#caps.bytes) {
      const data = { bytes: request.bytes.length, most: this.#caps.bytes };
      return failed(request.file, new TableFault('table-too-large', data));
    }
    const worker = this.#worker ?? (await this.#start());
    const reply = await answerOf(worker, request, this.#caps.timeMs);
    if (reply instanceof TableFault) {
      this.#worker = null;
      await worker.terminate();
      return failed(request.file, reply);
    }
    return outcomeOf(reply);
  }

  async #start(): Promise<Worker> {
    const worker = new Worker(workerAddress(), {
      resourceLimits: { maxOldGenerationSizeMb: this.#caps.memoryMb },
      stdout: true,
      stderr: true,
    });
    // Time is counted from when it can work.
    await new Promise<void>((resolve, reject) => {
      worker.once('online', resolve);
      worker.once('error', reject);
    });
    worker.unref();
    this.#worker = worker;
    return worker;
  }
}

function failed(file: string, { finding }: TableFault): TableOutcome {
  return { ok: false, finding: { ...finding, where: { file } } };
}

function answerOf(worker: Worker, request: TableRequest, timeMs: number): Promise<TableReply | TableFault> {
  return new Promise((resolve) => {
    worker.ref();
    const timer = setTimeout(() => end(new TableFault('table-too-slow', { most: timeMs / 1000 })), timeMs);
    const end = (answer: TableReply | TableFault): void => {
      clearTimeout(timer);
      worker.off('message', end);
      worker.off('error', onError);
      worker.off('exit', onExit);
      worker.unref();
      resolve(answer);
    };
    const onError = (error: Error & { code?: string }): void =>
      end(new TableFault('table-reader-ended', { says: error.code ?? error.name }));
    const onExit = (code: number): void =>
      end(new TableFault('table-reader-ended', { says: `code ${code}` }));
    worker.on('message', end);
    worker.on('error', onError);
    worker.on('exit', onExit);
    worker.postMessage(request);
  });
}

/** Reads one file and lets the thread go. */
export async function readTable(file: string, bytes: Uint8Array, caps?: TableCaps): Promise<TableOutcome> {
  const reader = new TableReader(caps);
  try {
    return await reader.read(file, bytes);
  } finally {
    await reader.close();
  }
}
