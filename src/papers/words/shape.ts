// What a finding becomes in a language: one shape for findings and errors.
import type { DayRule, FindingData, Where } from '../../ground/units/index.ts';

/** The four sentences of a finding; each stands alone, `text` is the one shown first. */
export interface Sentences {
  readonly text: string;
  readonly expected: string;
  readonly received: string;
  readonly remedy: string;
}

/** What words need to know beside the finding. */
export interface WordsContext {
  /** The outpost's count of days; null before there is an outpost: times are then told in ISO 8601. */
  readonly dayRule: DayRule | null;
  /** Milligrams of water in a litre; null where it is not known: amounts are then told in kilograms. */
  readonly mgPerL: number | null;
}

/** A language's table for one room's codes: a missing code does not compile. */
export type Words<Code extends string> = Readonly<
  Record<Code, (data: FindingData, where: Where, context?: WordsContext) => Sentences>
>;
