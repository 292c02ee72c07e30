// Identity goes with the water: grade, biocides, on whose word it may be used, and a hold.
import type { AnyEntry } from '../book/index.ts';
import type { Flow, Fold } from './fold.ts';
import { noteEntry } from './note.ts';
import { biocidesIn, gradeAfter, ruleBreaks } from './rules.ts';
import { holdsNow, type Release, type StoreState } from './store-state.ts';

const releaseOrder: readonly Release[] = ['own sample', 'made here', 'opening', 'loader’s certificate', 'none'];

/** Of two words the weaker one stands for the mix. */
export function weakerRelease(a: Release, b: Release): Release {
  return releaseOrder.indexOf(a) >= releaseOrder.indexOf(b) ? a : b;
}

/** Carries the identity of moved water into the receiving store, and says what rules it broke. */
export function passIdentity(fold: Fold, entry: AnyEntry, what: Flow): void {
  const from = what.from.store;
  const to = what.to.store;
  if (to === null) return;
  if (from === null) {
    if (what.plumbing !== true && to.grade === null) to.release = 'none';
    if (to.grade !== null) holdsNow(to, to.grade);
    return;
  }
  if (what.plumbing === true) {
    // A purifier makes another grade of it: the receiving store keeps its own.
    if (to.grade !== null) holdsNow(to, to.grade);
    if (from.grade !== to.grade) to.release = weakerRelease(to.release, 'made here');
    return;
  }
  checkNamedGrade(fold, entry, from, what.grade);
  noteBreaks(fold, entry, from, to);
  mix(fold, from, to);
}

/** The entry names a grade that the account does not believe: one of the two is wrong. */
function checkNamedGrade(fold: Fold, entry: AnyEntry, from: StoreState, grade: string | undefined): void {
  if (grade === undefined || from.grade === null || grade === from.grade) return;
  const data = { said: grade, believed: from.grade };
  noteEntry(fold, entry, { code: 'grade-mismatch', severity: 'act-today', store: from.facts.id, data });
}

function noteBreaks(fold: Fold, entry: AnyEntry, from: StoreState, to: StoreState): void {
  for (const broken of ruleBreaks(fold.index, from, to)) {
    const data = { ...broken.data, happened: entry.happened ?? null };
    noteEntry(fold, entry, { code: broken.code, severity: 'act-now', store: to.facts.id, data });
    if (broken.code === 'biocides-meet' || broken.code === 'grade-may-not-flow') {
      const hold = { hold: `rule ${entry.site} ${entry.number}`, sinceMs: entry.happenedAtMs, reason: broken.code, entry: entry.id };
      from.hold ??= hold;
      to.hold ??= hold;
    }
  }
}

function mix(fold: Fold, from: StoreState, to: StoreState): void {
  const wasEmpty = to.emptied;
  to.biocides = [...new Set([...to.biocides, ...biocidesIn(fold.index, from)])];
  const grade = gradeAfter(fold.index, from, to);
  if (grade !== null) holdsNow(to, grade);
  to.release = wasEmpty ? from.release : weakerRelease(to.release, from.release);
  if (from.hold !== null && to.hold === null) to.hold = from.hold;
  if (from.conditional !== null && to.conditional === null) to.conditional = from.conditional;
}
