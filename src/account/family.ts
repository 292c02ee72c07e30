// The family of the water in a store: from where it came, and from where that came.
import type { Inflow } from './inflows.ts';
import { storeAccount } from './ledger.ts';
import { shareOut } from './share-out.ts';
import { type Ancestor, type PartKind, traceBack } from './trace-back.ts';

export interface FamilyPart {
  readonly kind: PartKind;
  /** Id of the store, name of the pool, of the visit or of the run; nothing for the rest. */
  readonly name: string;
  readonly massMg: number;
  /** Of the whole content, from 0 to 1. */
  readonly share: number;
  /** Grade in which it came; null where it is not known. */
  readonly grade: string | null;
  /** Entries by which it came, the youngest first, and how many there are in all. */
  readonly entries: readonly string[];
  readonly entryCount: number;
  /** When the first and the last of it came. */
  readonly firstMs: number | null;
  readonly lastMs: number | null;
  /** What it was made of; empty where nothing is known of it, and at the depth at which the tree ends. */
  readonly parts: readonly FamilyPart[];
}

export interface FamilyLimits {
  /** Generations that are told. */
  readonly depth?: number;
  /** Smaller shares of the whole content are told together as older. */
  readonly smallestShare?: number;
}

const DEPTH = 4;
const SMALLEST_SHARE = 0.005;

/**
 * The tree of a content, by perfect mixing: what is drawn from a store takes of everything in it equally.
 *
 * Read backwards from now. An inflow of mass m that left the store with the content c brought the share m / c of everything
 * that was in it then; what was in it before has the rest, 1 − m / c. What comes from a store is followed there in the same
 * way, from that moment back. A store's water is followed back to the inflow that began its filling: the one that met it
 * at its usable remainder or below. What was left in it then is `older`.
 *
 * Every generation adds up to its parent to the milligram, the first one to the content (largest remainder).
 * A reading changes how much there is and not where it came from. The contents are those that were believed at each moment.
 * @param of `store`: its id; `massMg`: its content now, in whole milligrams
 * @returns no part for a content of nothing or less
 */
export function familyOf(
  inflows: readonly Inflow[],
  of: { readonly store: string; readonly massMg: number },
  limits: FamilyLimits = {},
): readonly FamilyPart[] {
  if (of.massMg <= 0) return [];
  const depth = limits.depth ?? DEPTH;
  const root = traceBack(inflows, storeAccount(of.store), depth);
  if (root.parents.length === 0) return [olderPart(of.massMg, 1)];
  return partsOf(root, of.massMg, limits.smallestShare ?? SMALLEST_SHARE);
}

function partsOf(of: Ancestor, massMg: number, smallest: number): readonly FamilyPart[] {
  if (of.parents.length === 0) return [];
  const told = of.parents.filter(({ share }) => share >= smallest).sort((a, b) => b.share - a.share);
  const rest = Math.max(0, of.share - told.reduce((sum, { share }) => sum + share, 0));
  const masses = shareOut(massMg, [...told.map(({ share }) => share), rest]);
  const parts = told.map((one, k) => partOf(one, masses[k] ?? 0, smallest));
  const restMg = masses[told.length] ?? 0;
  return restMg === 0 ? parts : [...parts, olderPart(restMg, rest)];
}

function partOf(one: Ancestor, massMg: number, smallest: number): FamilyPart {
  const { kind, name, share, grade, entries, entryCount, firstMs, lastMs } = one;
  return {
    kind,
    name,
    massMg,
    share,
    grade,
    entries,
    entryCount,
    firstMs,
    lastMs,
    parts: partsOf(one, massMg, smallest),
  };
}

function olderPart(massMg: number, share: number): FamilyPart {
  const unknown = { grade: null, entries: [], entryCount: 0, firstMs: null, lastMs: null, parts: [] };
  return { kind: 'older', name: '', massMg, share, ...unknown };
}
