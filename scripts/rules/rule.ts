// What a rule of the house is: which files it looks at, what it finds there, and the samples that prove that it can fail.
import type { Fault, SourceFile } from '../tree/source-file.ts';

export interface Sample {
  readonly path: string;
  readonly text: string;
}

export interface Rule {
  readonly name: string;
  readonly why: string;
  readonly looksAt: (path: string) => boolean;
  readonly faults: (file: SourceFile) => readonly Fault[];
  /** Each must be found faulty: a rule that finds nothing here finds nothing anywhere. */
  readonly caught: readonly Sample[];
  /** Each must pass: a rule that finds everything is of no use either. */
  readonly passes: readonly Sample[];
}

/** Samples of one path, one a line of text. */
export function samples(path: string, ...texts: readonly string[]): readonly Sample[] {
  return texts.map((text) => ({ path, text }));
}
