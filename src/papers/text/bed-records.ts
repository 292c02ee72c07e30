// The purifier beds as records for programs: one a line, fields with a tab between them.
import type { BedDates, BedLine, BedSheet, BedsSheet } from '../sheets/beds.ts';
import { fieldsOf } from './figures.ts';
import { findingRecords } from './finding-records.ts';
import { record } from './page.ts';
import { signed } from './signs.ts';

/** bed … · spares part count · finding …. */
export function bedsRecords({ beds, spares, findings }: BedsSheet): string[] {
  return [
    ...beds.map(bedRecord),
    ...(spares === null ? [] : [record(['spares', spares.part, `${spares.count}`])]),
    ...findingRecords(findings, 'finding'),
  ];
}

/** bed id unit used-L ± life-L ± percent low high since-day begun P10 P50 P90 by. */
function bedRecord(bed: BedLine): string {
  const { value, low, high } = bed.usedPercent;
  return record([
    'bed',
    bed.id,
    bed.unit,
    ...fieldsOf(bed.used),
    ...fieldsOf(bed.life),
    ...[value, low, high].map((percent) => `${Math.round(percent)}`),
    `${bed.since.day}`,
    bed.since.begun,
    ...dayFields(bed.dates),
    bed.by ?? '',
  ]);
}

/** Days with a tenth; nothing where there is none. */
function dayFields(dates: BedDates | null): readonly string[] {
  return [dates?.q10, dates?.q50, dates?.q90].map((day) => (day == null ? '' : day.day.toFixed(1)));
}

/** bed … · advice verdict text · quantity … · cause rank name side text · reading … · change day ref reckoned-L told-L · finding …. */
export function bedRecords(sheet: BedSheet): string[] {
  const text = (value: string): string => signed(value, 'plain');
  return [
    bedRecord(sheet.bed),
    ...adviceRecords(sheet),
    ...sheet.parameters.map(({ parameter, unit, limit, readings, moves, perDay, limitAt, dates }) =>
      record([
        'quantity',
        parameter,
        text(unit),
        `${limit}`,
        `${readings}`,
        moves,
        ...(perDay === null ? ['', ''] : fieldsOf(perDay)),
        ...fieldsOf(limitAt),
        ...dayFields(dates),
      ]),
    ),
    ...sheet.causes.flatMap(({ cause, evidence }, k) =>
      evidence.map(({ side, text: said }) => record(['cause', `${k + 1}`, cause, side, text(said)])),
    ),
    ...sheet.readings.map(({ ref, stamp, parameter, value, below, unit, throughputL, of }) =>
      record([
        'reading',
        ref,
        text(stamp),
        parameter,
        `${below ? '<' : ''}${value}`,
        text(unit),
        throughputL.toFixed(1),
        of,
      ]),
    ),
    ...sheet.changes.map(({ day, ref, reckonedL, toldL }) =>
      record(['change', day.toFixed(1), ref, reckonedL.toFixed(1), toldL === null ? '' : `${toldL}`]),
    ),
    ...findingRecords(sheet.findings, 'finding'),
  ];
}

/** bed … · advice … · ahead day at through-L ± P10 P50 P90. */
export function curveRecords(sheet: BedSheet): string[] {
  const points = sheet.plot?.curve.filter(({ isAhead }) => isAhead) ?? [];
  return [
    bedRecord(sheet.bed),
    ...adviceRecords(sheet),
    ...points.map(({ day, at, throughputL, throughputU95L, q10, q50, q90 }) =>
      record([
        'ahead',
        `${Math.floor(day)}`,
        at,
        ...fieldsOf({ value: throughputL, u95: throughputU95L }),
        ...[q10, q50, q90].map((value) => value.toFixed(2)),
      ]),
    ),
  ];
}

function adviceRecords({ advice }: BedSheet): string[] {
  if (advice === null) return [];
  return [record(['advice', advice.verdict, signed(advice.texts.join(' '), 'plain')])];
}
