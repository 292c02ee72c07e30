// Sharing out whole milligrams by weights, so that the parts add up to the whole.

/**
 * Every part is rounded down, and the milligrams that then lack go one by one to the parts with the largest remainders,
 * the first of equals first.
 * @param totalMg whole milligrams, not negative
 * @param weights not negative, with a sum above zero unless the total is zero
 * @throws RangeError if the total is no whole number or is negative, or if a weight is negative or not finite
 * @example shareOut(100, [1, 1, 1]) // [34, 33, 33]
 */
export function shareOut(totalMg: number, weights: readonly number[]): readonly number[] {
  if (!Number.isSafeInteger(totalMg) || totalMg < 0)
    throw new RangeError(`${totalMg} mg cannot be shared out`);
  if (weights.some((weight) => !(weight >= 0 && weight < Number.POSITIVE_INFINITY)))
    throw new RangeError('a weight is a number, zero or more');
  const sum = weights.reduce((all, weight) => all + weight, 0);
  if (sum === 0) {
    if (totalMg === 0) return weights.map(() => 0);
    throw new RangeError('nobody is there to share with');
  }
  const exact = weights.map((weight) => (totalMg * weight) / sum);
  const parts = exact.map((part) => Math.min(totalMg, Math.floor(part)));
  const missingMg = totalMg - parts.reduce((all, part) => all + part, 0);
  const left = exact.map((part, k) => part - (parts[k] ?? 0));
  const order = parts.map((_, k) => k).sort((a, b) => (left[b] ?? 0) - (left[a] ?? 0) || a - b);
  for (let k = 0; k < missingMg; k++) {
    const at = order[k % order.length] ?? 0;
    parts[at] = (parts[at] ?? 0) + 1;
  }
  // A quotient that was rounded up to a whole one can make the sum a milligram too large: the largest part gives it back.
  if (missingMg < 0) {
    const largest = parts.indexOf(Math.max(...parts));
    parts[largest] = (parts[largest] ?? 0) + missingMg;
  }
  return parts;
}
