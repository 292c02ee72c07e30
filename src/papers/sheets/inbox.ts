// What an import of a table ends with, and what waits in the inbox.
import type { WordedFinding } from './finding.ts';

/** A column of a table, and what was made of it. */
export interface TableColumn {
  readonly heading: string;
  /** In the words of `import --columns`; empty: nothing, and its cells go into the note. */
  readonly means: string;
  readonly leftOut: boolean;
}

/** What became of a line, or would become of it. */
export interface TableLine {
  readonly line: number;
  readonly what: 'entry' | 'known' | 'waits' | 'says nothing';
  /** The entries in words; for a line that is known, how people name what is there. */
  readonly text: string;
  readonly reasons: readonly WordedFinding[];
}

export interface TableSheet {
  readonly file: string;
  readonly format: string;
  readonly shape: 'days' | 'acts';
  readonly columns: readonly TableColumn[];
  /** `+05:30`, and how it came to be known. */
  readonly zone: { readonly offset: string; readonly by: string };
  readonly dates: 'day-first' | 'month-first' | null;
  /** Lines with anything in them, under the headings. */
  readonly lines: number;
  readonly taken: number;
  readonly entries: number;
  readonly known: number;
  readonly waiting: number;
  /** Lines that waited and are taken now. */
  readonly settled: number;
  readonly saysNothing: number;
  /** Whether headings are read so from now on, because of this import. */
  readonly remembered: boolean;
  /** Every line of a preview; else those that wait. */
  readonly preview: readonly TableLine[];
  /** What the table and the account have to say. */
  readonly findings: readonly WordedFinding[];
  /** Findings of the account beyond these; all of them stand in the daybook. */
  readonly moreFindings: number;
  readonly dryRun: boolean;
}

/** A bare number as it would be in a unit. */
export interface PossibleReading {
  readonly received: string;
  readonly unit: string;
  readonly litres: number;
  readonly store: string | null;
  readonly capacityL: number | null;
}

export interface InboxLine {
  /** `corrie 34`: what `inbox take` wants; one word of it is `corrie:34`. */
  readonly ref: string;
  readonly id: string;
  readonly file: string;
  readonly line: number | null;
  readonly since: string;
  readonly by: string;
  readonly cells: readonly { readonly heading: string; readonly cell: string; readonly means: string }[];
  readonly reasons: readonly WordedFinding[];
  readonly readings: readonly PossibleReading[];
  readonly settled: null | {
    readonly how: 'taken' | 'dropped';
    readonly ref: string;
    readonly entries: readonly string[];
    readonly reason: string | null;
  };
}

export interface InboxSheet {
  readonly lines: readonly InboxLine[];
  readonly settled: number;
}

export interface TakenSheet {
  readonly kept: boolean;
  readonly line: InboxLine;
  /** The entries in words, with how people name them. */
  readonly entries: readonly {
    readonly ref: string;
    readonly id: string;
    readonly text: string;
    readonly happened: string;
  }[];
}

export interface DroppedSheet {
  readonly kept: boolean;
  readonly line: InboxLine;
  readonly reason: string;
}
