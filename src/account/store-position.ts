// What a position says of one store.
import type { KnownResult } from './quality/known-results.ts';
import type { Standing } from './standing.ts';
import type {
  HoldState,
  HowKnown,
  Release,
  ReleaseRecord,
  StoreFacts,
  Treated,
  WaivedHold,
} from './store-state.ts';

export interface StorePosition {
  readonly facts: StoreFacts;
  readonly grade: string | null;
  readonly emptied: boolean;
  readonly gradeHistory: readonly string[];
  readonly biocides: readonly string[];
  readonly release: Release;
  readonly released: ReleaseRecord | null;
  readonly hold: HoldState | null;
  readonly conditional: HoldState | null;
  /** Holds that are waived for a time. */
  readonly waived: readonly WaivedHold[];
  readonly results: readonly KnownResult[];
  readonly treated: Treated | null;
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
