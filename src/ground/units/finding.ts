// A finding: one fact about data that is wrong, doubtful or worth knowing, as code and data; words are added in papers/words.

/** How soon a person must act. `error` is for input that was not taken; the other three are the levels shown to the crew. */
export type Severity = 'error' | 'act-now' | 'act-today' | 'know';

/** Where the finding is: a place in a file (line and column count from 1), or in the book. */
export interface Where {
  readonly file?: string;
  readonly line?: number;
  readonly column?: number;
  readonly entry?: string;
  readonly store?: string;
  readonly field?: string;
}

/** Plain values that the words are made of; figures are numbers in the unit that the name of the key ends in. */
export type FindingData = Readonly<Record<string, string | number | boolean | null | readonly string[]>>;

/** A finding before it has words. `Code` is the room's own list of codes. */
export interface Finding<Code extends string = string> {
  readonly code: Code;
  readonly severity: Severity;
  readonly where: Where;
  readonly data: FindingData;
  /** Ids of the entries that it rests on; empty for a finding about a file. */
  readonly entries: readonly string[];
}
