// Numbers of about 106 bits: the unevaluated sum of two doubles, the second at most half a unit in the last place of the first.

export interface Pair {
  readonly hi: number;
  readonly lo: number;
}

/** a + b without error, for any finite a and b (Knuth's two-sum; @source hfpa section 4.3, from memory). */
export function twoSum(a: number, b: number): Pair {
  const hi = a + b;
  const shadow = hi - a;
  return { hi, lo: a - (hi - shadow) + (b - shadow) };
}

/** a + b without error where |a| ≥ |b| or a is 0 (Dekker's fast two-sum). */
export function fastSum(a: number, b: number): Pair {
  const hi = a + b;
  return { hi, lo: b - (hi - a) };
}

const splitter = 134217729; // 2^27 + 1

/** a × b without error, by splitting each factor into halves of 26 bits (Veltkamp, Dekker); |a|, |b| < 2^990, product above 2^-960. */
export function twoProduct(a: number, b: number): Pair {
  const hi = a * b;
  const aShadow = splitter * a;
  const aHigh = aShadow - (aShadow - a);
  const aLow = a - aHigh;
  const bShadow = splitter * b;
  const bHigh = bShadow - (bShadow - b);
  const bLow = b - bHigh;
  return { hi, lo: aHigh * bHigh - hi + aHigh * bLow + aLow * bHigh + aLow * bLow };
}

/** The sum, within about 2^-104 of the greater term. */
export function addPairs(a: Pair, b: Pair): Pair {
  const sum = twoSum(a.hi, b.hi);
  return fastSum(sum.hi, sum.lo + (a.lo + b.lo));
}

/** The product, within about 2^-103. */
export function multiplyPairs(a: Pair, b: Pair): Pair {
  const product = twoProduct(a.hi, b.hi);
  return fastSum(product.hi, product.lo + (a.hi * b.lo + a.lo * b.hi));
}

/** The quotient, within about 2^-101. */
export function dividePairs(a: Pair, b: Pair): Pair {
  const first = a.hi / b.hi;
  const product = twoProduct(first, b.hi);
  const left = a.hi - product.hi - product.lo + a.lo - first * b.lo;
  return fastSum(first, left / b.hi);
}
