// The sheet of one store: what is in it, may it be used, where it came from, how it is known.
import type { BiocideSheet, LifeSheet } from './biocide.ts';
import type { WordedFinding } from './finding.ts';
import type { StoreQuality } from './store-quality.ts';
import type { FamilyNode, GaugingSheet } from './store-story.ts';
import type { SheetHead, StoreLine } from './today.ts';
import type { ReadingWorth } from './worth.ts';

export interface StoreEvent {
  /** `corrie 34`: site and number. */
  readonly ref: string;
  readonly id: string;
  readonly stamp: string;
  readonly kind: string;
  /** What the entry says of this store, in words. */
  readonly text: string;
  /** Undone or corrected by that entry. */
  readonly undoneBy: string | null;
  readonly correctedBy: string | null;
  /** What counts instead, in words, where it was corrected. */
  readonly now: string | null;
}

export interface StoreSheet {
  readonly head: SheetHead;
  readonly store: StoreLine;
  /** The answer to "may I use this water?", never "fit to drink". */
  readonly answer: string;
  /** On whose word, what holds it, what was waived or added, and until when. */
  readonly quality: StoreQuality;
  readonly facts: readonly { readonly name: string; readonly text: string }[];
  readonly gradeHistory: readonly string[];
  readonly biocides: readonly string[];
  /** Null where its grade has none and nothing was dosed, and where it is emptied. */
  readonly biocide: BiocideSheet | null;
  /** Null for a buffer, and before anything was told of it. */
  readonly life: LifeSheet | null;
  /** What a reading of it would be worth; null where it cannot be read at any time. */
  readonly worth: ReadingWorth | null;
  /** The youngest entries that name the store, and how many older ones there are. */
  readonly history: readonly StoreEvent[];
  readonly olderEvents: number;
  /** Where its water came from; nothing when it holds nothing. */
  readonly family: readonly FamilyNode[];
  readonly gauging: GaugingSheet;
  readonly findings: readonly WordedFinding[];
}

export interface StoresSheet {
  readonly head: SheetHead;
  readonly stores: readonly StoreLine[];
  /** By the id of the store. */
  readonly quality: Readonly<Record<string, StoreQuality>>;
}
