// The two shapes in which amounts travel: whole milligrams in the book, and a value with its ± and unit everywhere else.

/** Whole milligrams of water: integers, so that sums are exact and do not depend on their order. */
export type Milligram = number & { readonly __unit: 'mg' };

/**
 * Makes a bare number an amount in milligrams.
 * @throws RangeError unless it is a safe integer; an amount that cannot be kept exactly must not enter the book.
 * @example milligrams(200_000)
 */
export function milligrams(value: number): Milligram {
  if (!Number.isSafeInteger(value)) {
    throw new RangeError(`an amount is a whole number of milligrams within ±9007199254740991, not ${value}`);
  }
  // Minus zero would print and compare as another amount than zero.
  return (value === 0 ? 0 : value) as Milligram;
}

/** A value with its 95 % uncertainty (`u95` = 2u, null when nobody knows it) and its unit: the three never part. */
export interface Figure {
  readonly value: number;
  readonly u95: number | null;
  readonly unit: string;
}
