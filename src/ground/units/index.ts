// The door of ground/units: what other rooms may use.
export type { CivilDate } from './civil-date.ts';
export { civilFromDays, daysFromCivil, daysInMonth, isLeapYear, weekdayOf } from './civil-date.ts';
export { convert, convertAtDensity, convertDifference } from './convert.ts';
export type { Figure, Milligram } from './figure.ts';
export { milligrams } from './figure.ts';
export type { Finding, FindingData, Severity, Where } from './finding.ts';
export type { FigureStyle, Range, RoundedFigure } from './format-figure.ts';
export {
  formatFigure,
  formatRange,
  plusMinus,
  roundAtPlace,
  roundCoverDays,
  roundFigure,
  roundInTwoDigits,
  roundToDigits,
  styled,
} from './format-figure.ts';
export type { Instant } from './instant.ts';
export {
  formatDate,
  formatIso,
  formatIsoUtc,
  isInRange,
  msPerDay,
  msPerMinute,
  parseInstantIso,
} from './instant.ts';
export { editDistance, nearest } from './nearest.ts';
export type { DayRule } from './outpost-day.ts';
export {
  dayLineUtcMs,
  dayOf,
  dayStartUtcMs,
  formatClockUtc,
  formatDayCode,
  formatShortStamp,
  formatStamp,
} from './outpost-day.ts';
export type { NumberRule } from './parse-number.ts';
export { parseNumber } from './parse-number.ts';
export type { QuantityRule } from './parse-quantity.ts';
export { parseQuantity } from './parse-quantity.ts';
export type { WhenRule } from './parse-when.ts';
export { parseWhen } from './parse-when.ts';
export type { Read, UnitsFindingCode } from './quantity-finding.ts';
export { doubtAtPlace, roundParts } from './round-parts.ts';
export type { Dimension, Unit } from './unit-table.ts';
export { findUnit, UNITS, unitNamed, unitNamesOf, unitSign } from './unit-table.ts';
