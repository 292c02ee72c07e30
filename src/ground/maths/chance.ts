// Chance from a seed: the same seed gives the same numbers, bit for bit, on every engine.
import { log } from './logarithm.ts';

/** 64 bits as two unsigned halves. */
export interface Words {
  readonly high: number;
  readonly low: number;
}

/** A stream of chance. Each call moves it on. */
export interface Chance {
  /** The next 64 bits. */
  readonly nextWords: () => Words;
  /** Uniform on [0, 1), of 53 bits. */
  readonly uniform: () => number;
  /** Standard normal. */
  readonly normal: () => number;
  /** A whole number from 0 to `count` - 1, each equally likely. */
  readonly integerBelow: (count: number) => number;
}

const mask64 = (1n << 64n) - 1n;

/** The splitmix64 sequence: spreads a seed of any pattern over all bits. @source splitmix64 (from memory; checked against vectors) */
export function splitmix64(seed: bigint, count: number): bigint[] {
  let state = seed & mask64;
  return Array.from({ length: count }, () => {
    state = (state + 0x9e3779b97f4a7c15n) & mask64;
    let mixed = state;
    mixed = ((mixed ^ (mixed >> 30n)) * 0xbf58476d1ce4e5b9n) & mask64;
    mixed = ((mixed ^ (mixed >> 27n)) * 0x94d049bb133111ebn) & mask64;
    return mixed ^ (mixed >> 31n);
  });
}

/**
 * A generator from a seed; different streams of one seed do not follow one another.
 * @throws RangeError if seed or stream is not a safe integer of zero or more.
 * @example seededChance({ seed: 7 }).uniform()
 */
export function seededChance({
  seed,
  stream = 0,
}: {
  readonly seed: number;
  readonly stream?: number;
}): Chance {
  for (const each of [seed, stream]) {
    if (!(Number.isSafeInteger(each) && each >= 0))
      throw new RangeError(`a seed is a whole number from 0, not ${each}`);
  }
  const [origin = 0n] = splitmix64(BigInt(stream), 1);
  return chanceFromState(splitmix64(BigInt(seed) ^ (stream === 0 ? 0n : origin), 4));
}

/**
 * xoshiro256** from its four words of state, kept as eight halves of 32 bits.
 * @throws RangeError if all words are zero, a state that never changes.
 * @source xoshiro (from memory; checked against vectors)
 */
export function chanceFromState(words: readonly bigint[]): Chance {
  if (words.length !== 4 || words.every((word) => (word & mask64) === 0n)) {
    throw new RangeError('the state of the generator is four words, not all zero');
  }
  // s[0], s[1] are the high and low half of the first word, and so on.
  const s = Uint32Array.from(
    words.flatMap((word) => [Number((word >> 32n) & 0xffffffffn), Number(word & 0xffffffffn)]),
  );
  const nextWords = (): Words => advance(s);
  const uniform = (): number => {
    const { high, low } = nextWords();
    return (high * 2097152 + (low >>> 11)) / 9007199254740992;
  };
  return {
    nextWords,
    uniform,
    normal: normalFrom(uniform),
    integerBelow: (count) => integerBelow(nextWords, count),
  };
}

/** One step of the generator: gives rotl(s1 × 5, 7) × 9 and moves the state. */
function advance(s: Uint32Array): Words {
  const high0 = s[0] as number;
  const low0 = s[1] as number;
  const high1 = s[2] as number;
  const low1 = s[3] as number;
  const timesFive = shiftAndAdd(high1, low1, 2);
  const turnedHigh = ((timesFive.high << 7) | (timesFive.low >>> 25)) >>> 0;
  const turnedLow = ((timesFive.low << 7) | (timesFive.high >>> 25)) >>> 0;
  const thirdHigh = (s[4] as number) ^ high0;
  const thirdLow = (s[5] as number) ^ low0;
  const fourthHigh = (s[6] as number) ^ high1;
  const fourthLow = (s[7] as number) ^ low1;
  s[2] = high1 ^ thirdHigh;
  s[3] = low1 ^ thirdLow;
  s[0] = high0 ^ fourthHigh;
  s[1] = low0 ^ fourthLow;
  s[4] = thirdHigh ^ ((high1 << 17) | (low1 >>> 15));
  s[5] = thirdLow ^ (low1 << 17);
  // A turn by 45 is a swap of the halves and a turn by 13.
  s[6] = (fourthLow << 13) | (fourthHigh >>> 19);
  s[7] = (fourthHigh << 13) | (fourthLow >>> 19);
  return shiftAndAdd(turnedHigh, turnedLow, 3);
}

/** x × (2^shift + 1) in 64 bits. */
function shiftAndAdd(high: number, low: number, shift: number): Words {
  const sumLow = ((low << shift) >>> 0) + low;
  const carry = sumLow > 0xffffffff ? 1 : 0;
  const shiftedHigh = (high << shift) | (low >>> (32 - shift));
  return { high: (shiftedHigh + high + carry) >>> 0, low: sumLow >>> 0 };
}

/** Marsaglia's polar method: a point in the unit circle gives two normal numbers; the second waits for the next call. */
function normalFrom(uniform: () => number): () => number {
  let waiting: number | null = null;
  return () => {
    if (waiting !== null) {
      const kept = waiting;
      waiting = null;
      return kept;
    }
    for (;;) {
      const x = 2 * uniform() - 1;
      const y = 2 * uniform() - 1;
      const square = x * x + y * y;
      if (square >= 1 || square === 0) continue;
      const factor = Math.sqrt((-2 * log(square)) / square);
      waiting = y * factor;
      return x * factor;
    }
  };
}

/** Words above the greatest multiple of the count are thrown away, so that no number is likelier than another. */
function integerBelow(nextWords: () => Words, count: number): number {
  if (!(Number.isInteger(count) && count >= 1 && count <= 4294967296)) {
    throw new RangeError(`a count to choose from is a whole number from 1 to 4294967296, not ${count}`);
  }
  const limit = Math.floor(4294967296 / count) * count;
  for (;;) {
    const { high } = nextWords();
    if (high < limit) return high % count;
  }
}
