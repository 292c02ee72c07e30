// What a position says of one store.
import type { Standing } from './standing.ts';
import type { HoldState, HowKnown, Release, StoreFacts } from './store-state.ts';

export interface StorePosition {
  readonly facts: StoreFacts;
  readonly grade: string | null;
  readonly emptied: boolean;
  readonly gradeHistory: readonly string[];
  readonly biocides: readonly string[];
  readonly release: Release;
  readonly hold: HoldState | null;
  readonly conditional: HoldState | null;
  /** Best value and one standard deviation, in whole milligrams. */
  readonly massMg: number;
  readonly uMg: number;
  /** Ends of the band of 95 %, cut off at empty and at full. */
  readonly lowMg: number;
  readonly highMg: number;
  readonly howKnown: HowKnown;
  /** How surely it is known: checked, only source, deduced, unknown. */
  readonly standing: Standing;
  /** Since the last direct reading; null when there was none. */
  readonly ageMs: number | null;
  readonly readAtMs: number | null;
  /** Entries that the figure rests on, the last direct reading first. */
  readonly because: readonly string[];
  readonly port: string | null;
}
