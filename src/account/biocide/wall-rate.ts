// How fast walls take a biocide, fitted to results: for one store, for what its kind has in common, and for both together.
import {
  type CensoredRow,
  censoredRegression,
  coefficientU,
  log,
  studentQuantile,
} from '../../ground/maths/index.ts';
import type { Instrument } from '../../outpost/index.ts';
import { type LogRow, readingU } from './result-doubt.ts';
import type { LevelResult, StoreStorage } from './storage.ts';

/** What a wall takes: metres of water a day, −ln(c/c₀) over the exposure. */
export interface WallRate {
  readonly metresPerDay: number;
  /** One standard deviation. */
  readonly u: number;
  /** `own`: from results of this store; `kind`: from other stores of its kind; `both`. */
  readonly from: 'own' | 'kind' | 'both';
  readonly results: number;
  /** Other stores of the kind that spoke. */
  readonly stores: number;
}

/** The logarithm of the level now and how it falls from here: a line with the covariance of its two figures. */
export interface FallingLevel {
  readonly logMgPerL: number;
  readonly uLog: number;
  readonly rate: WallRate | null;
  /** Between the logarithm now and the rate. */
  readonly covariance: number;
}

/** So many other stores have to speak before a store without results is told by its kind. Ours, no source. */
const FEWEST_OF_KIND = 4;
const NORMAL_QUANTILE = 1.959963984540054;

/** Results of one stretch by the doubts of the instrument; none where those are not known. */
export function logResults(
  results: readonly LevelResult[],
  { biocide, instrument }: { readonly biocide: string; readonly instrument: Instrument | null },
): readonly LogRow[] {
  if (instrument === null) return [];
  const limit = instrument.detectionLimit ?? 0;
  return results.flatMap((result): LogRow[] => {
    if (result.parameter !== biocide) return [];
    // What is told as nought, or as less than can be seen, is told as less than can be seen.
    const below = result.below || result.valueMgPerL <= limit;
    const at = result.below ? result.valueMgPerL : Math.max(result.valueMgPerL, limit);
    const u = at > 0 ? readingU(instrument, at) : null;
    if (u === null) return [];
    return [{ log: log(at), u: u / at, below, exposureDaysPerM: result.exposureDaysPerM }];
  });
}

/** A relation of its own height for each stretch, and one rate: rows over their doubts. */
export function rowsOf(stretches: readonly (readonly LogRow[])[]): CensoredRow[] {
  return stretches.flatMap((results, stretch) =>
    results.map(({ log: level, u, below, exposureDaysPerM }): CensoredRow => {
      const heights = stretches.map((_, at) => (at === stretch ? 1 / u : 0));
      const observed = below ? { atMost: level / u } : { value: level / u };
      return { design: [...heights, -exposureDaysPerM / u], observed };
    }),
  );
}

const hasValue = (results: readonly LogRow[]): boolean => results.some(({ below }) => !below);

export interface OwnRate {
  readonly metresPerDay: number;
  readonly u: number;
  readonly results: number;
}

/** From the store's own results alone; null without two in one stretch of which one is a value, or where they determine nothing. */
export function ownRate(stretches: readonly (readonly LogRow[])[]): OwnRate | null {
  const telling = stretches.filter((results) => results.length > 1 && hasValue(results));
  const rows = rowsOf(telling);
  if (rows.length === 0) return null;
  const fit = censoredRegression({ rows, scale: 1 });
  const at = telling.length;
  if (fit.verdict !== 'settled') return null;
  const u = coefficientU(fit, at) * widening(rows, fit.coefficients);
  return { metresPerDay: fit.coefficients[at] as number, u, results: rows.length };
}

/**
 * Results that scatter more than their doubts say make the rate less sure by as much; never surer. A limit that the relation
 * lies above counts as a value at that limit: it is off by at least so much.
 * @source birge-1932
 */
export function widening(rows: readonly CensoredRow[], coefficients: Float64Array): number {
  const offs = rows.flatMap(({ design, observed }) => {
    const fitted = design.reduce((sum, figure, k) => sum + figure * (coefficients[k] ?? 0), 0);
    if ('value' in observed) return [observed.value - fitted];
    return 'atMost' in observed && observed.atMost < fitted ? [observed.atMost - fitted] : [];
  });
  const degrees = offs.length - coefficients.length;
  if (degrees < 1) return 1;
  const squares = offs.reduce((sum, off) => sum + off * off, 0);
  return Math.max(1, Math.sqrt(squares / degrees));
}

export interface KindRate {
  readonly metresPerDay: number;
  /** Of one more store of the kind: what the mean is unsure, and what stores differ. */
  readonly u: number;
  readonly stores: number;
}

/**
 * What a further store of a kind may be expected to do, from the rates of others: their weighted mean, with how much they
 * differ beyond their own doubts (DerSimonian and Laird), as a prediction for one more (Higgins, Thompson and Spiegelhalter).
 * @returns null where fewer than four spoke
 * @source dersimonian-laird-1986; higgins-2009
 */
export function kindRate(others: readonly Pick<OwnRate, 'metresPerDay' | 'u'>[]): KindRate | null {
  if (others.length < FEWEST_OF_KIND) return null;
  const between = varianceBetween(others);
  const weights = others.map(({ u }) => 1 / (u * u + between));
  const all = weights.reduce((sum, weight) => sum + weight, 0);
  const mean = weightedMean(others, weights);
  // With few stores the spread between them is badly known: Student's factor with two degrees fewer says so.
  const student = studentQuantile({ probability: 0.975, degrees: others.length - 2 }) / NORMAL_QUANTILE;
  return { metresPerDay: mean, u: student * Math.sqrt(between + 1 / all), stores: others.length };
}

function varianceBetween(others: readonly Pick<OwnRate, 'metresPerDay' | 'u'>[]): number {
  const weights = others.map(({ u }) => 1 / (u * u));
  const all = weights.reduce((sum, weight) => sum + weight, 0);
  const squares = weights.reduce((sum, weight) => sum + weight * weight, 0);
  const mean = weightedMean(others, weights);
  const spread = others.reduce((sum, { metresPerDay }, k) => {
    const off = metresPerDay - mean;
    return sum + (weights[k] as number) * off * off;
  }, 0);
  return Math.max(0, (spread - (others.length - 1)) / (all - squares / all));
}

function weightedMean(others: readonly Pick<OwnRate, 'metresPerDay'>[], weights: readonly number[]): number {
  const all = weights.reduce((sum, weight) => sum + weight, 0);
  return others.reduce((sum, { metresPerDay }, k) => sum + (weights[k] as number) * metresPerDay, 0) / all;
}

/**
 * The level of the present water and its fall, from all results of the store and from what its kind says, as one fit.
 * @returns null where no value of the present stretch is known: limits alone tell no level
 */
export function fallingLevel(
  of: Pick<StoreStorage, 'exposureDaysPerM'>,
  stretches: readonly (readonly LogRow[])[],
  kind: KindRate | null,
): FallingLevel | null {
  const present = stretches.at(-1);
  if (present === undefined || !hasValue(present)) return null;
  const telling = [...stretches.slice(0, -1).filter((each) => each.length > 1 && hasValue(each)), present];
  const own = rowsOf(telling);
  const rows = kind === null ? own : [...own, rowOfKind(kind, telling.length)];
  const fit = censoredRegression({ rows, scale: 1 });
  if (fit.verdict !== 'settled' || fit.covariance === null) return levelAlone(present);
  const [height, rate] = [telling.length - 1, telling.length];
  const { values, columns } = fit.covariance;
  const wide = widening(rows, fit.coefficients);
  const shared = (a: number, b: number) => wide * wide * (values[a * columns + b] as number);
  const x = of.exposureDaysPerM;
  const metresPerDay = fit.coefficients[rate] as number;
  return {
    logMgPerL: (fit.coefficients[height] as number) - x * metresPerDay,
    uLog: Math.sqrt(shared(height, height) - 2 * x * shared(height, rate) + x * x * shared(rate, rate)),
    rate: {
      metresPerDay,
      u: Math.sqrt(shared(rate, rate)),
      ...restsOn(telling, kind),
    },
    covariance: shared(height, rate) - x * shared(rate, rate),
  };
}

function restsOn(
  telling: readonly (readonly LogRow[])[],
  kind: KindRate | null,
): Pick<WallRate, 'from' | 'results' | 'stores'> {
  const speaking = telling.filter((each) => each.length > 1);
  const from = kind === null ? 'own' : speaking.length > 0 ? 'both' : 'kind';
  return { from, results: speaking.flat().length, stores: kind?.stores ?? 0 };
}

/** The rate alone, where the present water has no value to begin from: from earlier water of the store and from its kind. */
export function rateWithoutLevel(own: OwnRate | null, kind: KindRate | null): WallRate | null {
  if (own === null && kind === null) return null;
  const results = own?.results ?? 0;
  const stores = kind?.stores ?? 0;
  const speaking = [own, kind].filter((each) => each !== null);
  const weights = speaking.map(({ u }) => 1 / (u * u));
  const all = weights.reduce((sum, weight) => sum + weight, 0);
  const from = own === null ? 'kind' : kind === null ? 'own' : 'both';
  return { metresPerDay: weightedMean(speaking, weights), u: 1 / Math.sqrt(all), from, results, stores };
}

/** What the kind says, as one more result that speaks of the rate alone. */
function rowOfKind({ metresPerDay, u }: KindRate, heights: number): CensoredRow {
  return { design: [...Array(heights).fill(0), 1 / u], observed: { value: metresPerDay / u } };
}

/** Without a rate: the level as it was read, for that moment and no other. */
function levelAlone(present: readonly LogRow[]): FallingLevel | null {
  const rows = present.map(
    ({ log: level, u, below }): CensoredRow => ({
      design: [1 / u],
      observed: below ? { atMost: level / u } : { value: level / u },
    }),
  );
  const fit = censoredRegression({ rows, scale: 1 });
  if (fit.verdict !== 'settled') return null;
  const uLog = coefficientU(fit, 0) * widening(rows, fit.coefficients);
  return { logMgPerL: fit.coefficients[0] as number, uLog, rate: null, covariance: 0 };
}
