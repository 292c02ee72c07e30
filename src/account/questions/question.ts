// Writing a question about a figure: what was said, what this outpost would expect and why, and which reading would fit.
import type { AnyEntry } from '../../book/index.ts';
import type { Fold } from '../fold.ts';
import { noteEntry } from '../note.ts';
import type { Fit } from './fitting.ts';

/** Why a figure is held against a range. */
export type Against =
  | 'source'
  | 'hose'
  | 'other legs'
  | 'counter'
  | 'other counter'
  | 'usual'
  | 'time of day'
  | 'capacity'
  | 'loaded mass'
  | 'usual fill'
  | 'raw readings'
  | 'store'
  | 'cabin';

export interface FigureQuestion {
  readonly code: 'amount-implausible' | 'reading-implausible';
  /** What the figure is of: an instrument, or the water of the entry. */
  readonly of: string;
  readonly value: number;
  readonly unit: string;
  readonly low: number;
  readonly high: number;
  readonly against: Against;
  /** The name of what it is held against: a store, a hose, another counter. */
  readonly name?: string;
  readonly fit?: Fit | null;
  readonly store?: string | undefined;
  readonly field?: string;
}

/** The entry counts as it stands: this is a question, and never an answer. */
export function askFigure(fold: Fold, entry: AnyEntry, question: FigureQuestion): void {
  const { code, of, value, unit, low, high, against, name, fit, store, field } = question;
  noteEntry(fold, entry, {
    code,
    severity: 'act-today',
    store,
    ...(field !== undefined && { field }),
    data: {
      of,
      value,
      unit,
      low,
      high,
      against,
      name: name ?? null,
      fits: fit?.value ?? null,
      slip: fit?.slip ?? null,
    },
  });
}
