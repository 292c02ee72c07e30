// One thing at a time: work on a book waits here for its turn, so that nothing reads an account that is being moved on.
import { LIMITS } from './limits.ts';

/** Too many requests wait already. */
export class TooManyWaiting extends Error {
  override readonly name = 'TooManyWaiting';
}

export class InTurn {
  #last: Promise<unknown> = Promise.resolve();
  #waiting = 0;

  /** @throws TooManyWaiting at once, where the line is too long */
  do<T>(work: () => Promise<T>): Promise<T> {
    if (this.#waiting >= LIMITS.waiting) return Promise.reject(new TooManyWaiting());
    this.#waiting += 1;
    const done = this.#last.then(work).finally(() => {
      this.#waiting -= 1;
    });
    // What went wrong is told to whoever asked for it, and is no matter of the next one.
    this.#last = done.catch(() => undefined);
    return done;
  }

  /** When everything that waits now is done. */
  async empty(): Promise<void> {
    await this.#last;
  }
}
