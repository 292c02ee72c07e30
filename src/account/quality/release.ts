// A release: only on results that prove the water, which the account looks at again by itself.
import type { Entry } from '../../book/index.ts';
import { dayStartUtcMs } from '../../ground/units/index.ts';
import type { LimitRow } from '../../outpost/index.ts';
import type { Fold } from '../fold.ts';
import { sampledFrom } from '../identity.ts';
import type { StoreState, Treated } from '../store-state.ts';
import type { Reason, Verdict } from '../verdict/sample-result.ts';
import { verdictOf } from '../verdict/verdict.ts';
import { resultsOfWater } from './bad-news.ts';
import { flowsThrough } from './flows-through.ts';
import { figuresOf, type KnownResult } from './known-results.ts';
import { isForPeople, rowsOfGrade } from './limits-in-force.ts';

/**
 * Whether what is known of a store's water releases it, by results alone.
 * @param more figures that come with the release itself
 */
export function verdictOfStore(
  fold: Fold,
  state: StoreState,
  asked: { readonly nowMs: number; readonly more?: readonly KnownResult[]; readonly grade?: string },
): Verdict {
  const { treated } = state;
  const results = resultsOfWater(fold, state, asked.more).filter((result) => !isAnswered(result, treated));
  const rows = rowsOfGrade(fold.limits, fold.index, asked.grade ?? state.grade);
  return verdictOf({
    rows: rows.filter((row) => isNeeded(fold, state, row) || isJudged(row, results)),
    results,
    water: {
      // What a unit makes is the same water as long as the unit is, and leaves this moment where it was.
      unchangedSinceMs: sampledFrom(state),
      badNewsCountsSinceMs: state.badNewsSinceMs,
    },
    nowMs: asked.nowMs,
    forReserve: state.facts.reserve,
    certificate: null,
  });
}

/** A dose of a biocide answers what was found of it and of germs before; a treatment by a recipe answers all. */
function isAnswered({ takenAtMs, parameter, unit }: KnownResult, treated: Treated | null): boolean {
  if (treated === null || takenAtMs >= treated.atMs) return false;
  return treated.biocide === null || parameter === treated.biocide || unit.startsWith('CFU');
}

function isNeeded(fold: Fold, { facts }: StoreState, { neededOf }: LimitRow): boolean {
  return neededOf === 'every store' || flowsThrough(fold.index, facts.id);
}

const isJudged = (row: LimitRow, results: readonly KnownResult[]): boolean =>
  results.some(({ parameter }) => parameter === row.parameter);

/** What a release of a store stands on, or why it stands on nothing. */
export function proofOf(
  fold: Fold,
  entry: Entry<'release'>,
  state: StoreState,
):
  | { readonly untilMs: number; readonly samples: readonly string[] }
  | { readonly reasons: readonly Reason[] } {
  const named = entry.body.samples ?? [];
  // Nobody drinks it: there is no limit that it would have to meet.
  if (!isForPeople(fold.index, state.grade)) return { untilMs: Number.POSITIVE_INFINITY, samples: named };
  const nowMs = entry.happenedAtMs;
  const more = figuresOfRelease(fold, entry, state);
  const byAll = verdictOfStore(fold, state, { nowMs, more });
  if (!byAll.released) return { reasons: byAll.reasons };
  // What stands in the book under its own sample says more than the same figures told again.
  const bySamples = verdictOfStore(fold, state, { nowMs });
  const verdict = bySamples.released ? bySamples : byAll;
  const figures = [...state.results, ...more].filter(({ id }) => verdict.evidence.includes(id));
  return { untilMs: verdict.untilMs, samples: [...new Set(figures.map(({ sample }) => sample))] };
}

/** The figures that a release carries, as results of the store at its moment. */
export function figuresOfRelease(
  fold: Fold,
  entry: Entry<'release'>,
  state: StoreState,
): readonly KnownResult[] {
  const { values, samples } = entry.body;
  const figures = {
    ...{ values, entry: entry.id, inflowMg: state.inflowMg, isProven: true },
    ...({ method: null, madeAt: 'aboard', degassed: null } as const),
    sample: samples?.[0] ?? `release ${entry.site} ${entry.number}`,
    takenAtMs: entry.happenedAtMs,
  };
  return figuresOf(figures, fold.index);
}

/** Until when a release holds: to its own day, and never longer than its evidence. */
export function releasedUntilMs(fold: Fold, entry: Entry<'release'>, evidenceUntilMs: number): number | null {
  const { untilDay } = entry.body;
  const dayMs = untilDay === undefined ? Number.POSITIVE_INFINITY : dayStartUtcMs(untilDay + 1, fold.dayRule);
  const untilMs = Math.min(dayMs, evidenceUntilMs);
  return Number.isFinite(untilMs) ? untilMs : null;
}
