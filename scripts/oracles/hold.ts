// Holds a function against an oracle: how many points agreed, to how many digits, and whether a wrong function was seen.
import { createHash } from 'node:crypto';
import { seededChance } from '../../src/ground/maths/index.ts';
import type { Oracle, Point, Value } from '../../tests/oracles/oracle.ts';
import type { Answer } from './ask-script.ts';

export interface Held {
  readonly points: number;
  /** Digits in which the two agree at the worst point; 16 where every bit is the same. */
  readonly digits: number;
  /** Points at which they do not agree, worst first, each a line. */
  readonly faults: readonly string[];
  /** Points at which the function that is wrong on purpose was seen to be wrong. */
  readonly controlSeen: number;
}

const MOST_DIGITS = 16;

/** The same points for the same seed, whatever other oracles are asked. */
export function pointsOf(oracle: Oracle, seed: number): readonly Point[] {
  const stream = createHash('sha256').update(oracle.subject).digest().readUInt32BE(0);
  const chance = seededChance({ seed, stream });
  return Array.from({ length: oracle.count }, () => oracle.point(chance));
}

export function hold(oracle: Oracle, points: readonly Point[], answers: readonly Answer[]): Held {
  const looks = points.map((point, at) => {
    const answer = answers[at] ?? { fault: 'no answer' };
    return { ...look(oracle, point, answer), isControlSeen: isSeen(oracle, point, answer) };
  });
  const faults = looks.filter(({ says }) => says !== '').sort((a, b) => b.apart - a.apart);
  return {
    points: points.length,
    digits: looks.reduce((least, { digits }) => Math.min(least, digits), MOST_DIGITS),
    faults: faults.map(({ says }) => says),
    controlSeen: looks.filter(({ isControlSeen }) => isControlSeen).length,
  };
}

interface Look {
  /** How far apart, in tolerances. */
  readonly apart: number;
  readonly digits: number;
  /** Empty where the two agree. */
  readonly says: string;
}

function look(oracle: Oracle, point: Point, answer: Answer): Look {
  const theirs = givenBy(answer);
  if (theirs === undefined) return { apart: Number.POSITIVE_INFINITY, digits: 0, says: faultOf(answer) };
  const ours = tried(() => oracle.ours(point));
  if (typeof ours === 'string') return { apart: Number.POSITIVE_INFINITY, digits: 0, says: ours };
  const { apart, digits } = compared(ours, theirs, oracle.tolerance);
  const says = `${JSON.stringify(point)}: ours ${JSON.stringify(ours)}, theirs ${JSON.stringify(theirs)}`;
  // Not (apart <= 1) also catches NaN.
  return apart <= 1 ? { apart, digits, says: '' } : { apart, digits, says };
}

function isSeen(oracle: Oracle, point: Point, answer: Answer): boolean {
  const theirs = givenBy(answer);
  if (theirs === undefined) return false;
  const wrong = tried(() => oracle.control.wrong(point));
  return typeof wrong !== 'string' && !(compared(wrong, theirs, oracle.tolerance).apart <= 1);
}

function compared(ours: Value, theirs: Value, tolerance: Oracle['tolerance']) {
  const [own, other] = [ours, theirs].map((value) => (typeof value === 'number' ? [value] : value));
  if (own === undefined || other === undefined || own.length === 0 || own.length !== other.length)
    return { apart: Number.POSITIVE_INFINITY, digits: 0 };
  const misses = own.map((value, at) => {
    const truth = other[at] as number;
    const miss = Math.abs(value - truth);
    const relative = miss === 0 ? 0 : miss / Math.abs(truth);
    return {
      apart: 'abs' in tolerance ? miss / tolerance.abs : relative / tolerance.rel,
      digits: Math.min(MOST_DIGITS, Math.max(0, -Math.log10(relative))),
    };
  });
  return {
    apart: Math.max(...misses.map(({ apart }) => apart)),
    digits: Math.min(...misses.map(({ digits }) => digits)),
  };
}

function givenBy(answer: Answer): Value | undefined {
  return typeof answer === 'number' || Array.isArray(answer) ? (answer as Value) : undefined;
}

function faultOf(answer: Answer): string {
  return answer !== null && typeof answer === 'object' && 'fault' in answer
    ? answer.fault
    : `the oracle answered ${JSON.stringify(answer)}`;
}

function tried(work: () => Value): Value | string {
  try {
    return work();
  } catch (error) {
    return `ours refused: ${error instanceof Error ? error.message : String(error)}`;
  }
}
