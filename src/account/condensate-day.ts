// What is said of one interval between two lines: how much condensate was to be expected, how much came, what is missing.

export type CondensatePartName =
  | 'people'
  | 'change of the air'
  | 'known leak'
  | 'water let into the cabin'
  | 'washing beside the dispenser';

/** Amounts in whole milligrams; every u is one standard deviation. */
export interface CondensateDay {
  /** Day of the line that closes it, and that line's entry. */
  readonly day: number;
  readonly endMs: number;
  readonly entry: string;
  /** Days that it spans: 2 when a count was missed. */
  readonly days: number;
  readonly personDays: number;
  readonly parts: readonly {
    readonly name: CondensatePartName;
    readonly massMg: number;
    readonly uMg: number;
  }[];
  readonly expectedMg: number;
  readonly expectedUMg: number;
  /** Part of that doubt which every day repeats. */
  readonly sharedUMg: number;
  readonly collectedMg: number;
  /** Of the readings alone; the calibration of the counter bears on the shortfall. */
  readonly collectedUMg: number;
  /** Expected less collected; below 0 more came than expected. */
  readonly shortfallMg: number;
  readonly shortfallUMg: number;
  /** 0 lies within ± 2 u. */
  readonly holdsZero: boolean;
}

/** Condensate that was found later in a store that nothing meters: it had been collected before. */
export interface FoundCondensate {
  readonly store: string;
  readonly massMg: number;
  readonly uMg: number;
  readonly atMs: number;
  readonly entry: string;
}

/** Why there is no expectation: what the outpost file would have to tell. */
export type NoExpectation = 'norm of vapour' | 'counter of a condenser';

export interface Condensate {
  readonly days: readonly CondensateDay[];
  readonly found: readonly FoundCondensate[];
  /** What was learned by the end, of one person and day. */
  readonly rate: {
    readonly massMg: number;
    readonly uMg: number;
    readonly normMg: number;
    readonly normUMg: number;
  };
  /** Days that taught it, and how days differ against what the file declares. */
  readonly taughtBy: number;
  readonly spreadFactor: number;
}
