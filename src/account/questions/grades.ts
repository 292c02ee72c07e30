// Grades that an entry names beside its water: what a store held before, what a label said, what a vehicle was to bring.
import type { AnyEntry } from '../../book/index.ts';
import type { Fold } from '../fold.ts';
import { noteEntry } from '../note.ts';

/** The entry says one grade, and the book or the outpost file another. */
export function askGrade(
  fold: Fold,
  entry: AnyEntry,
  {
    store,
    said,
    believed,
  }: { store: string; said: string | null | undefined; believed: string | null | undefined },
): void {
  if (said == null || believed == null || said === believed) return;
  noteEntry(fold, entry, { code: 'grade-mismatch', severity: 'act-today', store, data: { said, believed } });
}

/** What the outpost file says of the grade of a store that comes: tied to it, or by what the visit brings. */
export function gradeToCome({ index }: Fold, store: string): string | null {
  const tied = index.stores.get(store)?.holds;
  if (tied !== undefined) return tied;
  for (const { brings } of index.outpost.visits) {
    const cargo = brings.find(({ stores }) => stores.includes(store));
    if (cargo?.grade !== undefined) return cargo.grade;
  }
  return null;
}

/** Grade behind a label's word: its id or its sign. */
export function gradeOfLabel({ index }: Fold, label: string): string | null {
  const word = label.toLowerCase();
  const grade = index.outpost.grades.find(
    ({ id, label: sign }) => id.toLowerCase() === word || sign === word,
  );
  return grade?.id ?? null;
}
