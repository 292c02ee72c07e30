// A table of a paper as comma-separated values: figures as numbers with their ± beside them, units in the heads.
import { isFigure, isTold } from '../document/cell.ts';
import type { DocumentCell, DocumentColumn, DocumentTable } from '../document/document.ts';
import { unbound } from '../text/signs.ts';
import { csvText } from './csv-text.ts';

/** A column of stocks takes two: `volume_L,volume_u95_L`; one of told values `figure` and `figure_censored`. */
export function documentTable({ columns, rows }: DocumentTable): string {
  const kinds = columns.map((_, k) => kindOf(rows.map((row) => row[k] ?? null)));
  return csvText(
    columns.flatMap((column, k) => headsOf(column, kinds[k] ?? 'text')),
    rows.map((row) => row.flatMap((cell, k) => cellsOf(cell, kinds[k] ?? 'text'))),
  );
}

type Kind = 'text' | 'figure' | 'told';

function kindOf(cells: readonly DocumentCell[]): Kind {
  if (cells.some(isFigure)) return 'figure';
  return cells.some(isTold) ? 'told' : 'text';
}

function headsOf({ key, unit }: DocumentColumn, kind: Kind): readonly string[] {
  const behind = unit === undefined ? '' : `_${unit}`;
  if (kind === 'figure') return [`${key}${behind}`, `${key}_u95${behind}`];
  return kind === 'told' ? [`${key}${behind}`, `${key}_censored`] : [`${key}${behind}`];
}

const MILLION = 1e6;
const inMillionths = (value: number): number => Math.round(value * MILLION) / MILLION;

function cellsOf(cell: DocumentCell, kind: Kind): readonly (string | number | null)[] {
  if (isFigure(cell)) return [inMillionths(cell.value), cell.u95 === null ? null : inMillionths(cell.u95)];
  if (isTold(cell)) return [cell.told, cell.censored];
  const text = cell === null ? null : unbound(cell);
  return kind === 'text' ? [text] : [text, null];
}
