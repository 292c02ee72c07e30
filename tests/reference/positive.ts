// Reconciliation with values that cannot be negative: those that would be are pinned at zero, and let go if zero holds them up.
import { chosenRows, element, independentRows, made, stacked } from './dense.ts';
import { type Problem, type Reconciled, reconcile } from './reconcile.ts';

export interface Bounded {
  readonly values: Float64Array;
  /** Places of the values held at zero. */
  readonly pinned: readonly number[];
  /** (y − x)ᵀ S⁻¹ (y − x) of the bounded solution. */
  readonly chiSquare: number;
  readonly solution: Reconciled;
}

/** A value this far below zero, in its own standard deviations before reconciling, is below zero. */
const SLACK = 1e-12;

/**
 * Active set: each pinned value is an exact observation of zero. Pin the most negative; when none is, let go the one whose
 * multiplier has the wrong sign most. That no set comes twice is not proved: the steps are counted, and the tests hold
 * small problems against every set of pins there is.
 * @source nocedal-wright, section 16.5, for the conditions that the solution meets
 * @throws Error if it does not settle
 */
export function reconcilePositive(problem: Problem): Bounded {
  const pinned: number[] = [];
  for (let step = 0; step < 20 * (problem.measured.length + 1); step += 1) {
    const { solution, held } = withPinned(problem, pinned);
    const worst = mostNegative(problem, solution.values, pinned);
    const wrong = held.findIndex((multiplier) => multiplier > SLACK);
    if (worst !== -1) {
      pinned.push(worst);
      continue;
    }
    if (wrong === -1) {
      const values = solution.values.map((value, at) => (pinned.includes(at) ? 0 : value));
      return { values, pinned: [...pinned].sort((a, b) => a - b), chiSquare: solution.chiSquare, solution };
    }
    pinned.splice(pinned.indexOf(mostWrong(held, pinned)), 1);
  }
  throw new Error('the set of pinned values does not settle');
}

/** Solves with the pinned values as balances of their own; `held` are their multipliers, in their order. */
function withPinned(
  problem: Problem,
  pinned: readonly number[],
): { solution: Reconciled; held: readonly number[] } {
  const { balances, measured } = problem;
  const own = made(pinned.length, measured.length, (row, column) => (column === pinned[row] ? 1 : 0));
  const all = pinned.length === 0 ? balances : stacked(balances, own);
  const totals = Float64Array.from({ length: all.rows }, (_, row) => problem.totals?.[row] ?? 0);
  // A pin that the balances and the other pins bring about by themselves holds nothing.
  const rows = independentRows(all);
  const solution = reconcile({
    ...problem,
    balances: chosenRows(all, rows),
    totals: Float64Array.from(rows, (row) => totals[row]!),
  });
  const held = pinned.map((_, at) => {
    const row = rows.indexOf(balances.rows + at);
    return row === -1 ? 0 : solution.multipliers[row]!;
  });
  return { solution, held };
}

function mostNegative(problem: Problem, values: Float64Array, pinned: readonly number[]): number {
  let found = -1;
  let worst = -SLACK;
  values.forEach((value, at) => {
    const inDoubts = value / Math.sqrt(element(problem.covariance, at, at) || 1);
    if (pinned.includes(at) || inDoubts >= worst) return;
    worst = inDoubts;
    found = at;
  });
  return found;
}

/** x = y − S [A; E]ᵀ ν: a positive ν of a pin pulls its value down to zero, and zero need not hold it. */
function mostWrong(held: readonly number[], pinned: readonly number[]): number {
  const largest = Math.max(...held);
  return pinned[held.indexOf(largest)]!;
}
