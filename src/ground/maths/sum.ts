// Sums of doubles that keep what plain addition loses.

/**
 * The sum with the rounding errors of each addition summed beside it (Neumaier), so that the error does not grow with the
 * count of terms. Two opposite infinities give NaN, as they do in plain addition.
 * @source neumaier-1974 (from memory)
 * @example compensatedSum([1, 1e100, 1, -1e100]) // 2
 */
export function compensatedSum(values: Iterable<number>): number {
  let sum = 0;
  let lost = 0;
  for (const value of values) {
    const next = sum + value;
    lost += Math.abs(sum) >= Math.abs(value) ? sum - next + value : value - next + sum;
    sum = next;
  }
  // Once the sum is infinite what was lost is NaN and means nothing.
  return Number.isFinite(sum) ? sum + lost : sum;
}
