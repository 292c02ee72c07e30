// Exact conversion between units of a kind, and between mass and volume when a density is given.
import { type Decimal, decimalOf, divideHalfEven, powerOfTen } from './decimal.ts';
import { type Unit, unitNamed } from './unit-table.ts';

const tenToThe16 = powerOfTen(16);

interface Rational {
  readonly numerator: bigint;
  /** Always positive. */
  readonly denominator: bigint;
}

/**
 * The same quantity in another unit.
 *
 * The number is taken as the decimal that it prints as, multiplied by the exact rational factor, and given back as the
 * decimal of at most 15 digits that lies within 3e-16 (relative) of the result, or else as the nearest double. So 1 lb is
 * 453592.37 mg and not a neighbour of it, and any number of up to 15 significant digits comes back the same from there
 * and back. Between the temperature scales this holds from -2000 to 2000 for numbers of up to 9 decimals.
 *
 * @throws RangeError if a unit is unknown, the kinds differ, or the number is not finite. A count converts into nothing.
 * @example convert(1, 'lb', 'kg') // 0.45359237
 */
export function convert(value: number, from: string, to: string): number {
  const source = unitNamed(from);
  const target = unitNamed(to);
  if (source === target) return finite(value);
  if (source.dimension !== target.dimension || source.dimension === 'count')
    throw differentKind(source, target);
  const result = throughBase(rationalOf(value), source, target);
  const isShifted = source.offsetHundredths !== target.offsetHundredths;
  return (isShifted ? toNineDecimals(result) : null) ?? toNumber(result);
}

/**
 * Mass into volume, volume into mass, and so for flows, at a stated density.
 * Volume = mass / density; mass = volume × density.
 *
 * @param densityKgPerM3 kg/m3, above 0; nothing is assumed where it is not given.
 * @throws RangeError as `convert`, or if the density is not a positive number.
 * @example convertAtDensity(1, { from: 'L', to: 'kg', densityKgPerM3: 997.8 }) // 0.9978
 */
export function convertAtDensity(
  value: number,
  asked: { readonly from: string; readonly to: string; readonly densityKgPerM3: number },
): number {
  const source = unitNamed(asked.from);
  const target = unitNamed(asked.to);
  if (source.dimension === target.dimension) return convert(value, asked.from, asked.to);
  const toVolume = isMassOf(source, target);
  if (!toVolume && !isMassOf(target, source)) throw differentKind(source, target);
  if (!(asked.densityKgPerM3 > 0))
    throw new RangeError(`a density is above 0 kg/m3, not ${asked.densityKgPerM3}`);
  // 1 kg/m3 is 1 mg/mL, so the density leads from the base unit of volume (mL, mL/d) to that of mass (mg, mg/d).
  const density = rationalOf(asked.densityKgPerM3);
  const base = times(rationalOf(value), source.numerator, source.denominator);
  const across = toVolume
    ? times(base, density.denominator, density.numerator)
    : times(base, density.numerator, density.denominator);
  return toNumber(times(across, target.denominator, target.numerator));
}

/** A difference or a ± in another unit: the factor alone, without the offset of a temperature scale. */
export function convertDifference(value: number, from: string, to: string): number {
  const source = unitNamed(from);
  const target = unitNamed(to);
  if (source === target) return finite(value);
  if (source.dimension !== target.dimension || source.dimension === 'count')
    throw differentKind(source, target);
  const base = times(rationalOf(value), source.numerator, source.denominator);
  return toNumber(times(base, target.denominator, target.numerator));
}

function isMassOf(mass: Unit, volume: Unit): boolean {
  return (
    (mass.dimension === 'mass' && volume.dimension === 'volume') ||
    (mass.dimension === 'mass-flow' && volume.dimension === 'flow')
  );
}

function differentKind(source: Unit, target: Unit): RangeError {
  return new RangeError(
    `${source.name} (${source.dimension}) does not convert into ${target.name} (${target.dimension})`,
  );
}

function finite(value: number): number {
  if (!Number.isFinite(value)) throw new RangeError(`${value} is not a finite number`);
  return value;
}

function throughBase(value: Rational, source: Unit, target: Unit): Rational {
  const shifted = plusHundredths(value, source.offsetHundredths);
  const base = times(shifted, source.numerator, source.denominator);
  return plusHundredths(times(base, target.denominator, target.numerator), -target.offsetHundredths);
}

function rationalOf(value: number): Rational {
  const { coefficient, exponent } = decimalOf(value);
  if (exponent >= 0) return { numerator: coefficient * powerOfTen(exponent), denominator: 1n };
  return { numerator: coefficient, denominator: powerOfTen(-exponent) };
}

function times(value: Rational, numerator: bigint, denominator: bigint): Rational {
  return { numerator: value.numerator * numerator, denominator: value.denominator * denominator };
}

function plusHundredths(value: Rational, hundredths: bigint): Rational {
  if (hundredths === 0n) return value;
  return {
    numerator: value.numerator * 100n + hundredths * value.denominator,
    denominator: value.denominator * 100n,
  };
}

/** The decimal of 15 digits if one lies within 3e-16, else the nearest double (through 25 digits, read once). */
function toNumber(value: Rational): number {
  if (value.numerator === 0n) return 0;
  const short = significant(value, 15);
  return doubleOf(isWithin(short, value) ? short : significant(value, 25));
}

/**
 * The decimal of 9 places if one lies within 1e-12, else null. A shift of a scale eats leading digits, so what is left
 * over from a double of some hundreds is to be measured against 1e-12 and not against the result.
 */
function toNineDecimals(value: Rational): number | null {
  const scale = powerOfTen(9);
  const coefficient = divideHalfEven(value.numerator * scale, value.denominator);
  const difference = absolute(coefficient * value.denominator - value.numerator * scale);
  return difference * 1_000n <= value.denominator ? doubleOf({ coefficient, exponent: -9 }) : null;
}

/** Rounds to `digits` significant digits; the last digit errs by half a unit at most. */
function significant(value: Rational, digits: number): Decimal {
  const negative = value.numerator < 0n;
  const size = negative ? -value.numerator : value.numerator;
  // Within one of the true place; the digits are counted after the division, so an extra one does no harm.
  const place = size.toString().length - value.denominator.toString().length - digits;
  const quotient = divideAt(size, value.denominator, place);
  const surplus = quotient.toString().length - digits;
  const exact = surplus > 0 ? divideAt(size, value.denominator, place + surplus) : quotient;
  return { coefficient: negative ? -exact : exact, exponent: place + Math.max(surplus, 0) };
}

function divideAt(size: bigint, denominator: bigint, place: number): bigint {
  const dividend = place < 0 ? size * powerOfTen(-place) : size;
  const divisor = place < 0 ? denominator : denominator * powerOfTen(place);
  return (2n * dividend + divisor) / (2n * divisor);
}

/** Whether |decimal − value| ≤ 3e-16 × the greater of the two: the same test from either side, so that ways there and back agree. */
function isWithin(decimal: Decimal, value: Rational): boolean {
  const scale = decimal.exponent < 0 ? powerOfTen(-decimal.exponent) : 1n;
  const raised =
    decimal.exponent > 0 ? decimal.coefficient * powerOfTen(decimal.exponent) : decimal.coefficient;
  const left = absolute(raised * value.denominator);
  const right = absolute(value.numerator * scale);
  const difference = absolute(left - right) * tenToThe16;
  return difference <= 3n * left || difference <= 3n * right;
}

function absolute(value: bigint): bigint {
  return value < 0n ? -value : value;
}

function doubleOf(decimal: Decimal): number {
  const value = Number(`${decimal.coefficient}e${decimal.exponent}`);
  return finite(value === 0 ? 0 : value);
}
