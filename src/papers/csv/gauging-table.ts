// The figures of the gauging plot as a table for spreadsheets: estimates and readings in the order of time.
import type { SheetFigure } from '../sheets/figure.ts';
import type { StoreSheet } from '../sheets/store.ts';
import type { EstimatePoint, GaugingPoint } from '../sheets/store-story.ts';
import { csvText } from './csv-text.ts';

const heads = [
  'store',
  'what',
  'at',
  'day',
  'how',
  'entry',
  'volume_L',
  'u95_L',
  'believed_L',
  'believed_u95_L',
  'difference_L',
  'difference_u95_L',
];

type Cells = readonly (string | number | null)[];

/** Times in ISO 8601, the day with its part of a day, every ± at 95 %. */
export function gaugingTable({ store, gauging }: StoreSheet): string {
  const rows = [
    ...gauging.estimates.map((point) => ({ at: point.at, cells: estimateCells(store.id, point) })),
    ...gauging.readings.map((point) => ({ at: point.at, cells: readingCells(store.id, point) })),
  ];
  // A stable order: what was believed at an instant stands before what was read then.
  rows.sort((a, b) => (a.at < b.at ? -1 : a.at > b.at ? 1 : 0));
  return csvText(
    heads,
    rows.map(({ cells }) => cells),
  );
}

function estimateCells(store: string, { at, day, when, volume }: EstimatePoint): Cells {
  return [
    store,
    'estimate',
    at,
    dayCell(day),
    when,
    volume.because.entries[0] ?? null,
    ...pair(volume),
    null,
    null,
    null,
    null,
  ];
}

function readingCells(store: string, { at, day, how, id, read, believed, difference }: GaugingPoint): Cells {
  return [store, 'reading', at, dayCell(day), how, id, ...pair(read), ...pair(believed), ...pair(difference)];
}

/** A milligram is a millionth of a litre, and that is all there is. */
function pair(figure: SheetFigure | null): readonly (number | null)[] {
  return figure === null
    ? [null, null]
    : [inMillionths(figure.value), figure.u95 === null ? null : inMillionths(figure.u95)];
}

function inMillionths(value: number): number {
  return Math.round(value * 1e6) / 1e6;
}

/** To the ten-thousandth of a day, which is nine seconds. */
function dayCell(day: number): number {
  return Math.round(day * 1e4) / 1e4;
}
