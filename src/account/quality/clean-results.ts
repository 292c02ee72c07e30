// Results that speak well of their water: each by itself meets every row that a store's water needs.
import type { Entry } from '../../book/index.ts';
import type { LimitRow } from '../../outpost/index.ts';
import type { Fold } from '../fold.ts';
import { verdictOf } from '../verdict/verdict.ts';
import { flowsThrough } from './flows-through.ts';
import { figuresOfResult, type KnownResult } from './known-results.ts';
import { rowsOfGrade } from './limits-in-force.ts';
import { namedIn } from './speaks-of.ts';

/** The stores of whose water a result speaks: those of its sample, else those that it names. */
export function storesOfResult(fold: Fold, entry: Entry<'result'>): readonly string[] {
  return fold.samples.get(entry.body.sample)?.speaksOf ?? namedIn(fold, entry);
}

/** Its figures, as a verdict reads them. */
export function figuresOfEntry(fold: Fold, entry: Entry<'result'>): readonly KnownResult[] {
  return figuresOfResult(entry, fold.samples.get(entry.body.sample), fold.index);
}

/** Rows for the water that the stores hold, or held before it became waste. */
export function rowsOfStores(fold: Fold, stores: readonly string[]): readonly LimitRow[] {
  return rowsOfGrades(fold, gradesOf(fold, stores));
}

/** Rows for the water as it was when the sample was drawn: a container of drinking water may hold technical water by now. */
export function rowsOfResult(fold: Fold, entry: Entry<'result'>): readonly LimitRow[] {
  const taken = fold.samples.get(entry.body.sample);
  return rowsOfGrades(fold, taken?.grades ?? gradesOf(fold, namedIn(fold, entry)));
}

/** Nobody samples waste: of a tank that is waste by now it is what it held before. */
export function gradesOf(fold: Fold, stores: readonly string[]): readonly (string | null)[] {
  const isWaste = (grade: string | null) => grade !== null && fold.index.grades.get(grade)?.terminal === true;
  return stores.flatMap((id) => {
    const state = fold.stores.get(id);
    if (state === undefined) return [];
    return [
      isWaste(state.grade) ? (state.gradeHistory.findLast((grade) => !isWaste(grade)) ?? null) : state.grade,
    ];
  });
}

function rowsOfGrades(fold: Fold, grades: readonly (string | null)[]): readonly LimitRow[] {
  const rows = [...new Set(grades)].flatMap((grade) => rowsOfGrade(fold.limits, fold.index, grade));
  return [...new Set(rows)];
}

/**
 * Ids of those that pass. One that has only a part of what is needed proves nothing: a count at the tap does not clear a
 * trace of silver.
 * @param results those that were not set aside
 */
export function cleanResults(fold: Fold, results: readonly Entry<'result'>[]): ReadonlySet<string> {
  return new Set(results.filter((entry) => isClean(fold, entry)).map(({ id }) => id));
}

function isClean(fold: Fold, entry: Entry<'result'>): boolean {
  const stores = storesOfResult(fold, entry);
  const figures = figuresOfEntry(fold, entry);
  const measured = new Set(figures.map(({ parameter }) => parameter));
  const isThrough = stores.some((store) => flowsThrough(fold.index, store));
  const rows = rowsOfResult(fold, entry).filter(
    ({ neededOf, parameter }) => neededOf === 'every store' || isThrough || measured.has(parameter),
  );
  return verdictOf({
    rows,
    results: figures,
    water: {
      unchangedSinceMs: Number.NEGATIVE_INFINITY,
      badNewsCountsSinceMs: Number.NEGATIVE_INFINITY,
    },
    nowMs: entry.happenedAtMs,
    forReserve: false,
    certificate: null,
  }).released;
}
