// Takes a double apart into its bits and scales it by powers of two, exactly.

const cell = new Float64Array(1);
const words = new Uint32Array(cell.buffer);
cell[0] = 1;
/** Which of the two words holds sign and exponent depends on the machine. */
const top = words[1] === 0 ? 0 : 1;

/** The 32 bits with sign, exponent and the first 20 bits of the significand. */
export function highWord(x: number): number {
  cell[0] = x;
  return words[top] as number;
}

const LEAST_POWER = -1074;
/** All powers of two that are doubles: looked up, since putting bits together is slower than all the rest of a logarithm. */
const powers = new Float64Array(1023 - LEAST_POWER + 1);
powers[0] = Number.MIN_VALUE;
for (let at = 1; at < powers.length; at += 1) powers[at] = 2 * (powers[at - 1] as number);

/** 2^`exponent` for -1074 to 1023. */
export function powerOfTwo(exponent: number): number {
  return powers[exponent - LEAST_POWER] as number;
}

/** The exponent e of a finite x ≠ 0 with 2^e ≤ |x| < 2^(e+1), also below the normal range. */
export function exponentOf(x: number): number {
  const field = (highWord(x) >>> 20) & 0x7ff;
  return field === 0 ? ((highWord(x * 18014398509481984) >>> 20) & 0x7ff) - 1077 : field - 1023;
}

/**
 * x × 2^`exponent` for an |x| between 2^-60 and 2^60, rounded once if the result is below the normal range.
 * Beyond the range it is infinite or zero.
 */
export function scaled(x: number, exponent: number): number {
  if (exponent > 960)
    return exponent > 1100 ? x * Number.POSITIVE_INFINITY : x * powerOfTwo(900) * powerOfTwo(exponent - 900);
  if (exponent >= -960) return x * powerOfTwo(exponent);
  return exponent < -1200 ? x * 0 : x * powerOfTwo(-900) * powerOfTwo(exponent + 900);
}
