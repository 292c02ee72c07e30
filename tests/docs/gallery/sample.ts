// What a sample of the gallery is: when a finding comes, and inputs that really bring it.
import type { Finding } from '../../../src/ground/units/index.ts';
import { type WordedFinding, wordFinding } from '../../../src/papers/index.ts';

/** What was given, as lines to read, and the finding that came of it. */
export interface Failure {
  readonly given: readonly string[];
  readonly finding: WordedFinding;
}

type Fail = () => Failure | Promise<Failure>;

export interface Sample {
  /** One line. */
  readonly when: string;
  /** At least one; more where the sentences differ much. */
  readonly fails: readonly [Fail, ...Fail[]];
  /** Why the finding was written out instead of earned, and where it is earned. */
  readonly writtenOut?: string;
}

/** One sample for every code of a room: a code without one does not compile. */
export type Samples<Code extends string> = Readonly<Record<Code, Sample>>;

export function sample(when: string, ...fails: readonly [Fail, ...Fail[]]): Sample {
  return { when, fails };
}

/** For what no input brings on every machine: the finding as the room makes it, and the reason. */
export function writtenOut(when: string, why: string, failure: Failure): Sample {
  return { when, fails: [() => failure], writtenOut: why };
}

/** The one finding that a reader gave back. */
export function failure(
  given: readonly string[],
  finding: Finding | undefined,
  context: Parameters<typeof wordFinding>[1] = {},
): Failure {
  if (finding === undefined) throw new Error(`nothing was found in: ${given.join(' | ')}`);
  return { given, finding: wordFinding(finding, context) };
}
