// A new choice of limits judges all that is known of the water aboard anew: it sets holds, and ends those of the choice before.
import type { AnyEntry } from '../../book/index.ts';
import type { Fold } from '../fold.ts';
import { endHold, holdsOf, putOnHold } from '../hold.ts';
import { isWaste } from '../rules.ts';
import type { HoldState, StoreState } from '../store-state.ts';
import { failingIn, parametersOf, resultsOfWater } from './bad-news.ts';
import type { KnownResult } from './known-results.ts';
import { rowsOfGrade } from './limits-in-force.ts';

/** Name of the holds that a choice of limits sets, and ends when another is made. */
export const LIMITS_HOLD = 'limits chosen';

export function judgeAnew(fold: Fold, entry: AnyEntry): void {
  for (const state of fold.stores.values()) {
    const before = limitsHoldOf(state);
    const waiver = state.waived.find(({ hold }) => hold.hold === LIMITS_HOLD);
    endHold(state, LIMITS_HOLD);
    state.waived = state.waived.filter((one) => one !== waiver);
    const hold = holdByLimits(fold, entry, state, before ?? waiver?.hold);
    if (hold === null) continue;
    // A waiver was given for what was known to fail; it says nothing of what fails beside that.
    if (waiver !== undefined && isSame(waiver.hold.failed, hold.failed))
      state.waived = [...state.waived, waiver];
    else putOnHold(state, hold);
  }
}

/** The hold that the limits in force set on a store's water; null where nothing that is known of it fails. */
function holdByLimits(
  fold: Fold,
  entry: AnyEntry,
  state: StoreState,
  before: HoldState | undefined,
): HoldState | null {
  if (!state.aboard || state.emptied || isWaste(fold.index, state)) return null;
  const rows = rowsOfGrade(fold.limits, fold.index, state.grade);
  const known = [...resultsOfWater(fold, state), ...cameWithWater(state, before)];
  const results = failingIn(rows, known, entry.happenedAtMs);
  if (results.length === 0) return null;
  const failed = parametersOf(results);
  if (before !== undefined && isSame(before.failed, failed)) return { ...before, results };
  return {
    ...{ hold: LIMITS_HOLD, reason: 'limits-chosen', sinceMs: entry.happenedAtMs, entry: entry.id },
    ...{ failed, results },
  };
}

/** What failed in other stores that this water came from. */
function cameWithWater({ results }: StoreState, before: HoldState | undefined): readonly KnownResult[] {
  const own = new Set(results.map(({ id }) => id));
  return before?.results?.filter(({ id }) => !own.has(id)) ?? [];
}

const isSame = (some: readonly string[] = [], others: readonly string[] = []): boolean =>
  some.length === others.length && some.every((each, k) => each === others[k]);

export function limitsHoldOf(state: StoreState): HoldState | undefined {
  return holdsOf(state).find(({ hold }) => hold === LIMITS_HOLD);
}
