// Counters that were noted at a swap: what has been counted since the last line tells how late in the day it was.
import type { AnyEntry, CounterReading } from '../../book/index.ts';
import { msPerDay, msPerMinute } from '../../ground/units/index.ts';
import type { Instrument, Unit } from '../../outpost/index.ts';
import { mgPerCount } from '../counted-mass.ts';
import type { Fold } from '../fold.ts';
import { noteEntry } from '../note.ts';
import { expectedADay } from './expected-count.ts';
import { fittingReading } from './fitting.ts';
import { askFigure } from './question.ts';

/** A count may be ahead or behind by this part of a day's amount. Ours, no source: meals and a washing evening stay inside. */
const SLACK_SHARE = 0.25;
/** Clock slips that are tried: half a day, and the ground's clock. */
const HALF_DAY_MIN = 720;
const MINUTES_A_DAY = 1440;

interface Noted {
  readonly instrument: Instrument;
  readonly value: number;
  readonly volumeL: number;
  readonly lowADayL: number;
  readonly highADayL: number;
  readonly lineMs: number;
}

/** Asks about counters that do not fit the time of day at which they are said to have been read: about the time, or about the number. */
export function askSwapCounters(
  fold: Fold,
  entry: AnyEntry,
  readings: readonly CounterReading[],
  store?: string,
): void {
  const noted = readings.flatMap(({ instrument, value }) => notedOf(fold, instrument, value) ?? []);
  const odd = noted.filter((one) => !fitsTime(fold, one, entry.happenedAtMs));
  if (odd.length === 0) return;
  const shiftMin =
    odd.length > 1 || odd.length === noted.length ? shiftThatFits(fold, noted, entry.happenedAtMs) : null;
  const readsLikeFigures = odd.length < noted.length || shiftMin === null;
  if (readsLikeFigures) {
    for (const one of odd) askCount(fold, entry, one);
    return;
  }
  const data = {
    why: 'counters',
    instruments: odd.map(({ instrument }) => instrument.name),
    shiftMin,
    fitsAtMs: entry.happenedAtMs + shiftMin * msPerMinute,
  };
  noteEntry(fold, entry, { code: 'time-implausible', severity: 'act-today', store, data });
}

function notedOf(fold: Fold, id: string, value: number | null): Noted | null {
  const instrument = fold.index.instruments.get(id);
  if (value === null || instrument?.measures !== 'flow' || instrument.reading !== 'sinceLine') return null;
  const aDay = expectedADay(fold, instrument, fold.peopleAboard);
  const lineMs = fold.counters.get(id)?.lineMs ?? fold.openingMs;
  if (aDay === null || lineMs === null) return null;
  const volumeL = (value * mgPerCount(fold, instrument)) / fold.mgPerL;
  // What the last line said goes on for a while: a fault, a visit.
  const last = fold.habits.lastPerDayL.get(id) ?? aDay.lowL;
  const [lowADayL, highADayL] = [Math.min(aDay.lowL, last), Math.max(aDay.highL, last)];
  return { instrument, value, volumeL, lowADayL, highADayL, lineMs };
}

function fitsTime(fold: Fold, noted: Noted, atMs: number): boolean {
  const { low, high } = rangeAt(fold, noted, atMs);
  return noted.volumeL >= low && noted.volumeL <= high;
}

function rangeAt(fold: Fold, { instrument, lowADayL, highADayL, lineMs }: Noted, atMs: number) {
  const unit = instrument.meters === undefined ? undefined : fold.index.units.get(instrument.meters);
  const days = runningDays(fold, unit, lineMs, atMs);
  const slackL = SLACK_SHARE * highADayL;
  return { low: Math.max(0, lowADayL * days - slackL), high: highADayL * days + slackL };
}

function shiftThatFits(fold: Fold, noted: readonly Noted[], atMs: number): number | null {
  const groundMin = minutesOf(fold.index.outpost.outpost.groundClockOffset ?? '+00:00');
  const shifts = [-HALF_DAY_MIN, HALF_DAY_MIN, -groundMin, groundMin].filter((minutes) => minutes !== 0);
  return (
    shifts.find((minutes) => noted.every((one) => fitsTime(fold, one, atMs + minutes * msPerMinute))) ?? null
  );
}

function askCount(fold: Fold, entry: AnyEntry, noted: Noted): void {
  const { instrument, value } = noted;
  const { low, high } = rangeAt(fold, noted, entry.happenedAtMs);
  const perCountL = mgPerCount(fold, instrument) / fold.mgPerL;
  const counts = { low: low / perCountL, high: high / perCountL };
  const how = { kgPerL: fold.mgPerL / 1_000_000, litresPerCount: instrument.litresPerCount };
  const fit = fittingReading(value, how, (other) => other >= counts.low && other <= counts.high);
  askFigure(fold, entry, {
    ...{ code: 'amount-implausible', of: instrument.name, field: instrument.id, against: 'time of day' },
    ...{ value, unit: instrument.unit, fit, ...counts },
  });
}

/** Days of a unit's running hours between two instants; round the clock where the file names no hours. */
export function runningDays(fold: Fold, unit: Unit | undefined, fromMs: number, toMs: number): number {
  if (toMs <= fromMs) return 0;
  const hours = unit?.hours;
  if (hours === undefined) return (toMs - fromMs) / msPerDay;
  const [openMin, closeMin] = [clockMinutes(hours.from), clockMinutes(hours.to)];
  const lengthMin = closeMin > openMin ? closeMin - openMin : closeMin - openMin + MINUTES_A_DAY;
  const upTo = (ms: number): number => {
    const sinceOpen =
      (ms - fold.dayRule.dayOneUtcMs) / msPerMinute +
      minutesOf(fold.index.outpost.outpost.clockOffset) -
      openMin;
    const days = Math.floor(sinceOpen / MINUTES_A_DAY);
    return days + Math.min(1, (sinceOpen - days * MINUTES_A_DAY) / lengthMin);
  };
  return upTo(toMs) - upTo(fromMs);
}

/** `06:30` in minutes; a checked outpost file has no other form. */
function clockMinutes(text: string): number {
  const digit = (at: number) => text.charCodeAt(at) - 48;
  return (digit(0) * 10 + digit(1)) * 60 + digit(3) * 10 + digit(4);
}

/** `+05:30` in minutes. */
export function minutesOf(offset: string): number {
  const size = clockMinutes(offset.slice(1));
  return offset.startsWith('-') ? -size : size;
}
