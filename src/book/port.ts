// The port through which a door keeps a book. It assumes no particular store: everything is a promise, scans come in batches.
import type { OrderKey } from './order.ts';
import type { Head } from './seal.ts';

/** What a book says about itself. */
export interface BookInfo {
  readonly bookId: string;
  /** Site that numbers the entries made here. */
  readonly site: string;
  readonly purpose: 'book' | 'practice';
  readonly createdAtMs: number;
}

/** An entry as it is kept: its canonical text, its seal, and the columns that scans need. */
export interface KeptEntry extends OrderKey {
  readonly id: string;
  readonly kind: string;
  readonly enteredAtMs: number;
  /** When this book got it; never part of the seal, never used by a view. */
  readonly keptAtMs: number;
  readonly text: string;
  readonly seal: string;
}

export interface ScanQuery {
  /** `total`: by (happened-at, site, number). `site`: by (site, number), the order of the chains. */
  readonly order: 'total' | 'site';
  /** Only entries behind this place in that order. */
  readonly after?: OrderKey;
  readonly site?: string;
  readonly kinds?: readonly string[];
  /** Entries a batch; the scan never holds more than one batch. */
  readonly batch?: number;
}

export interface BookPort {
  info(): Promise<BookInfo>;
  /** One head for each site that has entries, in the order of site names. */
  heads(): Promise<readonly Head[]>;
  count(): Promise<number>;
  find(id: string): Promise<KeptEntry | null>;
  findNumber(site: string, number: number): Promise<KeptEntry | null>;
  /** Entries that are appended while a scan runs are not in it: it shows the book as it stood when it began. */
  scan(query: ScanQuery): AsyncIterable<readonly KeptEntry[]>;
  /**
   * Keeps all of the entries or none, and returns when they are safe.
   * @throws HeadMoved when a site's head is no longer the one that the first entry of that site was sealed on
   * @throws IdTaken when the book has an entry with one of the ids
   */
  append(entries: readonly KeptEntry[], expectedHeads: readonly Head[]): Promise<void>;
}

/** Somebody else appended in between: read the heads again and number anew. */
export class HeadMoved extends Error {
  override readonly name = 'HeadMoved';
}

/** The book has an entry with this id: look at it before anything is appended again. */
export class IdTaken extends Error {
  override readonly name = 'IdTaken';
}

/** The head that a site has in a list; a site without entries stands at number 0. */
export function headOf(heads: readonly Head[], site: string, firstSeal: string): Head {
  return heads.find((head) => head.site === site) ?? { site, number: 0, seal: firstSeal };
}
