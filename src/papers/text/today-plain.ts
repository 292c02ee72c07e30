// Today for programs: one record a line, its first field says what it is; times in ISO 8601, hours and days as numbers.
import { roundCoverDays } from '../../ground/units/index.ts';
import type { CoverFigure, StoreLine, TodaySheet } from '../sheets/today.ts';
import type { CoverAtRateFigure, ReadingWorth } from '../sheets/worth.ts';
import { amountOf, besideOf, fieldsOf, stockOf } from './figures.ts';
import { findingRecords } from './finding-records.ts';
import type { TextOptions } from './options.ts';
import { record } from './page.ts';
import { signed } from './signs.ts';
import { doubtFields } from './worth.ts';

/**
 * head outpost practice day at view people entries closed-to-day · silence … · cover grade q05 q50 q95 basis free ± unit use ± unit ·
 * rate grade which L-person-day people, days ± of free water, with the reserve to its floor, of the reserve alone ·
 * reserve amount ± unit floor · finding … · store id grade mark amount ± unit how-known age-hours port place · sum name amount ± unit ·
 * total amount ± unit · worth store way minutes people ± before, ± after, unit, grade reach, days ± before, days ± after · visit name berth-day depart-day aboard.
 */
export function todayPlain(sheet: TodaySheet, options: TextOptions): string[] {
  const text = (value: string) => signed(value, 'plain');
  const { head, silence, reserve, total } = sheet;
  return [
    record([
      'head',
      text(head.outpost),
      head.practice ? 'practice' : 'book',
      `D${head.day}`,
      head.at,
      head.view,
      `${head.peopleAboard}`,
      `${head.entries}`,
      head.closedToDay === null ? '' : `D${head.closedToDay}`,
    ]),
    ...(silence === null ? [] : findingRecords([silence], 'silence')),
    ...Object.entries(sheet.cover).map(([grade, cover]) =>
      record(['cover', text(grade), ...coverFields(cover, options)]),
    ),
    ...Object.entries(sheet.cover).flatMap(([grade, { atRates }]) =>
      (atRates ?? []).map((each) => rateRecord(grade, each)),
    ),
    ...(reserve === null
      ? []
      : [
          record([
            'reserve',
            ...amountFields(amountOf(reserve.volume, options)),
            fieldsOf(besideOf(reserve.floorL, reserve.volume, options))[0],
          ]),
        ]),
    ...findingRecords(sheet.findings, 'finding'),
    ...sheet.stores.map((store) => record(['store', ...storeFields(store, options)])),
    ...sheet.sums.map(({ name, volume }) =>
      record(['sum', text(name), ...amountFields(amountOf(volume, options))]),
    ),
    record(['total', ...amountFields(amountOf(total, options))]),
    ...sheet.readings.map((worth) => readingRecord(worth, options)),
    ...sheet.visits.map((visit) =>
      record([
        'visit',
        text(visit.visit),
        `D${visit.berthDay}`,
        visit.departDay === null ? '' : `D${visit.departDay}`,
        visit.aboard ? 'aboard' : '',
      ]),
    ),
  ];
}

function rateRecord(grade: string, at: CoverAtRateFigure): string {
  const days = [at.free, at.toFloor, at.reserve].flatMap(fieldsOf);
  return record([
    'rate',
    signed(grade, 'plain'),
    at.rate,
    `${at.litresPerPersonDay}`,
    `${at.people}`,
    ...days,
  ]);
}

export function readingRecord(worth: ReadingWorth, options: TextOptions): string {
  const { store, way, task, content, cover } = worth;
  const shown = { before: amountOf(content.before, options), after: amountOf(content.after, options) };
  return record([
    'worth',
    signed(store, 'plain'),
    way,
    task === null ? '' : `${task.minutes}`,
    task === null ? '' : `${task.people}`,
    ...doubtFields(shown),
    shown.before.unit,
    ...(cover === null ? ['', ''] : [signed(cover.grade, 'plain'), cover.reach]),
    ...doubtFields(cover?.days ?? null),
  ]);
}

function coverFields(cover: CoverFigure, options: TextOptions): string[] {
  const days = (value: number | null) => (value === null ? '' : roundCoverDays(value));
  const use = cover.use === null ? ['', '', ''] : amountFields(amountOf(cover.use, options));
  return [
    days(cover.q05),
    days(cover.q50),
    days(cover.q95),
    cover.basis,
    ...amountFields(amountOf(cover.free, options)),
    ...use,
  ];
}

function amountFields(amount: {
  readonly value: number;
  readonly u95: number | null;
  readonly unit: string;
}): string[] {
  return [...fieldsOf(amount), amount.unit];
}

export function storeFields(store: StoreLine, options: TextOptions): string[] {
  const { id, grade, mark, howKnown, age, port, place } = store;
  const texts = [id, grade ?? '', mark].map((value) => signed(value, 'plain'));
  const hours = age === null ? '' : `${Math.floor(age)}`;
  return [
    ...texts,
    ...amountFields(stockOf(store, options)),
    signed(howKnown, 'plain'),
    hours,
    ...[port ?? '', place].map((value) => signed(value, 'plain')),
  ];
}
