// An account put away between two runs: folds as plain data, and the heads of the chains that they were made of.
import {
  type AnyEntry,
  type BookPort,
  compareOrder,
  entryOf,
  type Head,
  type OrderKey,
} from '../book/index.ts';
import type { FoldData } from './fold-data.ts';

/** Throw-away: from the book alone the same comes out, to the last bit. */
export interface AccountSnapshot {
  /** Exactly the entries up to these heads are in the folds. */
  readonly heads: readonly Head[];
  readonly last: OrderKey;
  readonly fold: FoldData;
  /** Folds at earlier places of the order, the youngest last, so that a late entry need not start from the first one. */
  readonly checkpoints: readonly { readonly key: OrderKey; readonly fold: FoldData }[];
}

/** A place outside the book where a door puts accounts away. Whatever goes wrong there, `load` says null and `keep` says nothing. */
export interface SnapshotPlace {
  /** An account is put away when so many entries have been folded since it was put away last. */
  readonly keepAfter: number;
  load(): AccountSnapshot | null;
  keep(snapshot: AccountSnapshot): void;
}

/** More new entries than this are not worth resuming for. */
const MOST_FRESH = 20_000;

/**
 * Entries that the book has got since: null where the snapshot is not one of this book, or is too old to be of use.
 * The seals of a chain hold all that is before them, so a head that is still there says that the rest is.
 */
export async function freshSince(
  port: BookPort,
  heads: readonly Head[],
): Promise<readonly AnyEntry[] | null> {
  for (const { site, number, seal } of heads)
    if ((await port.findNumber(site, number))?.seal !== seal) return null;
  const now = await port.heads();
  const known = new Map(heads.map(({ site, number }) => [site, number]));
  const waiting = now.reduce((sum, { site, number }) => sum + number - (known.get(site) ?? 0), 0);
  if (waiting > MOST_FRESH) return null;
  const fresh: AnyEntry[] = [];
  for (const { site, number } of now) {
    const from = known.get(site) ?? 0;
    for (let next = from + 1; next <= number; next++) {
      const kept = await port.findNumber(site, next);
      if (kept === null) return null;
      fresh.push(entryOf(kept));
    }
  }
  return fresh.sort(compareOrder);
}

export function sameHeads(a: readonly Head[], b: readonly Head[]): boolean {
  return a.length === b.length && a.every(({ site, seal }, k) => b[k]?.site === site && b[k].seal === seal);
}
