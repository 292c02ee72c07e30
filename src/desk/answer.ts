// What the desk answers: a value, or why not, with findings. Doors turn the kind of problem into an exit code or a status.
import type { Finding } from '../ground/units/index.ts';

export type Problem =
  /** Input that does not fit; nothing was taken. */
  | 'bad input'
  /** An intention that a rule refuses. */
  | 'refused'
  /** A named store, entry or port is not in the book. */
  | 'not in book'
  /** A check failed: the book is damaged or behind. */
  | 'check failed'
  /** The request itself is not complete. */
  | 'wrong use'
  /** Somebody has to say yes first. */
  | 'ask first';

export type Answer<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly problem: Problem; readonly findings: readonly Finding[] };

export function yes<T>(value: T): Answer<T> {
  return { ok: true, value };
}

export function no(
  problem: Problem,
  ...findings: readonly Finding[]
): { ok: false; problem: Problem; findings: readonly Finding[] } {
  return { ok: false, problem, findings };
}
