// Counters of a day line, held against what this outpost counts in a day, and against each other where the same water passes both.
import type { Entry } from '../../book/index.ts';
import { msPerDay } from '../../ground/units/index.ts';
import type { Instrument } from '../../outpost/index.ts';
import { mgPerCount } from '../counted-mass.ts';
import { countedSince } from '../counter-state.ts';
import { LEAP_FACTOR } from '../counters.ts';
import type { Fold } from '../fold.ts';
import { type Expected, expectedADay } from './expected-count.ts';
import { fittingReading } from './fitting.ts';
import { learn } from './habits.ts';
import { askFigure } from './question.ts';

/** What comes twice within this is a new habit and no slip. Ours, no source. */
const ALIKE = 0.2;
/** A reading that is to fit keeps to the expected range by this factor. Ours, no source. */
const FIT_FACTOR = 1.3;
/** Intervals shorter than this belong to a second line on one day. Ours, no source. */
const LEAST_DAYS = 0.5;

/** What one counter says of the time since the last line. */
export interface Counted {
  readonly instrument: Instrument;
  /** As it was read. */
  readonly value: number;
  readonly volumeL: number;
  readonly days: number;
  readonly expected: Expected | null;
}

/** Everything that the counters of a line say, in which each is a plain amount; what fell or leapt is asked about where it is folded. */
export function countedIn(fold: Fold, entry: Entry<'day-line'>): Counted[] {
  const { readings, peopleAboard } = entry.body;
  const values = new Map(readings.map(({ instrument, value }) => [instrument, value]));
  return fold.instrumentsInOrder.flatMap((instrument) => {
    const value = values.get(instrument.id) ?? null;
    if (value === null || instrument.measures !== 'flow' || instrument.reading === 'amount') return [];
    const since = volumeSinceLine(fold, instrument, value);
    const lineMs = fold.counters.get(instrument.id)?.lineMs ?? fold.openingMs ?? entry.happenedAtMs;
    const days = (entry.happenedAtMs - lineMs) / msPerDay;
    if (since === null || days < LEAST_DAYS || isLeap(fold, instrument, since)) return [];
    const expected = expectedADay(fold, instrument, peopleAboard);
    return [{ instrument, value, volumeL: since, days, expected }];
  });
}

function volumeSinceLine(fold: Fold, instrument: Instrument, value: number): number | null {
  const state = fold.counters.get(instrument.id);
  const litresOf = (counts: number) => (counts * mgPerCount(fold, instrument)) / fold.mgPerL;
  if (instrument.reading !== 'runningTotal') return litresOf(value);
  if (state === undefined) return null;
  const rollsOverAt = instrument.rollsOverAt ?? null;
  const counted = countedSince(state, value, { running: true, rollsOverAt });
  return typeof counted === 'number' ? litresOf(counted) + state.sinceLineMg / fold.mgPerL : null;
}

/** @param explained counters that another counter bears out, however odd they are */
export function askCounted(
  fold: Fold,
  entry: Entry<'day-line'>,
  counted: readonly Counted[],
  explained: ReadonlySet<string>,
): void {
  for (const one of counted) {
    const { instrument, volumeL, days } = one;
    const perDayL = volumeL / Math.max(1, Math.round(days));
    const last = fold.habits.lastPerDayL.get(instrument.id);
    fold.habits.lastPerDayL.set(instrument.id, perDayL);
    const isAlike = last !== undefined && Math.abs(perDayL - last) <= ALIKE * last;
    if (isUsual(one.expected, perDayL) || isAlike || explained.has(instrument.id))
      learn(fold.habits.perPersonDayL, instrument.id, perDayL / Math.max(1, entry.body.peopleAboard));
    else askOne(fold, entry, one);
  }
}

export function isUsual(expected: Expected | null, perDayL: number): boolean {
  if (expected === null) return true;
  return perDayL * expected.factor >= expected.lowL && perDayL <= expected.highL * expected.factor;
}

function askOne(
  fold: Fold,
  entry: Entry<'day-line'>,
  { instrument, value, volumeL, expected }: Counted,
): void {
  if (expected === null) return;
  const perCountL = mgPerCount(fold, instrument) / fold.mgPerL;
  const [lowL, highL] = [expected.lowL / FIT_FACTOR, expected.highL * FIT_FACTOR];
  const isRunning = instrument.reading === 'runningTotal';
  const fit = isRunning
    ? null
    : fittingReading(
        value,
        { kgPerL: fold.mgPerL / 1_000_000, litresPerCount: instrument.litresPerCount },
        (other) => other * perCountL >= lowL && other * perCountL <= highL,
      );
  askFigure(fold, entry, {
    ...{ code: 'amount-implausible', of: instrument.name, field: instrument.id, against: 'usual', fit },
    ...(isRunning
      ? { value: volumeL, unit: 'L', low: lowL, high: highL }
      : { value, unit: instrument.unit, low: lowL / perCountL, high: highL / perCountL }),
  });
}

/** More than the unit can pass, or a total that fell, is said where it is folded. */
function isLeap(fold: Fold, { meters }: Instrument, volumeL: number): boolean {
  const limitL = meters === undefined ? undefined : fold.index.units.get(meters)?.limitLPerDay;
  return limitL !== undefined && volumeL > LEAP_FACTOR * limitL;
}
