// When the biocide of standing water falls below the least: as quantiles, from its level, the rate of its wall, and the doubt of both.
import type { FallingLevel } from '../account/index.ts';
import { log, normalCdf, normalQuantile, rootBetween } from '../ground/maths/index.ts';

export interface BiocideEnds {
  /** Days from now: in 1 of 20 outcomes it is below by then. Null: not within a hundred years. */
  readonly q05: number | null;
  readonly q50: number | null;
  readonly q95: number | null;
}

const LONGEST_DAYS = 36_525;
const CLOSE = 1e-10;
/** Outcomes of the rate, equally likely, over which the rest is summed. */
const OUTCOMES = 200;

/**
 * Quantiles of the day on which c(t) = c₀ e^(−k (A/V) t) falls below the least, with ln c₀ and k normal with their covariance, and
 * k not below 0: a wall gives nothing back.
 * @param level as the account has it now; one without a rate tells no day
 * @param water `leastMgPerL` above 0 and `areaPerVolumePerM` of the present content, 1/m, above 0: it is taken to stay as it is
 * @returns null where no rate is known
 * @throws RangeError for a figure that is no number or out of its range
 * @source first-order-loss; derived from the normal distribution, see docs/methods/biocide.md
 * @example biocideEnds(level, { leastMgPerL: 0.05, areaPerVolumePerM: 23 })?.q50 // days
 */
export function biocideEnds(
  level: FallingLevel,
  water: { readonly leastMgPerL: number; readonly areaPerVolumePerM: number },
): BiocideEnds | null {
  if (level.rate === null) return null;
  mustBeSound(level, water);
  const outcomes = outcomesOf(level, { ...level.rate, ...water });
  const belowBy = (days: number) => chanceBelow(outcomes, days);
  return { q05: dayOfShare(belowBy, 0.05), q50: dayOfShare(belowBy, 0.5), q95: dayOfShare(belowBy, 0.95) };
}

/** How likely it is that the level is below the least already. */
export function belowNow({ logMgPerL, uLog }: FallingLevel, leastMgPerL: number): number {
  const under = log(leastMgPerL) - logMgPerL;
  return uLog > 0 ? normalCdf(under / uLog) : under > 0 ? 1 : 0;
}

/** For one outcome of the rate: how far above the least the level is, the doubt that is left of it, and how fast it falls. */
interface Outcome {
  readonly above: number;
  readonly u: number;
  readonly perDay: number;
}

function outcomesOf(
  { logMgPerL, uLog, covariance }: FallingLevel,
  rate: {
    readonly metresPerDay: number;
    readonly u: number;
    readonly leastMgPerL: number;
    readonly areaPerVolumePerM: number;
  },
): readonly Outcome[] {
  const { metresPerDay, u, areaPerVolumePerM } = rate;
  const above = logMgPerL - log(rate.leastMgPerL);
  if (u === 0) return [{ above, u: uLog, perDay: Math.max(0, metresPerDay) * areaPerVolumePerM }];
  const drawn = covariance / (u * u);
  const left = Math.sqrt(Math.max(0, uLog * uLog - (covariance * covariance) / (u * u)));
  const impossible = normalCdf(-metresPerDay / u);
  return Array.from({ length: OUTCOMES }, (_, k) => {
    const share = impossible + ((k + 0.5) / OUTCOMES) * (1 - impossible);
    const off = u * normalQuantile(Math.min(share, 1 - 1e-16));
    // A rate that could hardly be above nought is taken as nought.
    const possible = Math.max(0, metresPerDay + off);
    return {
      above: above + drawn * (possible - metresPerDay),
      u: left,
      perDay: possible * areaPerVolumePerM,
    };
  });
}

function chanceBelow(outcomes: readonly Outcome[], days: number): number {
  const sum = outcomes.reduce((chance, { above, u, perDay }) => {
    const under = perDay * days - above;
    return chance + (u > 0 ? normalCdf(under / u) : under > 0 ? 1 : 0);
  }, 0);
  return sum / outcomes.length;
}

/** The chance grows from day to day, so that its passage is looked for in doublings of a day. */
function dayOfShare(belowBy: (days: number) => number, share: number): number | null {
  if (belowBy(0) >= share) return 0;
  let [low, high] = [0, 1];
  while (belowBy(high) < share) {
    if (high >= LONGEST_DAYS) return null;
    [low, high] = [high, Math.min(2 * high, LONGEST_DAYS)];
  }
  return rootBetween((days) => belowBy(days) - share, { low, high }, CLOSE);
}

function mustBeSound(
  { logMgPerL, uLog, rate, covariance }: FallingLevel,
  { leastMgPerL, areaPerVolumePerM }: { readonly leastMgPerL: number; readonly areaPerVolumePerM: number },
): void {
  const figures = [logMgPerL, covariance, rate?.metresPerDay ?? Number.NaN];
  const doubts = [uLog, rate?.u ?? Number.NaN];
  const aboveNought = [leastMgPerL, areaPerVolumePerM];
  const isSound =
    figures.every((figure) => Number.isFinite(figure)) &&
    doubts.every((u) => u >= 0 && u < Number.POSITIVE_INFINITY) &&
    aboveNought.every((figure) => figure > 0 && figure < Number.POSITIVE_INFINITY);
  if (!isSound)
    throw new RangeError(`no end can be told from ${[...figures, ...doubts, ...aboveNought].join(', ')}`);
}
