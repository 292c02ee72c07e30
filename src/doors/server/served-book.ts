// A book that is served: one desk with its account kept warm, one thing at a time, and word to whoever listens for changes.
import { bookDigest, type Head } from '../../book/index.ts';
import { Desk, type DeskTools, type Moment } from '../../desk/index.ts';
import type { WordsContext } from '../../papers/index.ts';
import { type DiskBook, nodeHash } from '../disk/index.ts';
import { CodePace } from './code-pace.ts';
import { InTurn } from './in-turn.ts';

/** How far a book has come: two equal states are the same entries. */
export interface BookState {
  readonly entries: number;
  readonly digest: string;
}

type Listener = (state: BookState) => void;

export class ServedBook {
  readonly book: DiskBook;
  readonly desk: Desk;
  /** Set once the server listens. */
  launchAddress: () => string = () => '';
  readonly codePace = new CodePace();
  readonly #turns = new InTurn();
  readonly #listeners = new Set<Listener>();
  readonly #clock: Pick<DeskClock, 'now' | 'offsetMin'>;
  #state: BookState;

  private constructor(book: DiskBook, desk: Desk, rest: { state: BookState; clock: DeskClock }) {
    this.book = book;
    this.desk = desk;
    this.#state = rest.state;
    this.#clock = rest.clock;
  }

  static async open(book: DiskBook, tools: DeskTools, clock: DeskClock): Promise<ServedBook> {
    const desk = await Desk.open(book, { codes: book.codes, ...tools });
    return new ServedBook(book, desk, { state: await stateOf(book), clock });
  }

  /** How far the book has come, by what has been answered so far. */
  get state(): BookState {
    return this.#state;
  }

  moment({ by = USUAL_OFFICE }: Partial<Pick<Moment, 'by'>> = {}): Moment {
    return { nowUtcMs: this.#clock.now(), offsetMin: this.#clock.offsetMin(), by };
  }

  /** Work that looks at the book. */
  look<T>(work: (desk: Desk) => Promise<T>): Promise<T> {
    return this.#turns.do(() => work(this.desk));
  }

  /** Work that may add to it; whoever listens hears of it as soon as it is done. */
  change<T>(work: (desk: Desk) => Promise<T>): Promise<T> {
    return this.#turns.do(async () => {
      try {
        return await work(this.desk);
      } finally {
        await this.#tellChanges();
      }
    });
  }

  async #tellChanges(): Promise<void> {
    const state = await stateOf(this.book);
    if (state.digest === this.#state.digest) return;
    this.#state = state;
    for (const listener of this.#listeners) listener(state);
  }

  /** @returns how to stop listening */
  listen(listener: Listener): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  get listeners(): number {
    return this.#listeners.size;
  }

  /** How this outpost counts its days and its litres, for the sentences of a finding. */
  async wordsContext(): Promise<Partial<WordsContext>> {
    const opened = await this.desk.account();
    return opened.ok ? { dayRule: opened.value.fold.dayRule, mgPerL: opened.value.fold.mgPerL } : {};
  }

  /** After the work in hand: lets go of the file. */
  async close(): Promise<void> {
    await this.#turns.empty();
    this.book.close();
  }
}

/** The office that speaks where nobody names one. */
const USUAL_OFFICE = 'keeper';

/** Time comes from outside, so that a test can bring its own. */
export interface DeskClock {
  /** UTC milliseconds. */
  now(): number;
  /** Minutes that the clock of this machine is ahead of UTC. */
  offsetMin(): number;
}

async function stateOf(book: DiskBook): Promise<BookState> {
  const heads: readonly Head[] = await book.heads();
  const entries = heads.reduce((sum, { number }) => sum + number, 0);
  return { entries, digest: bookDigest(nodeHash, heads) };
}
