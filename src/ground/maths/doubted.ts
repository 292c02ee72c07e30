// An input of which the doubt is told, and how inputs hang together.

/**
 * How the values that an input may have lie about its best value: `student` for one found from few readings, `rectangular` for
 * bounds between which all is alike, `triangular` for bounds with the middle the likeliest. Propagation of u does not look at it.
 */
export type Shape = 'normal' | 'student' | 'rectangular' | 'triangular';

export interface Doubted {
  readonly value: number;
  /** One standard deviation; of `student` it is the scale s/√n, as the few readings gave it. */
  readonly u: number;
  /** Degrees of freedom behind u; absent: u is known well. */
  readonly degrees?: number;
  /** Absent: `normal`. */
  readonly shape?: Shape;
}

/** Two inputs whose errors go together. Named so that a pair that is told twice is seen. */
export interface Correlation<Name extends string> {
  readonly of: readonly [Name, Name];
  readonly r: number;
}

/** @throws RangeError if the value is not finite, u is below 0 or not finite, or there is less than one degree of freedom. */
export function mustBeDoubted(name: string, { value, u, degrees, shape }: Doubted): void {
  if (!Number.isFinite(value)) throw new RangeError(`${name} is a finite number, not ${value}`);
  if (!(u >= 0 && u < Number.POSITIVE_INFINITY))
    throw new RangeError(`the doubt of ${name} is a finite number from 0, not ${u}`);
  if (degrees !== undefined && !(degrees >= 1))
    throw new RangeError(`the degrees of freedom of ${name} are from 1, not ${degrees}`);
  if (shape === 'student' && !(degrees !== undefined && Number.isFinite(degrees)))
    throw new RangeError(`${name} is of Student's shape: it wants its degrees of freedom`);
}
