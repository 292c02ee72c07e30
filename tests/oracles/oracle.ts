// What an oracle is: another program that answers the same question, at points drawn by chance.
import type { Chance } from '../../src/ground/maths/index.ts';

export type Point = Readonly<Record<string, number | readonly number[]>>;
export type Value = number | readonly number[];

/**
 * One question, put to a function of ours and to a program of others. Declared with methods, so that a list may hold
 * oracles of several shapes of points.
 */
export interface Oracle<P extends Point = Point> {
  /** The question, in words for the table; also the word by which it is chosen on the command line. */
  readonly subject: string;
  /** Who answers: package and function. */
  readonly against: string;
  /** A script under `scripts/oracles/` and the name of the question there, or a function of an npm package. */
  readonly answers: { readonly script: string; readonly ask: string } | { of(point: P): Value };
  readonly count: number;
  /** One point; all of its numbers have to be drawn from this chance. */
  point(chance: Chance): P;
  ours(point: P): Value;
  /** How far two values may be apart. With `abs`, the unit is that of the values. */
  readonly tolerance: { readonly rel: number } | { readonly abs: number };
  /** Why it is not smaller. */
  readonly because: string;
  /** A function that is wrong on purpose: the oracle has to see it. */
  readonly control: { readonly is: string; wrong(point: P): Value };
}

/** Uniform between two ends. */
export function between(chance: Chance, low: number, high: number): number {
  return low + (high - low) * chance.uniform();
}
