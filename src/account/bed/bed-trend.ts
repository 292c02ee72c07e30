// What the readings behind the beds say of one quantity: whether it moves, and the curve that fits it.
import type { Instrument, Limit, OutpostIndex } from '../../outpost/index.ts';
import { type BedFit, fitBed, type ReadingDoubt } from './bed-fit.ts';
import { type BedResult, type BedStory, leadUsedL } from './bed-story.ts';
import { type Line, lineThrough } from './line-through.ts';

export type Moves = 'too few readings' | 'flat' | 'rising' | 'falling';

export interface BedTrend {
  readonly parameter: string;
  readonly unit: string;
  readonly limit: number;
  readonly limitId: string;
  readonly instrument: string | null;
  readonly doubt: ReadingDoubt;
  /** Of this standing, without water from before a change; the youngest ones. */
  readonly readings: readonly BedResult[];
  readonly moves: Moves;
  /** A straight line over time, in days; null with fewer than three readings. */
  readonly line: Line | null;
  /** Part of the way from the first reading to the limit that the line went: what is small is as good as flat. */
  readonly share: number | null;
  readonly fit: BedFit;
}

/** More readings teach nothing that these do not. */
const MOST_READINGS = 40;
const FEWEST_FOR_A_LINE = 3;
/** A trend that went less of the way to its limit is as good as flat. Ours, no source. */
const FLAT_SHARE = 0.1;
/** What a reading is known to without any word of its instrument: part of the limit, one standard deviation. Ours, no source. */
const UNTOLD_RANDOM = 0.05;

/**
 * One trend for each quantity that is read behind the beds and has an upper limit of the outpost.
 * @returns in the order of the outpost's limits
 */
export function bedTrends(index: OutpostIndex, story: BedStory): readonly BedTrend[] {
  const life = index.outpost.units.find(({ id }) => id === story.unit);
  if (life?.kind !== 'purifier' || life.beds === undefined) return [];
  const { nominalL: lifeL, capacityDoubtL: lifeUL } = life.beds;
  return index.outpost.limits.flatMap((limit) => {
    if (limit.atMost === undefined || limit.status !== 'policy' || !OF_A_BED.has(limit.quantity)) return [];
    const isRead = story.results.some(
      ({ parameter, unit }) => parameter === limit.quantity && unit === limit.unit,
    );
    return isRead ? [trendOf(index, story, { limit, most: limit.atMost, lifeL, lifeUL })] : [];
  });
}

/** What a bed is there to hold: organics by their carbon, ions by what they conduct. Germs and biocides come and go by other ways. */
const OF_A_BED: ReadonlySet<string> = new Set(['TOC', 'conductivity']);

function trendOf(
  index: OutpostIndex,
  story: BedStory,
  of: { readonly limit: Limit; readonly most: number; readonly lifeL: number; readonly lifeUL: number },
): BedTrend {
  const { limit, most, lifeL, lifeUL } = of;
  const instrument = index.outpost.instruments.find(
    ({ quantity, unit }) => quantity === limit.quantity && unit === limit.unit,
  );
  const doubt = doubtOf(instrument, most);
  const readings = ownReadings(story, limit).slice(-MOST_READINGS);
  const line = readings.length < FEWEST_FOR_A_LINE ? null : lineThrough(readings, doubt.random);
  const share = line === null ? null : (line.end - line.begin) / Math.max(most - line.begin, most * 0.05);
  return {
    parameter: limit.quantity,
    unit: limit.unit,
    limit: most,
    limitId: limit.id,
    instrument: instrument?.id ?? null,
    doubt,
    readings,
    moves: movesOf(line, share),
    line,
    share,
    // The doubt of where the counting of litres began is one of where the limit is met, too.
    fit: fitBed(readings, doubt, { lifeL, lifeUL: together(lifeUL, leadUsedL(story).uL), limit: most }),
  };
}

/** Of this standing of the beds, in its unit. */
function ownReadings({ results, standing }: BedStory, { quantity, unit }: Limit): readonly BedResult[] {
  return results.filter(
    (one) => one.parameter === quantity && one.unit === unit && !one.isMixed && one.atMs >= standing.sinceMs,
  );
}

function movesOf(line: Line | null, share: number | null): Moves {
  if (line === null || share === null) return 'too few readings';
  if (Math.abs(line.perDay) <= 2 * line.perDayU) return 'flat';
  if (line.perDay < 0) return 'falling';
  return share < FLAT_SHARE ? 'flat' : 'rising';
}

function doubtOf(instrument: Instrument | undefined, limit: number): ReadingDoubt {
  const { random, calibration, resolution = 0 } = instrument ?? {};
  const told =
    random === undefined ? UNTOLD_RANDOM * limit : (random.absolute ?? 0) + (random.relative ?? 0) * limit;
  const ofResolution = resolution / Math.sqrt(12);
  return {
    random: Math.max(1e-9 * limit, Math.sqrt(told * told + ofResolution * ofResolution)),
    calibration: Math.min(0.3, (calibration?.relative ?? 0) + (calibration?.absolute ?? 0) / limit),
  };
}

function together(one: number, other: number): number {
  return Math.sqrt(one * one + other * other);
}
