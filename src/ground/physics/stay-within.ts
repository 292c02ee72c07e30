// The look at every input of a formula: what is outside its range, or no number, is refused with the range and its source.
import { OPEN_END, OutsideRange, type RangeLeft } from './outside-range.ts';

type Given = Pick<RangeLeft, 'quantity' | 'value' | 'unit' | 'source'>;

/** Refuses a value outside its range; NaN and what is not finite are outside every range. */
export function stayWithin(left: RangeLeft): void {
  const { value, low, high, lowIsOpen = false } = left;
  const isAboveLow = lowIsOpen ? value > low : value >= low;
  if (!(isAboveLow && value <= high && Number.isFinite(value))) throw new OutsideRange(left);
}

/** A value that is within makes nothing new here: formulas are asked ten thousand times. */
export function stayAtLeastZero(given: Given): void {
  if (given.value >= 0 && given.value < OPEN_END) return;
  stayWithin({ ...given, low: 0, high: OPEN_END });
}

export function stayAboveZero(given: Given): void {
  if (given.value > 0 && given.value < OPEN_END) return;
  stayWithin({ ...given, low: 0, lowIsOpen: true, high: OPEN_END });
}

/** A share of a whole, 0 to 1. */
export function stayShare(given: Omit<Given, 'unit'>): void {
  stayWithin({ ...given, unit: 'of 1', low: 0, high: 1 });
}

/** A share of which nothing would leave nothing to divide by: above 0, up to 1. */
export function stayShareAboveZero(given: Omit<Given, 'unit'>): void {
  stayWithin({ ...given, unit: 'of 1', low: 0, lowIsOpen: true, high: 1 });
}
