// Batch reconciliation when some values are not measured: they are projected out, then worked out, and each is classed.
import { leastSquares, type Matrix, nullSpace, qrFactor, transposed } from '../../src/ground/maths/index.ts';
import {
  chosenColumns,
  chosenRows,
  columnOf,
  independentRows,
  largestOf,
  rowOf,
  times,
  timesVector,
  vectorMinus,
} from './dense.ts';
import { type Problem, type Reconciled, reconcile } from './reconcile.ts';

/** A_x x + A_u u = c. */
export interface PartlyMeasured extends Problem {
  /** A_u, one column for each value that nobody measured. */
  readonly unmeasuredBalances: Matrix;
}

/** A measured value is checked by the others, or it is the only source; one that is not measured is deduced, or unknown. */
export type Word = 'checked' | 'only source' | 'deduced' | 'unknown';

export interface PartlyReconciled {
  /** Null where nothing is checked: then the measured values stand as they are. */
  readonly reconciled: Reconciled | null;
  readonly values: Float64Array;
  /** Null where the value is unknown. */
  readonly unmeasured: readonly (number | null)[];
  readonly words: { readonly measured: readonly Word[]; readonly unmeasured: readonly Word[] };
  readonly degrees: number;
}

/** Elements of orthonormal products this small are rounding. */
const NOTHING = 1e-10;

/**
 * Q₂ᵀ, the rows at right angles to every column of A_u, leaves balances between measured values alone: G = Q₂ᵀ A_x.
 * @source crowe-1983; swartz-1989 for the orthogonal factors
 */
export function reconcilePartly(problem: PartlyMeasured): PartlyReconciled {
  const { measured, covariance, balances, unmeasuredBalances } = problem;
  const totals = problem.totals ?? new Float64Array(balances.rows);
  const across = transposed(nullSpace(transposed(unmeasuredBalances)));
  const projected = times(across, balances);
  const rows = independentRows(projected);
  const projectedTotals = timesVector(across, totals);
  const reconciled =
    rows.length === 0
      ? null
      : reconcile({
          measured,
          covariance,
          balances: chosenRows(projected, rows),
          totals: Float64Array.from(rows, (row) => projectedTotals[row]!),
        });
  const values = reconciled?.values ?? measured;
  const words = wordsOf(projected, unmeasuredBalances);
  const worked = workedOut(unmeasuredBalances, vectorMinus(totals, timesVector(balances, values)));
  return {
    reconciled,
    values,
    unmeasured: words.unmeasured.map((word, at) => (word === 'unknown' ? null : worked[at]!)),
    words,
    degrees: rows.length,
  };
}

/** Checked: its column of G is not zero. Deduced: its row of the null space of A_u is zero. */
function wordsOf(projected: Matrix, unmeasuredBalances: Matrix): PartlyReconciled['words'] {
  const free = nullSpace(unmeasuredBalances);
  return {
    measured: Array.from({ length: projected.columns }, (_, column) =>
      largestOf(columnOf(projected, column)) > NOTHING ? 'checked' : 'only source',
    ),
    unmeasured: Array.from({ length: free.rows }, (_, row) =>
      largestOf(rowOf(free, row)) > NOTHING ? 'unknown' : 'deduced',
    ),
  };
}

/** A solution of A_u u = b; where a value can be known, every solution gives it alike. */
function workedOut(unmeasuredBalances: Matrix, right: Float64Array): Float64Array {
  const solution = new Float64Array(unmeasuredBalances.columns);
  const { order, rank } = qrFactor(unmeasuredBalances);
  if (rank === 0) return solution;
  const columns = order.slice(0, rank);
  const rows = independentRows(chosenColumns(unmeasuredBalances, columns));
  const square = chosenRows(chosenColumns(unmeasuredBalances, columns), rows);
  leastSquares(
    square,
    Float64Array.from(rows, (row) => right[row]!),
  ).solution.forEach((value, at) => {
    solution[columns[at]!] = value;
  });
  return solution;
}

/** Splits the columns of balances, by which of them are measured. */
export function splitBy(
  balances: Matrix,
  isMeasured: (column: number) => boolean,
): { measured: Matrix; unmeasured: Matrix } {
  const columns = Array.from({ length: balances.columns }, (_, column) => column);
  return {
    measured: chosenColumns(balances, columns.filter(isMeasured)),
    unmeasured: chosenColumns(
      balances,
      columns.filter((column) => !isMeasured(column)),
    ),
  };
}
