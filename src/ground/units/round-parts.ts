// Rounds the parts of a sum so that what is shown adds up to the total that is shown.
import { type Decimal, decimalOf, decimalText, floorToPlace, roundToPlace } from './decimal.ts';

/**
 * Each part at a place, and the total at the same place, by the largest remainder: every part is rounded down, and the
 * units that then lack go to the parts with the largest remainders, the first of equals first.
 * No part moves by a whole unit of that place.
 * @param place power of ten of the last digit kept: 0 for whole ones
 * @returns the parts as decimal texts, or null where no such rounding adds up, because the parts do not
 * @throws RangeError if a number is not finite
 * @example roundParts([10.4, 20.4, 30.4], { total: 61.2, place: 0 }) // ['11', '20', '30']
 */
export function roundParts(
  parts: readonly number[],
  to: { readonly total: number; readonly place: number },
): readonly string[] | null {
  const { total, place } = to;
  const exact = parts.map(decimalOf);
  const floors = exact.map((part) => floorToPlace(part, place));
  const wanted = roundToPlace(decimalOf(total), place).coefficient;
  const lacking = wanted - floors.reduce((sum, floor) => sum + floor.coefficient, 0n);
  const order = byRemainder(exact, floors);
  if (lacking < 0n || lacking > BigInt(order.length)) return null;
  const raised = new Set(order.slice(0, Number(lacking)));
  return floors.map((floor, k) =>
    decimalText({ coefficient: floor.coefficient + (raised.has(k) ? 1n : 0n), exponent: place }),
  );
}

/**
 * A ± at a place that another figure gives: rounded, and never less than one unit of that place unless it is zero.
 * @throws RangeError if it is not finite or negative
 * @example doubtAtPlace(0.3, 0) // '1'
 */
export function doubtAtPlace(u95: number, place: number): string {
  if (!(u95 >= 0)) throw new RangeError(`a ± is zero or more, not ${u95}`);
  const rounded = roundToPlace(decimalOf(u95), place);
  const isLost = rounded.coefficient === 0n && u95 > 0;
  return decimalText(isLost ? { coefficient: 1n, exponent: place } : rounded);
}

/** Where the parts that have a remainder stand, the largest remainder first. */
function byRemainder(exact: readonly Decimal[], floors: readonly Decimal[]): number[] {
  const finest = Math.min(
    ...exact.map(({ exponent }) => exponent),
    ...floors.map(({ exponent }) => exponent),
  );
  const remainder = exact.map((part, k) => {
    const floor = floors[k] ?? part;
    return roundToPlace(part, finest).coefficient - roundToPlace(floor, finest).coefficient;
  });
  const order = exact.map((_, k) => k).filter((k) => (remainder[k] ?? 0n) !== 0n);
  return order.sort((a, b) => {
    const [left = 0n, right = 0n] = [remainder[a], remainder[b]];
    return left === right ? a - b : left < right ? 1 : -1;
  });
}
