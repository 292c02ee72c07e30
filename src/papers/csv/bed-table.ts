// The figures of the bed plot as a table for spreadsheets: readings, and the band behind and ahead.
import type { BedSheet } from '../sheets/beds.ts';
import { csvText } from './csv-text.ts';

const heads = [
  'bed',
  'what',
  'at',
  'day',
  'parameter',
  'unit',
  'entry',
  'of',
  'value',
  'u95',
  'below_detection',
  'throughput_L',
  'throughput_u95_L',
  'p10',
  'p50',
  'p90',
  'limit',
];

type Cells = readonly (string | number | null)[];

/** Times in ISO 8601, the day with its part of a day; readings of the plotted quantity, then its band in the order of time. */
export function bedTable({ bed, readings, plot }: BedSheet): string {
  if (plot === null) return csvText(heads, []);
  const { parameter, unit, limit, curve } = plot;
  const of = (what: string, at: string, day: number): Cells => [bed.id, what, at, day, parameter, unit];
  return csvText(heads, [
    ...readings
      .filter((one) => one.parameter === parameter && one.unit === unit)
      .map(
        (one): Cells => [
          ...of('reading', one.at, one.day),
          ...[one.ref, one.of, one.value, one.u95, one.below ? 'yes' : 'no', one.throughputL],
          ...[null, null, null, null, limit],
        ],
      ),
    ...curve.map(
      (one): Cells => [
        ...of(one.isAhead ? 'ahead' : 'behind', one.at, one.day),
        ...[
          null,
          null,
          null,
          null,
          null,
          one.throughputL,
          one.throughputU95L,
          one.q10,
          one.q50,
          one.q90,
          limit,
        ],
      ],
    ),
  ]);
}
