// What a person may ask to be entered: words as they were typed; the desk reads them, so that every door reads alike.
import type { Kind } from '../../book/index.ts';
import type { Use } from '../../outpost/index.ts';

/** Said with any entry. */
export interface RequestWith {
  /** When it happened: `now`, `-15m`, `14:05`, `D143T14:07`, ISO. Absent: now. */
  readonly at?: string;
  readonly note?: string;
  readonly minutes?: number;
  readonly people?: number;
  readonly source?: string;
  /** It has already happened although a rule speaks against it, because … */
  readonly happened?: string;
  /** Why it comes after its day was closed. */
  readonly late?: string;
  /** Yes to what would be asked first: the amount or the reading stands as it is. */
  readonly sure?: boolean;
  /** Show what would happen and keep nothing. */
  readonly dryRun?: boolean;
}

export type LogRequest =
  | { readonly what: 'drink'; readonly amount: string; readonly from?: string; readonly person?: string }
  | {
      readonly what: 'fill';
      readonly store: string;
      readonly amount?: string;
      readonly from?: string;
      readonly hose?: string;
      readonly method?: string;
      /** `MEANS=AMOUNT`: the same water by other means. */
      readonly also?: readonly string[];
    }
  | {
      readonly what: 'move';
      readonly amount: string;
      readonly from?: string;
      readonly to?: string;
      readonly hose?: string;
      readonly method?: string;
      readonly also?: readonly string[];
    }
  | {
      readonly what: 'use';
      readonly amount: string;
      readonly use: Use;
      readonly from?: string;
      readonly person?: string;
    }
  | { readonly what: 'make'; readonly amount: string; readonly from?: string; readonly to?: string }
  | { readonly what: 'weigh' | 'gauge'; readonly store: string; readonly amount: string }
  | {
      readonly what: 'empty';
      readonly store: string;
      readonly residual?: string;
      readonly flowStopped?: boolean;
      readonly counters?: Readonly<Record<string, string>>;
    }
  | { readonly what: 'full'; readonly store: string; readonly amount?: string }
  | { readonly what: 'hookup'; readonly store: string; readonly port: string }
  | { readonly what: 'relabel'; readonly store: string; readonly grade: string; readonly photo?: string }
  | {
      readonly what: 'day';
      readonly readings: Readonly<Record<string, string>>;
      readonly peopleAboard?: number;
      readonly day?: number;
    }
  | { readonly what: 'undo'; readonly entry?: string; readonly reason?: string }
  | {
      readonly what: 'correct';
      readonly entry: string;
      /** The right amount of an entry that has one; of a line of meters the readings that were wrong. */
      readonly value?: string;
      readonly readings?: Readonly<Record<string, string>>;
      readonly reason: string;
    }
  | {
      readonly what: 'decide';
      readonly first: string;
      readonly second: string;
      readonly decision: 'merge' | 'both are true';
    }
  /** Any kind, its fields as a person tells them: texts, or what a file has. */
  | { readonly what: 'told'; readonly kind: string; readonly fields: Readonly<Record<string, unknown>> }
  /** A body that was made here already. */
  | { readonly what: 'kind'; readonly kind: Kind; readonly body: unknown };
