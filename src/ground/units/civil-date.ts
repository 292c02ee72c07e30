// Dates of the Gregorian calendar as whole days, by integer arithmetic of our own.

export interface CivilDate {
  readonly year: number;
  /** 1 to 12. */
  readonly month: number;
  /** 1 to 31. */
  readonly day: number;
}

const daysIn400Years = 146_097;
/** Days from 0000-03-01 to 1970-01-01. */
const daysToEpoch = 719_468;
const monthLengths = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31] as const;
const weekdays = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'] as const;

export function isLeapYear(year: number): boolean {
  return year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0);
}

/** The number of days of a month; 0 if the month is not 1 to 12. */
export function daysInMonth(year: number, month: number): number {
  return month === 2 && isLeapYear(year) ? 29 : (monthLengths[month - 1] ?? 0);
}

/**
 * Days since 1970-01-01. Years are counted from March, so that the leap day is a year's last day and needs no case of its own.
 * @example daysFromCivil({ year: 1970, month: 1, day: 2 }) // 1
 */
export function daysFromCivil({ year, month, day }: CivilDate): number {
  const marchYear = month <= 2 ? year - 1 : year;
  const era = Math.floor(marchYear / 400);
  const yearOfEra = marchYear - era * 400;
  const marchMonth = (month + 9) % 12;
  const dayOfYear = Math.floor((153 * marchMonth + 2) / 5) + day - 1;
  const dayOfEra = yearOfEra * 365 + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100) + dayOfYear;
  return era * daysIn400Years + dayOfEra - daysToEpoch;
}

/** The date that lies so many days after 1970-01-01: the inverse of `daysFromCivil`. */
export function civilFromDays(days: number): CivilDate {
  const shifted = days + daysToEpoch;
  const era = Math.floor(shifted / daysIn400Years);
  const dayOfEra = shifted - era * daysIn400Years;
  const leapless =
    dayOfEra - Math.floor(dayOfEra / 1_460) + Math.floor(dayOfEra / 36_524) - Math.floor(dayOfEra / 146_096);
  const yearOfEra = Math.floor(leapless / 365);
  const dayOfYear = dayOfEra - (365 * yearOfEra + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100));
  const marchMonth = Math.floor((5 * dayOfYear + 2) / 153);
  const day = dayOfYear - Math.floor((153 * marchMonth + 2) / 5) + 1;
  const month = marchMonth < 10 ? marchMonth + 3 : marchMonth - 9;
  return { year: yearOfEra + era * 400 + (month <= 2 ? 1 : 0), month, day };
}

/** `Mon` to `Sun`. 1970-01-01 was a Thursday. */
export function weekdayOf(days: number): string {
  const fromMonday = (((days + 3) % 7) + 7) % 7;
  return weekdays[fromMonday] ?? '';
}
