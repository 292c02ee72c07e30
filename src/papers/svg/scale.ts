// A linear scale between numbers and pixels, and the round numbers that are written along it.

export interface Scale {
  readonly from: number;
  readonly to: number;
  readonly pixelFrom: number;
  readonly pixelTo: number;
}

/** Numbers outside the range of the scale lie at its end. */
export function pixelOf({ from, to, pixelFrom, pixelTo }: Scale, value: number): number {
  const part = to === from ? 0 : (Math.min(to, Math.max(from, value)) - from) / (to - from);
  return pixelFrom + part * (pixelTo - pixelFrom);
}

/**
 * Round numbers within a range: multiples of 1, 2 or 5 times a power of ten.
 * @param most how many there may be at the most, at least 2
 * @throws RangeError if the range is empty or not finite
 * @example ticks({ from: 0, to: 22, most: 6 }) // [0, 5, 10, 15, 20]
 */
export function ticks(range: {
  readonly from: number;
  readonly to: number;
  readonly most: number;
  /** Steps are whole numbers: of days. */
  readonly whole?: boolean;
}): readonly number[] {
  const { from, to, most, whole = false } = range;
  if (!(to > from) || !(to - from < Number.POSITIVE_INFINITY))
    throw new RangeError(`no range: ${from} to ${to}`);
  const step = stepOf((to - from) / (most - 1), whole);
  const first = Math.ceil(from / step);
  const last = Math.floor(to / step);
  return Array.from({ length: last - first + 1 }, (_, k) => roundOff((first + k) * step));
}

/** The smallest round number that is not smaller than the wanted step. */
function stepOf(wanted: number, whole: boolean): number {
  let power = 1;
  while (power * 10 <= wanted) power *= 10;
  while (!whole && power > wanted) power /= 10;
  return [1, 2, 5, 10].map((round) => round * power).find((step) => step >= wanted) ?? 10 * power;
}

/** 3 × 0.1 is 0.30000000000000004 in doubles, and nobody wants to read that. */
function roundOff(value: number): number {
  return Math.round(value * 1e6) / 1e6;
}
