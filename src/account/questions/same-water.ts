// Two counters that the same water passes: what comes into a purifier's buffer, and what the purifier makes of it.
import type { Entry } from '../../book/index.ts';
import type { Fold } from '../fold.ts';
import type { Counted } from './counted.ts';
import { fittingReading } from './fitting.ts';
import { askFigure } from './question.ts';

/** The two agree within this part, or within this many litres of a buffer that was left fuller. Ours, no source. */
const AGREE_SHARE = 0.12;
const AGREE_L = 0.6;

/**
 * Holds a purifier's counter against what came into its buffer. Where the two agree, both are borne out, however odd a day it
 * was: a fault of the condenser, a bag that was emptied into the buffer. Where they do not, the one that is further from its own
 * habit is asked about, once.
 * @returns the counters that are borne out
 */
export function askSameWater(
  fold: Fold,
  entry: Entry<'day-line'>,
  counted: readonly Counted[],
): ReadonlySet<string> {
  const borneOut = new Set<string>();
  for (const unit of fold.index.outpost.units) {
    const source = unit.kind === 'purifier' && unit.keepsInBufferL !== undefined ? unit.takes[0] : undefined;
    const made = counted.find(({ instrument }) => instrument.meters === unit.id);
    if (unit.kind !== 'purifier' || source === undefined || !('store' in source) || made === undefined)
      continue;
    const meters = metersInto(fold, source.store);
    const into = counted.filter(({ instrument }) => meters.includes(instrument.id));
    if (meters.length === 0 || into.length < meters.length) continue;
    const movedL = (fold.habits.movedInMg.get(source.store) ?? 0) / fold.mgPerL;
    const cameL = into.reduce((sum, { volumeL }) => sum + volumeL, movedL);
    const wantedL = cameL * unit.yieldShare;
    const key = `agree:${unit.id}`;
    if (Math.abs(made.volumeL - wantedL) <= Math.max(AGREE_L, AGREE_SHARE * wantedL)) {
      for (const { instrument } of [made, ...into]) borneOut.add(instrument.id);
      fold.habits.lastPerDayL.delete(key);
      continue;
    }
    if (!fold.habits.lastPerDayL.has(key))
      askOdder(fold, entry, { made, into, wantedL, movedL, yieldShare: unit.yieldShare });
    fold.habits.lastPerDayL.set(key, made.volumeL);
    for (const { instrument } of [made, ...into]) borneOut.add(instrument.id);
  }
  return borneOut;
}

/** Counters of what units bring into a store. */
function metersInto({ index }: Fold, store: string): readonly string[] {
  return index.outpost.instruments.flatMap(({ id, route, measures }) =>
    measures === 'flow' && route !== undefined && 'store' in route.to && route.to.store === store ? [id] : [],
  );
}

interface Odd {
  readonly made: Counted;
  readonly into: readonly Counted[];
  readonly wantedL: number;
  readonly movedL: number;
  readonly yieldShare: number;
}

/** How far a counter is from its own habit, as a factor of at least 1. */
function oddness({ expected, volumeL, days }: Counted): number {
  if (expected === null || volumeL <= 0) return 1;
  const perDayL = volumeL / Math.max(1, Math.round(days));
  return Math.max(1, expected.lowL / perDayL, perDayL / expected.highL);
}

function askOdder(
  fold: Fold,
  entry: Entry<'day-line'>,
  { made, into, wantedL, movedL, yieldShare }: Odd,
): void {
  const [first] = into;
  if (first === undefined) return;
  const isMade = oddness(made) >= oddness(first);
  const [odd, other] = isMade ? [made, first] : [first, made];
  const wanted = isMade ? wantedL : Math.max(0, made.volumeL / yieldShare - movedL);
  const range = { low: wanted / (1 + AGREE_SHARE), high: wanted * (1 + AGREE_SHARE) };
  const isRunning = odd.instrument.reading === 'runningTotal';
  const fit = isRunning
    ? null
    : fittingReading(
        odd.value,
        { kgPerL: fold.mgPerL / 1_000_000 },
        (value) => value >= range.low && value <= range.high,
      );
  askFigure(fold, entry, {
    ...{
      code: 'amount-implausible',
      of: odd.instrument.name,
      field: odd.instrument.id,
      against: 'other counter',
    },
    ...{ value: odd.volumeL, unit: 'L', name: other.instrument.name, fit, ...range },
  });
}
