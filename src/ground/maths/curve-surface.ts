// A curve with its points, seen as a surface over its parameters: what is left of each point, and how that moves with them.
import { type Arithmetic, NUMBERS } from './arithmetic.ts';
import { type Dual, Duals } from './duals.ts';
import type { Matrix } from './matrix.ts';

/** A curve of named parameters, at a place of any kind: a number, or an object of several. */
export type Curve<Name extends string, At> = <Value>(
  on: Arithmetic<Value>,
  parameters: Readonly<Record<Name, Value>>,
  at: At,
) => Value;

export interface CurvePoint<At> {
  readonly at: At;
  readonly value: number;
  /** Doubt of this value; told for all points or for none. */
  readonly u?: number;
}

/** Where the parameters stand, and what is left of each point there, over its doubt. */
export interface Left {
  readonly parameters: Float64Array;
  readonly left: Float64Array;
  readonly sumOfSquares: number;
}

/** Evaluates a curve and its slopes; what is left is divided by the doubt of its point. */
export class CurveSurface<Name extends string, At> {
  readonly points: readonly CurvePoint<At>[];
  readonly names: readonly Name[];
  readonly #curve: Curve<Name, At>;
  readonly #on: Duals;
  readonly #weights: Float64Array;

  constructor(told: {
    readonly curve: Curve<Name, At>;
    readonly points: readonly CurvePoint<At>[];
    readonly names: readonly Name[];
  }) {
    this.points = told.points;
    this.names = told.names;
    this.#curve = told.curve;
    this.#on = new Duals(told.names.length);
    this.#weights = Float64Array.from(told.points, ({ u = 1 }) => 1 / u);
  }

  /** Null where the curve has no finite value at some point, or the sum overflows. */
  at(parameters: Float64Array): Left | null {
    const left = new Float64Array(this.points.length);
    const named = this.#named((at) => parameters[at] as number);
    let sumOfSquares = 0;
    for (let row = 0; row < left.length; row += 1) {
      const { at, value } = this.points[row] as CurvePoint<At>;
      const each = (value - this.#curve(NUMBERS, named, at)) * (this.#weights[row] as number);
      left[row] = each;
      sumOfSquares += each * each;
    }
    return Number.isFinite(sumOfSquares) ? { parameters, left, sumOfSquares } : null;
  }

  /** The slope of each point's curve value in each parameter, over the doubt of the point; null where one is not finite. */
  slopes(parameters: Float64Array): Matrix | null {
    const columns = this.names.length;
    const values = new Float64Array(this.points.length * columns);
    const on = this.#on;
    for (let row = 0; row < this.points.length; row += 1) {
      on.clear();
      const named = this.#named((at) => on.input(at, parameters[at] as number));
      const y: Dual = this.#curve(on, named, (this.points[row] as CurvePoint<At>).at);
      for (let at = 0; at < columns; at += 1)
        values[row * columns + at] = on.slope(y, at) * (this.#weights[row] as number);
    }
    return values.every(Number.isFinite) ? { rows: this.points.length, columns, values } : null;
  }

  #named<Value>(value: (at: number) => Value): Record<Name, Value> {
    const named = {} as Record<Name, Value>;
    this.names.forEach((name, at) => {
      named[name] = value(at);
    });
    return named;
  }
}

/** A x. */
export function timesVector({ rows, columns, values }: Matrix, x: Float64Array): Float64Array {
  const product = new Float64Array(rows);
  for (let row = 0; row < rows; row += 1) {
    let sum = 0;
    for (let at = 0; at < columns; at += 1) sum += (values[row * columns + at] as number) * (x[at] as number);
    product[row] = sum;
  }
  return product;
}

export function lengthOf(values: Float64Array): number {
  let sum = 0;
  for (const each of values) sum += each * each;
  return Math.sqrt(sum);
}

/** Some columns of a matrix, in the order given. */
export function columnsOf({ rows, columns, values }: Matrix, chosen: readonly number[]): Matrix {
  const kept = new Float64Array(rows * chosen.length);
  for (let row = 0; row < rows; row += 1)
    chosen.forEach((column, at) => {
      kept[row * chosen.length + at] = values[row * columns + column] as number;
    });
  return { rows, columns: chosen.length, values: kept };
}
