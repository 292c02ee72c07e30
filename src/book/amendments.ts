// Undo, correction and decision: entries that change how others count, without touching them.
import type { AnyEntry, Entry } from './entry.ts';
import { kinds } from './kinds/index.ts';

/** Kinds that change how another entry counts. */
export const amendmentKinds = ['undo', 'correction', 'duplicate-decision'] as const;

export function isAmendmentKind(kind: string): boolean {
  return (amendmentKinds as readonly string[]).includes(kind);
}

export interface Amendments {
  /** Ids that no longer count, with the undo that says so. */
  readonly undone: ReadonlyMap<string, Entry<'undo'>>;
  /** Ids that count with another body, with the last correction. */
  readonly corrected: ReadonlyMap<string, Entry<'correction'>>;
  /** Decisions on pairs, by the id of the later one of the pair. */
  readonly decided: ReadonlyMap<string, Entry<'duplicate-decision'>>;
}

/** Order in which people made up their minds: entered-at, then site, then number. */
function byEntered(a: AnyEntry, b: AnyEntry): number {
  if (a.enteredAtMs !== b.enteredAtMs) return a.enteredAtMs - b.enteredAtMs;
  if (a.site !== b.site) return a.site < b.site ? -1 : 1;
  return a.number - b.number;
}

/**
 * Works out what counts. An undo that is itself undone has no effect, so its target counts again;
 * of several corrections of one entry the one entered last counts.
 */
export function readAmendments(entries: readonly AnyEntry[]): Amendments {
  const sorted = [...entries].sort(byEntered);
  const undone = new Map<string, Entry<'undo'>>();
  // From the last to the first: an undo counts only if no later one took it back.
  for (const entry of sorted.toReversed()) {
    if (entry.kind === 'undo' && !undone.has(entry.id) && !undone.has(entry.body.target))
      undone.set(entry.body.target, entry);
  }
  const corrected = new Map<string, Entry<'correction'>>();
  const decided = new Map<string, Entry<'duplicate-decision'>>();
  for (const entry of sorted) {
    if (undone.has(entry.id)) continue;
    if (entry.kind === 'correction') corrected.set(entry.body.target, entry);
    if (entry.kind === 'duplicate-decision') decided.set(entry.body.second, entry);
  }
  return { undone, corrected, decided };
}

/**
 * The entry as it counts, or null when it was undone. A correction whose body does not have the shape of the entry's kind
 * corrects nothing: the entry counts as it was made.
 */
export function amend(entry: AnyEntry, amendments: Amendments): AnyEntry | null {
  // Looking an id up costs more than all else here, and most books have next to nothing to look up.
  if (amendments.undone.size + amendments.corrected.size === 0) return entry;
  if (amendments.undone.has(entry.id)) return null;
  const correction = amendments.corrected.get(entry.id);
  if (correction === undefined) return entry;
  const body = kinds[entry.kind].safeParse(correction.body.body);
  return body.success ? ({ ...entry, body: body.data } as AnyEntry) : entry;
}
