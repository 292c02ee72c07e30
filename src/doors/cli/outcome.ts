// What a command ends with: data for standard output, talk for standard error, and findings that may fail it.
import type { TextOptions, WordedFinding } from '../../papers/index.ts';

/** Data that looks one way as JSON and another as text. */
export interface Sheet {
  /** Name of the data in `--json`. */
  readonly schema: string;
  readonly data: unknown;
  readonly text: (options: TextOptions) => string;
  /** Hints and counts: to standard error, and not with `--quiet`. */
  readonly talk?: readonly string[];
  /** Told on standard error beside the data, quiet or not: lines that were not taken, a receipt that lags. */
  readonly beside?: readonly WordedFinding[];
  /** What `--fail-on` looks at. */
  readonly findings?: readonly WordedFinding[];
  /** A check that was carried out and failed. */
  readonly failed?: true;
}

/** Data in a form of its own, whatever was asked for: help, an export, a script for a shell. */
export interface Raw {
  readonly raw: Iterable<string> | AsyncIterable<string>;
  /** The name that it gets where `-o` names a folder. */
  readonly fileName?: string;
  readonly talk?: readonly string[];
}

/** Everything was written while the command ran. */
export interface Written {
  readonly written: true;
  readonly talk?: readonly string[];
}

export type Outcome = Sheet | Raw | Written;
