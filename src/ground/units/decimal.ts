// Exact decimals: the shortest decimal of a double as an integer and a power of ten, rounded half to even and printed.

/** The number `coefficient` × 10^`exponent`. */
export interface Decimal {
  readonly coefficient: bigint;
  readonly exponent: number;
}

/**
 * The shortest decimal that stands for a double: what `String` prints, which every engine must print alike.
 * @throws RangeError if the number is not finite.
 */
export function decimalOf(value: number): Decimal {
  if (!Number.isFinite(value)) throw new RangeError(`${value} is not a finite number`);
  const [mantissa = '', exponentText = '0'] = String(value).split('e');
  const [whole = '', fraction = ''] = mantissa.split('.');
  return { coefficient: BigInt(whole + fraction), exponent: Number(exponentText) - fraction.length };
}

/** 10^`exponent` for zero and more. */
export function powerOfTen(exponent: number): bigint {
  return BigInt(`1${'0'.repeat(exponent)}`);
}

/** The power of ten of the first digit: 1 for 42, -2 for 0.05; null for zero, which has no first digit. */
export function leadingPlace(decimal: Decimal): number | null {
  if (decimal.coefficient === 0n) return null;
  const digits = (decimal.coefficient < 0n ? -decimal.coefficient : decimal.coefficient).toString();
  return digits.length - 1 + decimal.exponent;
}

/** The first digit that is not zero; 0 for zero. */
export function leadingDigit(decimal: Decimal): number {
  const digits = (decimal.coefficient < 0n ? -decimal.coefficient : decimal.coefficient).toString();
  return digits.charCodeAt(0) - 48;
}

/** Rounds to a whole number of 10^`place`; a tie goes to the even neighbour. */
export function roundToPlace(decimal: Decimal, place: number): Decimal {
  const shift = decimal.exponent - place;
  if (shift >= 0) return { coefficient: decimal.coefficient * powerOfTen(shift), exponent: place };
  return { coefficient: divideHalfEven(decimal.coefficient, powerOfTen(-shift)), exponent: place };
}

/** Rounds down (towards minus infinity) to a whole number of 10^`place`. */
export function floorToPlace(decimal: Decimal, place: number): Decimal {
  const shift = decimal.exponent - place;
  if (shift >= 0) return { coefficient: decimal.coefficient * powerOfTen(shift), exponent: place };
  const divisor = powerOfTen(-shift);
  const towardsZero = decimal.coefficient / divisor;
  const leftOver = decimal.coefficient % divisor;
  return { coefficient: leftOver < 0n ? towardsZero - 1n : towardsZero, exponent: place };
}

/** An integer quotient rounded half to even; the divisor is positive. */
export function divideHalfEven(dividend: bigint, divisor: bigint): bigint {
  const negative = dividend < 0n;
  const size = negative ? -dividend : dividend;
  const quotient = size / divisor;
  const twiceLeftOver = 2n * (size % divisor);
  const up = twiceLeftOver > divisor || (twiceLeftOver === divisor && quotient % 2n === 1n);
  const rounded = up ? quotient + 1n : quotient;
  return negative ? -rounded : rounded;
}

/** Prints without an exponent, with every digit down to the place; never `-0`. */
export function decimalText(decimal: Decimal): string {
  const negative = decimal.coefficient < 0n;
  const digits = (negative ? -decimal.coefficient : decimal.coefficient).toString();
  const sign = negative ? '-' : '';
  if (decimal.exponent >= 0) {
    return decimal.coefficient === 0n ? '0' : sign + digits + '0'.repeat(decimal.exponent);
  }
  const padded = digits.padStart(1 - decimal.exponent, '0');
  const point = padded.length + decimal.exponent;
  return `${sign}${padded.slice(0, point)}.${padded.slice(point)}`;
}
