// What the book knows of the fitness of a store's water: on whose word, what holds it, what was waived or added, and until when.

/** What stands on the store; empty where nothing has to be known before its water is used. */
export type QualityWord = 'RELEASED' | 'NOT RELEASED' | 'HOLD' | 'CONDITIONAL' | 'WAIVED' | '';

export interface StoreQuality {
  readonly word: QualityWord;
  /** own sample, made here, opening, loader's certificate or none. */
  readonly onWordOf: string;
  readonly released: {
    readonly by: string;
    readonly at: string;
    readonly samples: readonly string[];
    /** Null: without an end. */
    readonly until: string | null;
    readonly over: boolean;
  } | null;
  readonly holds: readonly {
    readonly hold: string;
    readonly since: string;
    readonly reason: string;
    readonly failed: readonly string[];
    readonly parked: { readonly owner: string; readonly until: string } | null;
  }[];
  readonly conditional: { readonly hold: string; readonly since: string; readonly reason: string } | null;
  readonly waived: readonly {
    readonly hold: string;
    readonly by: string;
    readonly second: string | null;
    readonly reason: string;
    readonly until: string;
  }[];
  /** What was added last, and from when a sample of it counts. */
  readonly treated: {
    readonly at: string;
    /** Null: by a recipe of the outpost. */
    readonly biocide: string | null;
    readonly countsFrom: string;
  } | null;
  readonly downgraded: {
    readonly at: string;
    readonly by: string;
    readonly fromGrade: string;
    readonly ref: string;
  } | null;
  /** Sentences, the first of which says what it is. */
  readonly words: readonly string[];
  readonly entries: readonly string[];
}
