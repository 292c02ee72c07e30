// How far a double is from a true value, in units in the last place of the true value.

interface Ratio {
  readonly numerator: bigint;
  readonly denominator: bigint;
}

/** The exact value of a double. */
function ratioOfDouble(value: number): Ratio {
  let denominator = 1n;
  let scaled = value;
  // Doubling is exact; from 2^1074 on every double is whole.
  for (let step = 0; step < 1100 && !Number.isInteger(scaled); step += 1) {
    scaled *= 2;
    denominator *= 2n;
  }
  return { numerator: BigInt(scaled), denominator };
}

/** The exact value of a decimal text. */
function ratioOfDecimal(text: string): Ratio {
  const match = /^(-?)(\d+)(?:\.(\d+))?(?:e([+-]?\d+))?$/.exec(text);
  if (match === null) throw new Error(`${text} is not a decimal`);
  const [, sign = '', whole = '', fraction = '', exponent = '0'] = match;
  const power = Number(exponent) - fraction.length;
  const digits = BigInt(`${sign}${whole}${fraction}`);
  return power >= 0
    ? { numerator: digits * 10n ** BigInt(power), denominator: 1n }
    : { numerator: digits, denominator: 10n ** BigInt(-power) };
}

/** The spacing of doubles in the binade of a value. */
function lastPlace(nearest: number, exact: Ratio): Ratio {
  let unit = 2 ** -1074;
  let exponent = -1074;
  const size = exact.numerator < 0n ? -exact.numerator : exact.numerator;
  // Start near the answer, then step: the nearest double may have been rounded up into the next binade.
  if (Math.abs(nearest) > 2 ** -1000) {
    exponent = Math.floor(Math.log2(Math.abs(nearest))) - 55;
    unit = 2 ** exponent;
  }
  const reach = (power: number): boolean => {
    const limit = ratioOfDouble(unit * 2 ** (power - exponent));
    return size * limit.denominator >= limit.numerator * 2n ** 52n * exact.denominator;
  };
  while (exponent < 971 && reach(exponent + 1)) {
    exponent += 1;
    unit *= 2;
  }
  return ratioOfDouble(unit);
}

/**
 * |value - truth| in units in the last place of the truth; 0 only where they are equal in every bit that a double has.
 * An infinite truth wants the same infinity, and a truth of zero wants zero.
 */
export function ulpsFrom(value: number, truth: string): number {
  if (/^[+-]?(inf|Infinity)$/i.test(truth)) {
    return value === (truth.startsWith('-') ? Number.NEGATIVE_INFINITY : Number.POSITIVE_INFINITY)
      ? 0
      : Number.POSITIVE_INFINITY;
  }
  // Beyond the largest double by half a unit or more, infinity is the right answer, and the only one.
  const nearest = Number(truth);
  if (!Number.isFinite(value) || !Number.isFinite(nearest))
    return value === nearest ? 0 : Number.POSITIVE_INFINITY;
  const exact = ratioOfDecimal(truth);
  if (exact.numerator === 0n) return value === 0 ? 0 : Number.POSITIVE_INFINITY;
  const own = ratioOfDouble(value);
  const unit = lastPlace(nearest, exact);
  const difference = own.numerator * exact.denominator - exact.numerator * own.denominator;
  const scaled =
    (difference * unit.denominator * 1_000_000n) / (own.denominator * exact.denominator * unit.numerator);
  return Math.abs(Number(scaled)) / 1e6;
}
