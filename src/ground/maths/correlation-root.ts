// The matrix of correlations of some inputs, and a root of it: the way from independent chance to chance that goes together.
import type { Correlation } from './doubted.ts';
import type { Matrix } from './matrix.ts';

/** What rounding may leave where the errors of two inputs are one and the same. */
const ROUNDING = 1e-12;

/**
 * The matrix R of correlations in the order of the names: 1 on the diagonal, 0 where nothing is told.
 * @throws RangeError if a name is unknown, a pair is told twice or of one and the same, or |r| > 1.
 */
export function correlationMatrix<Name extends string>(
  names: readonly Name[],
  correlations: readonly Correlation<Name>[],
): Matrix {
  const order = names.length;
  const values = new Float64Array(order * order);
  for (let at = 0; at < order; at += 1) values[at * order + at] = 1;
  const told = new Set<number>();
  for (const { of, r } of correlations) {
    const [a, b] = of.map((name) => placeOf(names, name)) as [number, number];
    const pair = Math.min(a, b) * order + Math.max(a, b);
    if (a === b || told.has(pair))
      throw new RangeError(`the pair ${of.join(', ')} is told once, of two inputs`);
    if (!(Math.abs(r) <= 1))
      throw new RangeError(`the correlation of ${of.join(' and ')} is from -1 to 1, not ${r}`);
    told.add(pair);
    values[a * order + b] = r;
    values[b * order + a] = r;
  }
  return { rows: order, columns: order, values };
}

function placeOf<Name extends string>(names: readonly Name[], name: Name): number {
  const at = names.indexOf(name);
  if (at < 0) throw new RangeError(`no input is called ${name}`);
  return at;
}

/**
 * A lower triangle L with L Lᵀ = R, by Cholesky's rule. An input that is one with those before it, r = 1 or −1, has a 0 on the
 * diagonal, which the factor of a definite matrix never has.
 * @throws RangeError if no errors can go together in this way: R would give some sum of them a variance below 0.
 * @source golub-van-loan, section 4.2.8
 */
export function correlationRoot({ rows: order, values }: Matrix): Matrix {
  const root = new Float64Array(order * order);
  const at = (row: number, column: number): number => root[row * order + column] as number;
  for (let row = 0; row < order; row += 1) {
    for (let column = 0; column <= row; column += 1) {
      let left = values[row * order + column] as number;
      for (let k = 0; k < column; k += 1) left -= at(row, k) * at(column, k);
      root[row * order + column] = column === row ? pivotOf(left) : below(left, at(column, column));
    }
  }
  return { rows: order, columns: order, values: root };
}

function pivotOf(left: number): number {
  if (left < -ROUNDING) throw contradiction();
  return left > ROUNDING ? Math.sqrt(left) : 0;
}

/** Where nothing of the earlier input is left, nothing may be left between the two. */
function below(left: number, pivot: number): number {
  if (pivot !== 0) return left / pivot;
  if (Math.abs(left) > ROUNDING) throw contradiction();
  return 0;
}

function contradiction(): RangeError {
  return new RangeError('the correlations contradict each other: no errors go together like that');
}
