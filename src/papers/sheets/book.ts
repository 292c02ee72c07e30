// The sheet of the daybook: entries as they were made, with what became of them.

import type { WordedFinding } from './finding.ts';
import type { SheetHead } from './today.ts';

export interface BookLine {
  readonly ref: string;
  /** Its name in the file that it came from. */
  readonly fileRef: string | null;
  readonly id: string;
  readonly happened: string;
  readonly entered: string;
  readonly kind: string;
  /** The entry in words. */
  readonly text: string;
  readonly by: string;
  readonly source: string | null;
  readonly note: string | null;
  /** Undone or corrected by that entry. */
  readonly undoneBy: string | null;
  readonly correctedBy: string | null;
  /** What counts instead, in words, where it was corrected. */
  readonly now: string | null;
  /** How it can be corrected: by one amount, by readings of its meters; null: undo it and enter it anew. */
  readonly mayCorrect: 'amount' | 'readings' | null;
  readonly late: boolean;
}

export interface BookSheet {
  readonly head: SheetHead;
  readonly lines: readonly BookLine[];
  /** More lines than were asked for. */
  readonly more: boolean;
}

/** What happened when an entry was kept, or what would. */
export interface KeptSheet {
  readonly kept: boolean;
  readonly line: BookLine;
  /** Entries that are kept with it, all or none; absent: it stands alone. */
  readonly also?: readonly BookLine[];
  /** Stores that it changed, after it. */
  readonly stores: readonly {
    readonly before: { readonly valueL: number; readonly u95L: number } | null;
    readonly after: { readonly id: string; readonly valueL: number; readonly u95L: number };
  }[];
  /** What its water is from now on, where the entry changed that: "C-02 is waste from now on; it was drinking." */
  readonly became: readonly string[];
  /** Days of cover before and after, where they changed by more than a tenth of a day. */
  readonly cover: readonly {
    readonly grade: string;
    readonly beforeQ05: number | null;
    readonly afterQ05: number | null;
  }[];
  /** What the account asks about the entry, or tells to act upon. */
  readonly findings: readonly WordedFinding[];
}
