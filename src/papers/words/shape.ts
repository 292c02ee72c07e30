// What a finding becomes in a language: one shape for findings and errors.
import type { FindingData, Where } from '../../ground/units/index.ts';

/** The four sentences of a finding; each stands alone, `text` is the one shown first. */
export interface Sentences {
  readonly text: string;
  readonly expected: string;
  readonly received: string;
  readonly remedy: string;
}

/** A language's table for one room's codes: a missing code does not compile. */
export type Words<Code extends string> = Readonly<
  Record<Code, (data: FindingData, where: Where) => Sentences>
>;
