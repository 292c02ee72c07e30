// What was told of a content when it was first told, and how far later readings say that it was wrong.
import type { AnyEntry } from '../book/index.ts';
import { msPerDay } from '../ground/units/index.ts';
import { type ErrorState, errorKey, startAnew } from './error-state.ts';
import { type Fold, MG_PER_KG } from './fold.ts';
import { noteEntry } from './note.ts';
import type { Release, StoreState } from './store-state.ts';

/** A first content that is told with a doubt of this part of the capacity is watched by itself. Ours, no source. */
const WATCHED_PART = 0.015;

/**
 * Puts a first content into the estimator. Where its doubt is wide, the error of what was told becomes a state of its own that
 * the content leans on: every later reading then says how much of what it found was there from the beginning.
 */
export function startContent(
  fold: Fold,
  state: StoreState,
  told: { massMg: number; uMg: number; release: Release; atMs: number },
): void {
  const { estimator } = fold;
  const uKg = told.uMg / MG_PER_KG;
  const known = fold.errors.get(errorKey('opening', state.facts.id));
  const isWatched = fold.estimating && told.uMg >= WATCHED_PART * state.facts.capacityMg;
  if (known !== undefined) startAnew(estimator, known, { assumedU: isWatched ? uKg : 0, ms: told.atMs });
  estimator.reset(state.content, told.massMg / MG_PER_KG, isWatched ? 0 : uKg * uKg);
  state.toldFirst = { massMg: told.massMg, by: told.release, atMs: told.atMs, saidMg: 0 };
  if (!isWatched) return;
  const error = known ?? fold.error('opening', state.facts.id, uKg);
  estimator.lean(state.content, error.place, 1);
}

/** The error of what was told first, as it is believed now; null where it is not watched. */
export function openingError(fold: Fold, store: string): ErrorState | null {
  const error = fold.errors.get(errorKey('opening', store));
  return error === undefined || error.assumedU === 0 ? null : error;
}

/** The reading has to narrow the doubt of what was told to this part of what it was before. Ours, no source. */
const NARROWED = 0.7;
/** Beyond this many standard deviations it is named. Ours, no source. */
const NAMED_BEYOND = 2;
/** A loss over fewer days than this would be no slow one. */
const SLOW_DAYS = 3;

/** After a reading: the content was told wrong from the beginning, as far as the book can tell. */
export function noteOpeningError(fold: Fold, entry: AnyEntry, state: StoreState, uBeforeKg: number): void {
  const error = openingError(fold, state.facts.id);
  const told = state.toldFirst;
  if (error === null || told === null) return;
  const uKg = Math.sqrt(fold.estimator.variance(error.place));
  const offMg = Math.round(fold.estimator.mean(error.place) * MG_PER_KG);
  const uMg = Math.round(uKg * MG_PER_KG);
  if (uKg > NARROWED * uBeforeKg || Math.abs(offMg - told.saidMg) <= NAMED_BEYOND * uMg) return;
  state.toldFirst = { ...told, saidMg: offMg };
  const days = (entry.happenedAtMs - told.atMs) / msPerDay;
  const data = {
    toldMg: told.massMg,
    toldAtMs: told.atMs,
    toldBy: told.by,
    offMg,
    u95Mg: 2 * uMg,
    mgPerL: fold.mgPerL,
    days: Math.round(days),
    perDayMg: days >= SLOW_DAYS ? Math.round(Math.abs(offMg) / days) : null,
    how: state.lastReading?.how ?? null,
  };
  noteEntry(fold, entry, {
    code: 'opening-off',
    severity: state.facts.reserve ? 'act-today' : 'know',
    store: state.facts.id,
    data,
  });
}
