// What a value in a formula measures: exponents of base quantities, and whether it is a point on a scale or a difference.

const BASES = ['m', 'kg', 's', 'K', 'S', 'n', 'cfu'] as const;
type Base = (typeof BASES)[number];

export interface QuantityType {
  /** In the order of BASES: metre, kilogram, second, kelvin, siemens, a count, colony-forming units. */
  readonly exponents: readonly number[];
  /** An absolute pressure and a temperature in °C are points: two of them can be compared and subtracted, never added. */
  readonly point: boolean;
}

export function quantityType(exponents: Partial<Record<Base, number>>): QuantityType {
  return { exponents: BASES.map((base) => exponents[base] ?? 0), point: false };
}

export const PLAIN = quantityType({});

export function sameDimensions(a: QuantityType, b: QuantityType): boolean {
  return a.exponents.every((exponent, k) => exponent === b.exponents[k]);
}

export function sameType(a: QuantityType, b: QuantityType): boolean {
  return a.point === b.point && sameDimensions(a, b);
}

/** Of a product (`sign` 1) or a quotient (−1) of differences. */
export function combined(a: QuantityType, b: QuantityType, sign: 1 | -1): QuantityType {
  return {
    exponents: a.exponents.map((exponent, k) => exponent + sign * (b.exponents[k] ?? 0)),
    point: false,
  };
}

/** For sentences: `m³ s⁻¹` as `m3 s-1`; a plain number is `a plain number`. */
export function typeInWords(type: QuantityType): string {
  const parts = BASES.flatMap((base, k) => {
    const exponent = type.exponents[k] ?? 0;
    if (exponent === 0) return [];
    return [exponent === 1 ? base : `${base}${exponent}`];
  });
  return parts.length === 0 ? 'a plain number' : parts.join(' ');
}
