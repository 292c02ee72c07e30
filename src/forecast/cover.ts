// Days of cover: when a stock that is drawn down at an uncertain rate is used up, as quantiles.
import { type FreeStock, freeStock, type Position, reserveStock } from '../account/index.ts';
import { type DailyUse, dailyUse } from './daily-use.ts';
import { normNetLPerPersonDay } from './norm-use.ts';

/** Standard normal quantile at 0.95. @source tables of the normal distribution, from memory; tested against ground/maths */
const Z95 = 1.6448536269514722;

export interface CoverQuantiles {
  /** Days: reached or passed in 19 of 20 outcomes. Null: not within any time, the stock does not fall. */
  readonly q05: number | null;
  readonly q50: number | null;
  readonly q95: number | null;
}

export interface Cover extends CoverQuantiles {
  readonly grade: string;
  readonly free: FreeStock;
  /** Use of the whole crew, milligrams a day; null without data. */
  readonly use: DailyUse | null;
  readonly useMgPerDay: number | null;
  readonly useUMgPerDay: number | null;
  /** The same for the free stock and what the reserve holds above its floor; only for the grade of the reserve. */
  readonly toFloor: CoverQuantiles | null;
}

/** Cover of one grade, from its free stock and its own learned daily use for the people aboard. */
export function coverOf(position: Position, grade: string): Cover {
  const free = freeStock(position, grade);
  const normL = normNetLPerPersonDay(position.index.outpost, grade);
  const use = dailyUse(position.usageDays(grade), normL === null ? null : normL * position.mgPerL);
  if (use === null)
    return { grade, free, use, useMgPerDay: null, useUMgPerDay: null, toFloor: null, ...never };
  const people = position.peopleAboard;
  const useMgPerDay = use.meanMg * people;
  const useUMgPerDay = use.meanUMg * people;
  // Noise of a day that remembers: over many days its variance grows by (1+ρ)/(1−ρ).
  const dayUMg = use.dayUMg * people * Math.sqrt((1 + use.memory) / (1 - use.memory));
  const drawn = { useMgPerDay, useUMgPerDay, dayUMg };
  const reserve = reserveStock(position);
  const holdsReserve = position.stores.some((store) => store.facts.reserve && store.grade === grade);
  const above = {
    massMg: free.massMg + reserve.massMg - reserve.floorMg,
    uMg: position.sumOf([...free.stores, ...reserve.stores]).uMg,
  };
  return {
    grade,
    free,
    use,
    useMgPerDay,
    useUMgPerDay,
    ...coverQuantiles(free, drawn),
    toFloor: holdsReserve ? coverQuantiles(above, drawn) : null,
  };
}

const never: CoverQuantiles = { q05: null, q50: null, q95: null };

interface Stock {
  readonly massMg: number;
  readonly uMg: number;
}

interface Drawn {
  readonly useMgPerDay: number;
  readonly useUMgPerDay: number;
  readonly dayUMg: number;
}

/**
 * Quantiles of the day on which a stock is used up: P(T ≤ t) = Φ((r t − S) / √(u(S)² + (u(r) t)² + σ² t)).
 * @param stock what is there and its doubt (one standard deviation), milligrams
 * @param drawn mean use a day, its doubt, and the noise of one day, milligrams
 * @returns days; 0 where nothing is there; null where the stock does not run out in that outcome
 * @throws RangeError for a figure that is no number, and for a doubt below 0
 * @source derived from the normal distribution; see docs/methods/cover.md
 * @example coverQuantiles({ massMg: 100, uMg: 0 }, { useMgPerDay: 4, useUMgPerDay: 0, dayUMg: 0 }).q50 is 25
 */
export function coverQuantiles(stock: Stock, drawn: Drawn): CoverQuantiles {
  for (const figure of [stock.massMg, drawn.useMgPerDay]) {
    if (!Number.isFinite(figure)) throw new RangeError(`a cover was asked of ${figure}`);
  }
  for (const doubt of [stock.uMg, drawn.useUMgPerDay, drawn.dayUMg]) {
    if (!(doubt >= 0 && Number.isFinite(doubt)))
      throw new RangeError(`a cover was asked with a doubt of ${doubt}`);
  }
  const q50 = median(stock, drawn);
  const [q05, q95] = [earlyDay(stock, drawn), lateDay(stock, drawn)];
  // Rounding may put two equal days an ulp apart.
  return {
    q05: q05 === null || q50 === null ? q05 : Math.min(q05, q50),
    q50,
    q95: q95 === null || q50 === null ? q95 : Math.max(q95, q50),
  };
}

function median({ massMg }: Stock, { useMgPerDay }: Drawn): number | null {
  if (massMg <= 0) return 0;
  return useMgPerDay > 0 ? massMg / useMgPerDay : null;
}

/** The first day that is reached by 1 of 20 outcomes. The stock itself may be nothing in that one. */
function earlyDay(stock: Stock, drawn: Drawn): number | null {
  const { roots, atStart } = crossings(stock, drawn);
  if (stock.massMg <= 0 || atStart <= 0) return 0;
  const reached = roots.filter((day) => day > 0);
  return reached.length === 0 ? null : Math.min(...reached);
}

/** The day that is passed by 1 of 20 outcomes; never where that one may have no use at all. */
function lateDay(stock: Stock, drawn: Drawn): number | null {
  const { roots, atStart, steepness } = crossings(stock, drawn);
  if (stock.massMg <= 0 && atStart >= 0) return 0;
  return drawn.useMgPerDay > 0 && steepness > 0 && roots.length > 0 ? Math.max(0, ...roots) : null;
}

/**
 * Days t at which (r t − S)² = z² (u(S)² + u(r)² t² + σ² t), that is a t² − 2 b t + c = 0: the early and the late crossing together.
 * The discriminant is written without a difference of near numbers, so that it is exactly 0 where nothing is in doubt.
 */
function crossings(
  stock: Stock,
  drawn: Drawn,
): { roots: readonly number[]; atStart: number; steepness: number } {
  const { massMg: s, uMg: us } = stock;
  const { useMgPerDay: r, useUMgPerDay: ur, dayUMg: sigma } = drawn;
  const zz = Z95 * Z95;
  const a = r * r - zz * ur * ur;
  const b = s * r + (zz * sigma * sigma) / 2;
  const c = s * s - zz * us * us;
  const quarter = (zz * sigma * sigma) / 2;
  const discriminant = zz * (r * r * us * us + ur * ur * c + s * r * sigma * sigma) + quarter * quarter;
  if (discriminant < 0) return { roots: [], atStart: c, steepness: a };
  const root = Math.sqrt(discriminant);
  // Citardauq form: no difference of two near numbers here either.
  const q = b < 0 ? b - root : b + root;
  return { roots: [q / a, c / q].filter(Number.isFinite), atStart: c, steepness: a };
}
