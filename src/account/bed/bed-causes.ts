// The same symptom may have several causes: each with what speaks for it and against it in figures, the likeliest first.
import { msPerDay } from '../../ground/units/index.ts';
import { type BedStory, leadUsedL } from './bed-story.ts';
import type { BedTrend } from './bed-trend.ts';
import { lineThrough } from './line-through.ts';

export type BedCause =
  | 'organic breakthrough'
  | 'ionic exhaustion'
  | 'stronger feed'
  | 'instrument drift'
  | 'sample or cartridge'
  | 'temperature';

export type EvidenceKind =
  | 'moves'
  | 'not read'
  | 'use against life'
  | 'feed read'
  | 'litres a day'
  | 'rise against calibration'
  | 'other water'
  | 'last off the line'
  | 'one reading'
  | 'readings in a row'
  | 'warmer';

/** A figure that bears on a cause; which numbers stand in it goes by its kind. */
export interface Evidence {
  readonly kind: EvidenceKind;
  /** 1 and 2 speak for the cause, −1 and −2 against it, 0 leaves it open. */
  readonly weight: -2 | -1 | 0 | 1 | 2;
  readonly parameter: string;
  readonly unit: string;
  readonly value: number;
  readonly u: number;
  /** What it is held against: a limit, a life, an earlier figure. */
  readonly against: number;
  readonly moves: BedTrend['moves'] | null;
}

export interface RankedCause {
  readonly cause: BedCause;
  readonly evidence: readonly Evidence[];
  /** The sum of the weights: for the order alone, and no probability. */
  readonly score: number;
}

/** Part by which a feed is more than it was before anybody calls it more. Ours, no source. */
const MORE_FEED = 0.15;
const RECENT_DAYS = 5;
/** Of water, at 25 °C. @source standard-methods (2510) */
const CONDUCTIVITY_PER_K = 0.0191;
/** A reading that is so many standard deviations off the line through the others is doubted. */
const OFF = 3;

/**
 * Causes of what rises behind the beds, the best supported first; none where nothing rises.
 *
 * The order is by the sum of whole weights; no probability is made of it.
 */
export function bedCauses(story: BedStory, trends: readonly BedTrend[]): readonly RankedCause[] {
  const rising = trends.filter(({ moves }) => moves === 'rising');
  if (rising.length === 0) return [];
  const organic = trends.find(({ parameter }) => parameter === 'TOC') ?? null;
  const ionic = trends.find(({ parameter }) => parameter === 'conductivity') ?? null;
  const [first] = rising as [BedTrend];
  const all: readonly { cause: BedCause; evidence: readonly Evidence[] }[] = [
    {
      cause: 'organic breakthrough',
      evidence: [movesFor(organic, 'TOC', 1), flatFor(ionic), useFor(story, first)],
    },
    { cause: 'ionic exhaustion', evidence: [movesFor(ionic, 'conductivity', 2), useFor(story, first)] },
    { cause: 'stronger feed', evidence: [feedRead(story, first), litresADay(story)] },
    { cause: 'instrument drift', evidence: [riseFor(first), otherWater(story, first)] },
    { cause: 'sample or cartridge', evidence: [lastFor(first), inARow(first)] },
    { cause: 'temperature', evidence: [warmer(story, first)] },
  ];
  const scored = all.map(({ cause, evidence }) => ({
    cause,
    evidence,
    score: evidence.reduce((sum, { weight }) => sum + weight, 0),
  }));
  // A stable order: of causes with the same support the one that is named first above.
  return scored.sort((a, b) => b.score - a.score);
}

const nothing = { parameter: '', unit: '', value: 0, u: 0, against: 0, moves: null };

function moved(trend: BedTrend): Omit<Evidence, 'weight'> {
  const { parameter, unit, line, limit, moves } = trend;
  return {
    kind: 'moves',
    parameter,
    unit: `${unit} a day`,
    value: line?.perDay ?? 0,
    u: line?.perDayU ?? 0,
    against: limit,
    moves,
  };
}

function notRead(parameter: string): Evidence {
  return { ...nothing, kind: 'not read', weight: 0, parameter };
}

/** It should rise. */
function movesFor(trend: BedTrend | null, parameter: string, strength: 1 | 2): Evidence {
  if (trend === null || trend.moves === 'too few readings') return notRead(parameter);
  const against = strength === 2 ? -2 : -1;
  return { ...moved(trend), weight: trend.moves === 'rising' ? strength : against };
}

/** It should not rise. */
function flatFor(trend: BedTrend | null): Evidence {
  if (trend === null || trend.moves === 'too few readings') return notRead('conductivity');
  return { ...moved(trend), weight: trend.moves === 'rising' ? -2 : 2 };
}

function useFor(story: BedStory, { fit }: BedTrend): Evidence {
  const { valueL, uL } = leadUsedL(story);
  const { lifeL, lifeUL } = fit.prior;
  const isDue = valueL >= lifeL - 2 * lifeUL;
  return {
    ...nothing,
    kind: 'use against life',
    weight: isDue ? 1 : -1,
    unit: 'L',
    value: valueL,
    u: uL,
    against: lifeL,
  };
}

function feedRead({ feedResults, standing }: BedStory, { parameter, unit }: BedTrend): Evidence {
  const read = feedResults.filter(
    (one) => one.parameter === parameter && one.unit === unit && one.atMs >= standing.sinceMs,
  );
  if (read.length < 3) return { ...notRead(parameter), kind: 'feed read' };
  const line = lineThrough(read, 0.1 * (read[0]?.value ?? 1));
  const isMore = line.perDay > 2 * line.perDayU;
  const figures = { value: line.perDay, u: line.perDayU, against: line.begin };
  return {
    ...nothing,
    ...figures,
    kind: 'feed read',
    weight: isMore ? 2 : -1,
    parameter,
    unit: `${unit} a day`,
  };
}

/** Litres of the last days against those of the standing before them. */
function litresADay({ fed, standing }: BedStory): Evidence {
  const own = fed.filter(({ endMs }) => endMs > standing.sinceMs);
  const [before, recent] = [own.slice(0, -RECENT_DAYS), own.slice(-RECENT_DAYS)];
  const rate = (days: typeof own): number =>
    days.reduce((sum, { massMg }) => sum + massMg, 0) /
    Math.max(
      1,
      days.reduce((sum, { days: n }) => sum + n, 0),
    );
  if (before.length < RECENT_DAYS)
    return { ...nothing, kind: 'litres a day', weight: 0, unit: 'mg a day', value: rate(recent) };
  const [was, is] = [rate(before), rate(recent)];
  const spread = Math.sqrt(
    before.reduce((sum, one) => sum + (one.massMg / one.days - was) * (one.massMg / one.days - was), 0) /
      before.length,
  );
  const u = spread * Math.sqrt(1 / recent.length + 1 / before.length);
  const isMore = is > was * (1 + MORE_FEED) && is - was > 2 * u;
  return {
    ...nothing,
    kind: 'litres a day',
    weight: isMore ? 1 : -1,
    unit: 'mg a day',
    value: is,
    u,
    against: was,
  };
}

/** How far it rose, against what the declared calibration could make of it. */
function riseFor({ line, doubt, parameter, unit, moves }: BedTrend): Evidence {
  const rise = (line?.end ?? 0) - (line?.begin ?? 0);
  const couldBe = 2 * doubt.calibration * (line?.end ?? 0);
  const weight = rise > couldBe ? -1 : 1;
  return {
    kind: 'rise against calibration',
    weight,
    parameter,
    unit,
    value: rise,
    u: 0,
    against: couldBe,
    moves,
  };
}

/** The same instrument on other water in the same time. */
function otherWater({ elsewhere, standing }: BedStory, { parameter, unit }: BedTrend): Evidence {
  const read = elsewhere.filter(
    (one) => one.parameter === parameter && one.unit === unit && one.atMs >= standing.sinceMs,
  );
  if (read.length < 3) return { ...notRead(parameter), kind: 'other water' };
  const line = lineThrough(read, 0.1 * (read[0]?.value ?? 1));
  const isRising = line.perDay > 2 * line.perDayU;
  const figures = { value: line.perDay, u: line.perDayU, against: line.begin };
  return {
    ...nothing,
    ...figures,
    kind: 'other water',
    weight: isRising ? 2 : -1,
    parameter,
    unit: `${unit} a day`,
  };
}

function lastFor({ line, parameter }: BedTrend): Evidence {
  const off = line?.lastOff ?? null;
  if (off === null) return { ...nothing, kind: 'one reading', weight: 0, parameter };
  return {
    ...nothing,
    kind: 'last off the line',
    weight: Math.abs(off) > OFF ? 2 : -1,
    parameter,
    value: off,
    against: OFF,
  };
}

/** Readings one after another that each stand above the one before: as many faults of a sample. */
function inARow({ readings, parameter }: BedTrend): Evidence {
  let row = 0;
  for (let k = readings.length - 1; k > 0; k--) {
    if ((readings[k]?.value ?? 0) <= (readings[k - 1]?.value ?? 0)) break;
    row += 1;
  }
  const weight = row >= 2 ? -1 : 1;
  return { ...nothing, kind: 'readings in a row', weight, parameter, value: row, against: readings.length };
}

/** Warmer water conducts better; its carbon is the same. */
function warmer({ cabin }: BedStory, { parameter, unit, readings, line }: BedTrend): Evidence {
  const near = (atMs: number | undefined) =>
    cabin.findLast((one) => one.atMs <= (atMs ?? 0) + msPerDay)?.temperatureC ?? null;
  const [from, to] = [near(readings[0]?.atMs), near(readings.at(-1)?.atMs)];
  if (from === null || to === null) return { ...notRead('temperature'), kind: 'warmer' };
  const rise = (line?.end ?? 0) - (line?.begin ?? 0);
  const explained = parameter === 'conductivity' ? CONDUCTIVITY_PER_K * (to - from) * (line?.begin ?? 0) : 0;
  const weight = explained > rise / 2 ? 2 : -2;
  return {
    ...nothing,
    kind: 'warmer',
    weight,
    parameter,
    unit,
    value: to - from,
    u: explained,
    against: rise,
  };
}
