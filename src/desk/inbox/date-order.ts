// Whether a table writes the day or the month first: declared, or proven by its dates; never the habit of a country.
import { civilFromDays, daysFromCivil, daysInMonth, msPerDay } from '../../ground/units/index.ts';
import type { DateOrder } from './options.ts';
import type { WrittenDate } from './written-time.ts';

/** The time in which what is told of this book can have happened. */
export interface BookSpan {
  readonly fromMs: number;
  readonly untilMs: number;
}

/** What the dates of a table prove; `open` when both orders fit all of them and they differ. */
export function provenOrder(dates: readonly WrittenDate[], span: BookSpan): DateOrder | 'open' | null {
  const open = dates.filter(({ order, first, second }) => order === 'open' && first !== second);
  if (open.length === 0) return null;
  const fits = (order: DateOrder) => open.every((date) => isDate(inOrder(date, order)));
  const byCalendar = one(fits('day-first'), fits('month-first'));
  if (byCalendar !== 'both') return byCalendar;
  // Outside of the book nothing can have happened: an order that leads there is not that of this table.
  const inside = (order: DateOrder) => open.every((date) => daysOf(inOrder(date, order), span).length > 0);
  const bySpan = one(inside('day-first'), inside('month-first'));
  return bySpan === 'both' || bySpan === null ? 'open' : bySpan;
}

function one(dayFirst: boolean, monthFirst: boolean): DateOrder | 'both' | null {
  if (dayFirst && monthFirst) return 'both';
  if (!(dayFirst || monthFirst)) return null;
  return dayFirst ? 'day-first' : 'month-first';
}

export interface MonthAndDay {
  readonly year: number | null;
  readonly shortYear: boolean;
  readonly month: number;
  readonly day: number;
}

export function inOrder(
  { year, shortYear, order, first, second }: WrittenDate,
  open: DateOrder,
): MonthAndDay {
  const isDayFirst = order === 'open' && open === 'day-first';
  return { year, shortYear, month: isDayFirst ? second : first, day: isDayFirst ? first : second };
}

/** In some year: the 29th of February is a date. */
export function isDate({ month, day }: MonthAndDay): boolean {
  return day >= 1 && day <= daysInMonth(2000, month);
}

/** Every date, as days since 1970-01-01, that it can be within the book; a whole year leaves one, wherever that lies. */
export function daysOf(date: MonthAndDay, span: BookSpan): readonly number[] {
  if (date.year !== null && !date.shortYear) return dated(date, date.year).filter((days) => isIn(days, span));
  const [from, until] = [yearAt(span.fromMs), yearAt(span.untilMs)];
  const years = Array.from({ length: Math.min(MOST_YEARS, until - from + 1) }, (_, k) => from + k);
  return years
    .filter((year) => date.year === null || year % 100 === date.year)
    .flatMap((year) => dated(date, year))
    .filter((days) => isIn(days, span));
}

const MOST_YEARS = 400;

export function dated({ month, day }: MonthAndDay, year: number): readonly number[] {
  return day >= 1 && day <= daysInMonth(year, month) ? [daysFromCivil({ year, month, day })] : [];
}

/** A date may lie a day outside by another clock. */
function isIn(days: number, { fromMs, untilMs }: BookSpan): boolean {
  return (days + 2) * msPerDay > fromMs && (days - 1) * msPerDay <= untilMs;
}

function yearAt(utcMs: number): number {
  return civilFromDays(Math.floor(utcMs / msPerDay)).year;
}
