// What is said of a card while it is carried out, as plain data; proposed as kinds of entries of the book.

/** Where an event stands in the order of the book, and who said it. */
interface Said {
  readonly id: string;
  readonly run: string;
  readonly atMs: number;
  readonly site: string;
  readonly no: number;
  /** Office. */
  readonly by: string;
  /** Keys of drafts that became entries together with this event. */
  readonly posted?: readonly string[];
}

export type Found =
  | { readonly is: 'tick' }
  /** In the unit of the line; `u` where the ± was typed too, one standard deviation. */
  | { readonly is: 'number'; readonly value: number; readonly u?: number }
  | { readonly is: 'choice'; readonly choice: string }
  | { readonly is: 'time'; readonly atMs: number }
  | { readonly is: 'text'; readonly text: string };

/** Water that moved since the flow began or went on, what stands in the hose inside, and that by itself. */
export interface Moved {
  readonly litres: number;
  readonly u: number;
  readonly lineLitres: number | null;
}

export interface CardBegin extends Said {
  readonly kind: 'card-begin';
  readonly card: string;
  readonly revision: number;
  readonly form: string;
  readonly chosen: Readonly<Record<string, string>>;
  /** The values that the card was filled with, in SI with one standard deviation: a run stands on what was known then. */
  readonly leaves: Readonly<Record<string, { readonly value: number; readonly u: number } | null>>;
}

export interface CardStepped extends Said {
  readonly kind: 'card-step';
  readonly step: string;
  readonly found: Found;
  /** The other person of a line for two. */
  readonly second?: string;
  /** By a code of their own; false: declared, not verified. */
  readonly verified: boolean;
}

export interface CardDeviation extends Said {
  readonly kind: 'card-deviation';
  readonly step: string;
  /** A value that is off is rechecked, recorded or stops the card; a line that is not done is skipped. */
  readonly choice: 'recheck' | 'record' | 'skip' | 'stop';
  readonly reason: string;
}

export interface CardPause extends Said {
  readonly kind: 'card-pause';
  /** Left on purpose, or broken off by something. */
  readonly why: 'pause' | 'interrupt';
  readonly reason: string;
  /** Where water was flowing. */
  readonly moved?: Moved;
}

export interface CardResume extends Said {
  readonly kind: 'card-resume';
}

export interface CardEnd extends Said {
  readonly kind: 'card-end';
  readonly end: 'finish' | 'abort';
  readonly reason: string;
  /** Of an abort, where water had flowed and nobody had found how much. */
  readonly moved?: Moved;
}

export type RunEvent = CardBegin | CardStepped | CardDeviation | CardPause | CardResume | CardEnd;

/** The order of the book: happened-at, site, number. */
export function inOrder(events: readonly RunEvent[]): readonly RunEvent[] {
  return [...events].sort(
    (a, b) => a.atMs - b.atMs || (a.site < b.site ? -1 : a.site > b.site ? 1 : a.no - b.no),
  );
}
