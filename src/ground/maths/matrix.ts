// A rectangular matrix of doubles, row after row.

export interface Matrix {
  readonly rows: number;
  readonly columns: number;
  readonly values: Float64Array;
}

/**
 * A matrix from its rows, which all have the same length.
 * @throws RangeError if a row has another length than the first, or a value is not finite.
 * @example matrixOf([[1, 2], [3, 4]]) // rows 2, columns 2, values [1, 2, 3, 4]
 */
export function matrixOf(rows: readonly (readonly number[])[]): Matrix {
  const columns = rows[0]?.length ?? 0;
  const values = new Float64Array(rows.length * columns);
  rows.forEach((row, at) => {
    if (row.length !== columns) throw new RangeError(`row ${at} has ${row.length} values, not ${columns}`);
    values.set(row, at * columns);
  });
  mustBeMatrix({ rows: rows.length, columns, values });
  return { rows: rows.length, columns, values };
}

/** @throws RangeError if the count of values is not rows × columns, or a value is not finite. */
export function mustBeMatrix({ rows, columns, values }: Matrix): void {
  if (values.length !== rows * columns) {
    throw new RangeError(
      `a matrix of ${rows} × ${columns} has ${rows * columns} values, not ${values.length}`,
    );
  }
  const bad = values.find((value) => !Number.isFinite(value));
  if (bad !== undefined) throw new RangeError(`a matrix of finite numbers holds ${bad}`);
}
