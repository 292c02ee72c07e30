// A cell of a paper's table: which of its kinds it is, and how a figure in it is said without its unit.
import { formatFigure, roundFigure, styled } from '../../ground/units/index.ts';
import type { SheetFigure } from '../sheets/figure.ts';
import { amountOf } from '../text/figures.ts';
import type { TextOptions } from '../text/options.ts';
import { saidTold } from '../words/en/quality-trend.ts';
import type { DocumentCell, DocumentColumn, ToldCell } from './document.ts';

export const isFigure = (cell: DocumentCell): cell is SheetFigure =>
  cell !== null && typeof cell === 'object' && 'because' in cell;

export const isTold = (cell: DocumentCell): cell is ToldCell =>
  cell !== null && typeof cell === 'object' && 'told' in cell;

/** `STORE`, `VOLUME L`, and `VOLUME kg` where kilograms were asked for. */
export function headOfColumn({ head, unit }: DocumentColumn, { units }: Pick<TextOptions, 'units'>): string {
  if (unit === undefined) return head;
  return `${head} ${unit === 'L' ? units : unit}`;
}

/** `20.3 ± 0.5`, `<0.05`; of a figure whose ± nobody knows `about 20`. */
export function saidCell(cell: Exclude<DocumentCell, null>, options: TextOptions): string {
  if (typeof cell === 'string') return cell;
  if (isTold(cell)) return saidTold({ value: cell.told, censored: cell.censored });
  const amount = amountOf(cell as SheetFigure, options);
  if (amount.u95 === null) return `about\u00A0${styled(roundFigure(amount).value, 'screen')}`;
  const { unit } = amount;
  const said = formatFigure(amount, { style: 'screen' });
  return said.endsWith(unit) ? said.slice(0, said.length - unit.length).trimEnd() : said;
}
