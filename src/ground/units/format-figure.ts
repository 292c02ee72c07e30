// Rounds a value and its ± together by the rule of GUM 7.2.6 and prints them so that they cannot part.
import {
  type Decimal,
  decimalOf,
  decimalText,
  floorToPlace,
  leadingDigit,
  leadingPlace,
  roundToPlace,
} from './decimal.ts';
import type { Figure } from './figure.ts';
import { unitSign } from './unit-table.ts';

/** `screen` has U+00B1, U+2212 and spaces that do not break; `plain` is ASCII. */
export type FigureStyle = 'screen' | 'plain';

/** The two numbers as text, rounded to the same place, so that a table can align each column by itself. */
export interface RoundedFigure {
  readonly value: string;
  /** null when the ± is not known. */
  readonly u95: string | null;
  /** The power of ten of the last digit kept. */
  readonly place: number;
}

const noBreakSpace = '\u00A0';
const thinSpace = '\u202F';

/** A value without a known ± shows what it has, but never more digits than a meter would. */
const mostDigitsWithoutDoubt = 6;

/**
 * Rounds u95 to 1 significant digit, or 2 if its first digit is 1 or 2, and the value to the same place; ties go to the
 * even digit of the shortest decimal of the number. One rounding only: nothing is rounded on the way.
 * @throws RangeError if a number is not finite or u95 is negative.
 * @source gum (JCGM 100:2008, 7.2.6, from memory); the choice of one digit or two is the house's
 * @example roundFigure({ value: 21.437, u95: 0.41, unit: 'L' }) // { value: '21.4', u95: '0.4', place: -1 }
 */
export function roundFigure(figure: { readonly value: number; readonly u95: number | null }): RoundedFigure {
  const value = decimalOf(figure.value);
  if (figure.u95 === null) return ownDigits(value, null);
  if (!(figure.u95 >= 0)) throw new RangeError(`a ± is zero or more, not ${figure.u95}`);
  const u95 = decimalOf(figure.u95);
  const place = placeOfDoubt(u95);
  if (place === null) return ownDigits(value, '0');
  return {
    value: decimalText(roundToPlace(value, place)),
    u95: decimalText(roundToPlace(u95, place)),
    place,
  };
}

/**
 * The same with two digits of the ±, whatever its first one is: for somebody who reckons on with the figure.
 * @throws RangeError if a number is not finite or u95 is not above zero
 * @source gum (JCGM 100:2008, 7.2.6: at most two digits, from memory)
 * @example roundInTwoDigits({ value: 173.5957, u95: 3.168 }) // { value: '173.6', u95: '3.2', place: -1 }
 */
export function roundInTwoDigits(figure: { readonly value: number; readonly u95: number }): RoundedFigure {
  const u95 = decimalOf(figure.u95);
  const leading = leadingPlace(u95);
  if (leading === null || !(figure.u95 > 0))
    throw new RangeError(`a ± above zero is needed, not ${figure.u95}`);
  const place = leading - 1;
  return {
    value: decimalText(roundToPlace(decimalOf(figure.value), place)),
    u95: decimalText(roundToPlace(u95, place)),
    place,
  };
}

/**
 * A value in so many digits, zeros at the end left out: for a figure whose ± nobody knows.
 * @throws RangeError if the value is not finite
 * @example roundToDigits(318.4671, 4) // '318.5'
 */
export function roundToDigits(value: number, digits: number): string {
  const decimal = decimalOf(value);
  const leading = leadingPlace(decimal);
  if (leading === null) return '0';
  const text = decimalText(roundToPlace(decimal, leading - digits + 1));
  return text.includes('.') ? text.replace(/\.?0+$/, '') : text;
}

/** The place of the last digit that a ± justifies; null for a ± of zero. */
function placeOfDoubt(u95: Decimal): number | null {
  const leading = leadingPlace(u95);
  if (leading === null) return null;
  return leadingDigit(u95) <= 2 ? leading - 1 : leading;
}

function ownDigits(value: Decimal, u95: string | null): RoundedFigure {
  const leading = leadingPlace(value);
  if (leading === null) return { value: '0', u95, place: 0 };
  const place = Math.max(Math.min(value.exponent, 0), leading - mostDigitsWithoutDoubt + 1);
  return { value: decimalText(roundToPlace(value, Math.min(place, 0))), u95, place: Math.min(place, 0) };
}

/**
 * Prints value, ± and unit in one piece: `194 ± 6 L` on screen, `194 +/- 6 L` in plain text.
 * @example formatFigure({ value: 0.2712, u95: 0.187, unit: 'L/d' }, { style: 'plain' }) // '0.27 +/- 0.19 L/d'
 */
export function formatFigure(figure: Figure, { style }: { readonly style: FigureStyle }): string {
  const rounded = roundFigure(figure);
  const value = styled(rounded.value, style);
  const gap = style === 'screen' ? noBreakSpace : ' ';
  const sign = plusMinus(style);
  const unit = style === 'screen' ? unitSign(figure.unit) : figure.unit;
  if (rounded.u95 === null) return `${value}${gap}${unit}${gap}(${sign}${gap}not${gap}known)`;
  return `${value}${gap}${sign}${gap}${styled(rounded.u95, style)}${gap}${unit}`;
}

/**
 * A value rounded to a place alone, ties to the even digit: for an amount whose ± stands elsewhere, and for the parts of
 * a sum that is shown to one place.
 * @param place power of ten of the last digit kept: -1 for tenths
 * @throws RangeError if the value is not finite
 * @example roundAtPlace(41.0123, -1) // '41.0'
 */
export function roundAtPlace(value: number, place: number): string {
  return decimalText(roundToPlace(decimalOf(value), place));
}

/** The sign between a value and its 95 % uncertainty. */
export function plusMinus(style: FigureStyle): string {
  return style === 'screen' ? '\u00B1' : '+/-';
}

/** A decimal text in the style: on screen a true minus sign, and a thin space between groups of three from five digits on. */
export function styled(decimal: string, style: FigureStyle): string {
  if (style === 'plain') return decimal;
  const negative = decimal.startsWith('-');
  const [whole = '', fraction] = (negative ? decimal.slice(1) : decimal).split('.');
  const groups = whole.length < 5 ? whole : whole.replace(/\B(?=(\d{3})+$)/g, thinSpace);
  return `${negative ? '\u2212' : ''}${groups}${fraction === undefined ? '' : `.${fraction}`}`;
}

/** A middle value between two bounds that need not be equally far from it. */
export interface Range {
  readonly middle: number;
  readonly low: number;
  readonly high: number;
  readonly unit: string;
}

/**
 * Prints an asymmetric figure: `46 days (30 to 61)`. The narrower side decides the place, by the rule of `roundFigure`.
 * @throws RangeError unless low ≤ middle ≤ high, all finite.
 */
export function formatRange(range: Range, { style }: { readonly style: FigureStyle }): string {
  if (!(range.low <= range.middle && range.middle <= range.high)) {
    throw new RangeError(`a range goes up: ${range.low}, ${range.middle}, ${range.high}`);
  }
  const below = range.middle - range.low;
  const above = range.high - range.middle;
  const narrower = below > 0 && above > 0 ? Math.min(below, above) : Math.max(below, above);
  const place = placeOfDoubt(decimalOf(narrower)) ?? roundFigure({ value: range.middle, u95: null }).place;
  const show = (value: number): string => styled(decimalText(roundToPlace(decimalOf(value), place)), style);
  const gap = style === 'screen' ? noBreakSpace : ' ';
  const unit = style === 'screen' ? unitSign(range.unit) : range.unit;
  return `${show(range.middle)}${gap}${unit}${gap}(${show(range.low)}${gap}to${gap}${show(range.high)})`;
}

/**
 * Days of cover are rounded down, never up: to 0.1 day below 20 days, to whole days from there on.
 * @example roundCoverDays(19.98) // '19.9'
 */
export function roundCoverDays(days: number): string {
  return decimalText(floorToPlace(decimalOf(days), days < 20 ? -1 : 0));
}
