// Parts that several papers of quality have: figures each against its row, rows each with its source.
import type { PaperFigure, PaperRow } from '../../sheets/papers-quality.ts';
import type { FigureLine } from '../../sheets/samples.ts';
import { saidRow, saidSample, saidSource, certificate as words } from '../../words/en/papers-quality.ts';
import { figureVerdicts, saidLimits } from '../../words/en/samples.ts';
import type { DocumentTable, ToldCell } from '../document.ts';

const { columns } = words;

export function toldOf({ value, censored }: Pick<FigureLine, 'value' | 'censored'>): ToldCell {
  return { told: value, censored };
}

/** `mg/L as C`; a parameter that is only ever told as itself needs no basis. */
export function measureOf({ unit, basis }: { readonly unit: string; readonly basis: string | null }): string {
  return basis === null || basis === 'as itself' ? unit : `${unit} ${basis}`;
}

/** `corrie 88` in one piece. */
export const whole = (ref: string | null): string => (ref ?? '').replaceAll(' ', '\u00A0');

export function standingOf(figure: FigureLine): string {
  return figure.setAside ? words.setAside : figureVerdicts[figure.verdict];
}

/** @param of.withStore the figures are of several stores, whose names need the room of the day: the entry tells that */
export function figureTable(
  figures: readonly PaperFigure[],
  of: { readonly empty: string; readonly withStore: boolean },
): DocumentTable {
  return {
    part: 'table',
    name: 'figures',
    empty: of.empty,
    columns: [
      ...(of.withStore ? [{ head: columns.store, key: 'stores', align: 'left', least: 6 } as const] : []),
      { head: columns.sample, key: 'sample', align: 'left', least: 8 },
      ...(of.withStore ? [] : [{ head: columns.taken, key: 'drawn', align: 'left', least: 9 } as const]),
      { head: columns.parameter, key: 'parameter', align: 'left', least: 9 },
      { head: columns.figure, key: 'figure', align: 'figure' },
      { head: columns.unit, key: 'unit', align: 'left', least: 6 },
      { head: columns.limit, key: 'limit', align: 'left', least: 9 },
      { head: columns.is, key: 'is', align: 'left', least: 8 },
      { head: columns.entry, key: 'entry', align: 'left', least: 6 },
    ],
    rows: figures.map(({ stores, sample, taken, figure }) => [
      ...(of.withStore ? [stores.join(', ')] : []),
      saidSample(sample),
      ...(of.withStore ? [] : [taken]),
      figure.parameter,
      toldOf(figure),
      measureOf(figure),
      saidLimits(figure),
      standingOf(figure),
      whole(figure.ref),
    ]),
  };
}

/** The set is said where the outpost holds its water to more than one. */
export function rowTable(rows: readonly PaperRow[]): DocumentTable {
  const hasSets = new Set(rows.map(({ set }) => set)).size > 1;
  return {
    part: 'table',
    name: 'rows',
    empty: words.noRows,
    columns: [
      { head: columns.parameter, key: 'parameter', align: 'left', least: 9 },
      { head: columns.limit, key: 'limit', align: 'left', least: 12 },
      { head: columns.row, key: 'row', align: 'left', least: 10 },
      ...(hasSets ? [{ head: columns.set, key: 'set', align: 'left', least: 10 } as const] : []),
      { head: columns.source, key: 'source', align: 'left', least: 16 },
    ],
    rows: rows.map((row) => [
      row.parameter,
      saidRow(row),
      row.row,
      ...(hasSets ? [row.set] : []),
      saidSource(row),
    ]),
  };
}
