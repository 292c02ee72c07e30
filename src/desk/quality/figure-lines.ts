// The figures of a result as lines: each with the limits that bear on it and how it stands.
import {
  type Fold,
  figuresOfEntry,
  type JudgedFigure,
  judgedFigure,
  rowsOfResult,
  type SampleResult,
} from '../../account/index.ts';
import type { Entry } from '../../book/index.ts';
import type { FigureLine, FigureVerdict } from '../../papers/index.ts';
import { isSetAside, type QualityPast, refOf } from './past.ts';

export interface FiguresAsked {
  readonly fold: Fold;
  readonly past: Pick<QualityPast, 'asides'>;
  readonly nowMs: number;
  /** It is in the book, so that it has a number. */
  readonly kept?: boolean;
}

export function figureLines(asked: FiguresAsked, entry: Entry<'result'>): readonly FigureLine[] {
  const { fold, past, nowMs, kept = true } = asked;
  const rows = rowsOfResult(fold, entry);
  return figuresOfEntry(fold, entry).map(
    (figure): FigureLine => ({
      ...figureLine(figure, judgedFigure(rows, figure, nowMs)),
      setAside: isSetAside(past, entry.body.sample, figure.parameter),
      ref: kept ? refOf(entry) : null,
    }),
  );
}

/** How a figure stands, before anybody has said more of it. */
export function figureLine(figure: SampleResult, judged: JudgedFigure): FigureLine {
  const { parameter, value, censored, unit, basis } = figure;
  return {
    ...{ parameter, value, censored, unit, basis },
    limits: judged.rows.flatMap(({ id, limit, unit: of }) => {
      if (limit === null) return [];
      return [{ row: id, atLeast: limit.atLeast ?? null, atMost: limit.atMost ?? null, unit: of }];
    }),
    verdict: verdictOf(judged),
    setAside: false,
    ref: null,
  };
}

function verdictOf({ rows, against }: JudgedFigure): FigureVerdict {
  if (rows.length === 0) return 'no limit';
  if (against.includes('above')) return 'above';
  if (against.includes('below')) return 'below';
  if (against.length === 0) return 'within';
  return against.every((code) => code === 'row-off') ? 'no limit set' : 'cannot be told';
}

export const FAILS: ReadonlySet<FigureVerdict> = new Set(['above', 'below', 'cannot be told']);
