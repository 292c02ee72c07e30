// A straight line through readings over time: how fast something moves, and whether that is more than the readings' own doubt.
import { msPerDay } from '../../ground/units/index.ts';

export interface Line {
  /** By how much it changes in a day, and one standard deviation of that. */
  readonly perDay: number;
  readonly perDayU: number;
  /** On the line at the first and at the last reading. */
  readonly begin: number;
  readonly end: number;
  readonly days: number;
  /** How far the last reading stands off the line through all the others, in standard deviations; null with fewer than four. */
  readonly lastOff: number | null;
}

interface TimedReading {
  readonly atMs: number;
  readonly value: number;
}

const FEWEST_FOR_LAST = 4;

/**
 * Least squares, every reading with the same doubt; readings that scatter more than that widen it.
 * @param readings three or more, in the order of time; one below a detection limit counts as that limit
 * @param u of a reading, one standard deviation, above 0
 * @throws RangeError with fewer than two instants
 * @source gum (H.3); the scatter by Birge's ratio, common practice
 * @example lineThrough([{ atMs: 0, value: 1 }, { atMs: 86400000, value: 2 }, { atMs: 172800000, value: 3 }], 0.1).perDay // 1
 */
export function lineThrough(readings: readonly TimedReading[], u: number): Line {
  const all = fitted(readings, u);
  const last = readings.at(-1) as TimedReading;
  const others = readings.length < FEWEST_FOR_LAST ? null : fitted(readings.slice(0, -1), u);
  return {
    perDay: all.slope,
    perDayU: all.slopeU,
    begin: all.at(readings[0]?.atMs ?? 0),
    end: all.at(last.atMs),
    days: (last.atMs - (readings[0]?.atMs ?? 0)) / msPerDay,
    lastOff: others === null ? null : (last.value - others.at(last.atMs)) / others.uOfNew(last.atMs),
  };
}

interface Fitted {
  readonly slope: number;
  readonly slopeU: number;
  readonly at: (ms: number) => number;
  /** Of a new reading less what the line says of it. */
  readonly uOfNew: (ms: number) => number;
}

function fitted(readings: readonly TimedReading[], u: number): Fitted {
  const count = readings.length;
  const days = readings.map(({ atMs }) => atMs / msPerDay);
  const meanDay = sum(days) / count;
  const mean = sum(readings.map(({ value }) => value)) / count;
  const squares = sum(days.map((day) => (day - meanDay) * (day - meanDay)));
  if (!(squares > 0)) throw new RangeError('a line wants readings of two instants or more');
  const slope = sum(readings.map(({ value }, k) => ((days[k] ?? 0) - meanDay) * (value - mean))) / squares;
  const at = (ms: number): number => mean + slope * (ms / msPerDay - meanDay);
  const chiSquare = sum(
    readings.map(({ atMs, value }) => ((value - at(atMs)) / u) * ((value - at(atMs)) / u)),
  );
  const birge = count > 2 ? Math.max(1, Math.sqrt(chiSquare / (count - 2))) : 1;
  const own = u * birge;
  return {
    slope,
    slopeU: own / Math.sqrt(squares),
    at,
    uOfNew: (ms) => {
      const off = ms / msPerDay - meanDay;
      return own * Math.sqrt(1 + 1 / count + (off * off) / squares);
    },
  };
}

function sum(values: readonly number[]): number {
  return values.reduce((all, value) => all + value, 0);
}
