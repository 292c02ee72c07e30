// Word of changes to whoever listens: server-sent events that begin where the listener left off.
import { LIMITS } from './limits.ts';
import type { BookState, ServedBook } from './served-book.ts';

const encoder = new TextEncoder();

/** Every open line, so that all of them end when the server does. */
export class Changes {
  readonly #served: ServedBook;
  readonly #heartbeatMs: number;
  readonly #ends = new Set<() => void>();

  constructor(served: ServedBook, heartbeatMs: number) {
    this.#served = served;
    this.#heartbeatMs = heartbeatMs;
  }

  get isFull(): boolean {
    return this.#ends.size >= LIMITS.listeners;
  }

  /**
   * @param lastId what the listener heard last, if anything: when the book has moved on since, it is told at once
   */
  open(lastId: string | null): Response {
    let end = (): void => undefined;
    const body = new ReadableStream<Uint8Array>({
      start: (line) => {
        const say = (text: string): void => line.enqueue(encoder.encode(text));
        const { state } = this.#served;
        say(`retry: ${RETRY_MS}\n\n`);
        say(lastId === null || lastId === idOf(state) ? event('here', state) : event('changed', state));
        const stop = this.#served.listen((now) => say(event('changed', now)));
        const beat = setInterval(() => say(': still here\n\n'), this.#heartbeatMs);
        end = () => {
          stop();
          clearInterval(beat);
          this.#ends.delete(close);
        };
        const close = (): void => {
          end();
          line.close();
        };
        this.#ends.add(close);
      },
      cancel: () => end(),
    });
    return new Response(body, { headers: { 'Content-Type': 'text/event-stream; charset=utf-8' } });
  }

  endAll(): void {
    for (const close of [...this.#ends]) close();
  }
}

/** A page that lost its line asks again after this long. */
const RETRY_MS = 1000;

/** Entries and digest together: another book at the same place is another state. */
function idOf({ entries, digest }: BookState): string {
  return `${entries}-${digest.slice(0, 16)}`;
}

function event(name: 'here' | 'changed', state: BookState): string {
  return `id: ${idOf(state)}\nevent: ${name}\ndata: ${JSON.stringify(state)}\n\n`;
}
