// What a counter is expected to say: litres a person and day by this outpost's own lines, before them by its norms.
import type { Instrument } from '../../outpost/index.ts';
import type { Fold } from '../fold.ts';
import { spreadOf } from './habits.ts';

export interface Expected {
  /** Litres a day, from the fewest to the most people aboard since the last line. */
  readonly lowL: number;
  readonly highL: number;
  /** A day's amount may leave that range by this factor before anybody is asked. */
  readonly factor: number;
}

/** Ours, no source: exercise, rest days and a halved hand-wash stay inside; pounds, gallons and points do not. */
const LEAST_FACTOR = 1.6;
/** Counts of strokes and flushes: half as many by decision stay inside; nobody writes them in pounds. Ours, no source. */
const COUNTS_FACTOR = 2.2;
/** By the norm of a file alone. Ours, no source. */
const NORM_FACTOR = 2.2;
/** So many of an outpost's own standard deviations are usual. Ours, no source. */
const SPREADS = 6;
/** Fewer lines than this teach nothing. Ours, no source. */
const LEAST_LINES = 3;

/** Null where neither lines nor norms tell anything. */
export function expectedADay(fold: Fold, instrument: Instrument, peopleInLine: number): Expected | null {
  const { fewest, most } = fold.habits.people ?? { fewest: fold.peopleAboard, most: fold.peopleAboard };
  const people = { low: Math.min(fewest, peopleInLine), high: Math.max(most, peopleInLine) };
  const learned = spreadOf(fold.habits.perPersonDayL.get(instrument.id));
  if (learned !== null && learned.count >= LEAST_LINES && learned.mean > 0) {
    const least = instrument.litresPerCount === undefined ? LEAST_FACTOR : COUNTS_FACTOR;
    const factor = Math.max(least, 1 + (SPREADS * learned.sd) / learned.mean);
    return { lowL: learned.mean * people.low, highL: learned.mean * people.high, factor };
  }
  const norm = normOf(fold, instrument);
  return norm === null ? null : { lowL: norm * people.low, highL: norm * people.high, factor: NORM_FACTOR };
}

/** Litres a person and day by the outpost file. */
function normOf({ index }: Fold, { meters }: Instrument): number | null {
  const unit = meters === undefined ? undefined : index.units.get(meters);
  const { norms } = index.outpost;
  const vapourL = norms.vapourCollectedLPerPersonDay ?? null;
  switch (unit?.kind) {
    case 'dispenser':
      return norms.tapLPerPersonDay ?? null;
    case 'condenser':
      return vapourL;
    case 'purifier':
      return vapourL === null ? null : vapourL * unit.yieldShare;
    case 'electrolyser':
      return norms.electrolyserLPerDay === undefined ? null : norms.electrolyserLPerDay / norms.people;
    case 'flush':
      return norms.flushesPerPersonDay === undefined ? null : norms.flushesPerPersonDay * unit.flushL;
    default:
      return null;
  }
}
