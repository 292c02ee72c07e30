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
  if (use === null) return { grade, free, use, useMgPerDay: null, useUMgPerDay: null, toFloor: null, ...never };
  const people = position.peopleAboard;
  const useMgPerDay = use.meanMg * people;
  const useUMgPerDay = use.meanUMg * people;
  // Noise of a day that remembers: over many days its variance grows by (1+ρ)/(1−ρ).
  const dayUMg = use.dayUMg * people * Math.sqrt((1 + use.memory) / (1 - use.memory));
  const drawn = { useMgPerDay, useUMgPerDay, dayUMg };
  const reserve = reserveStock(position);
  const holdsReserve = position.stores.some((store) => store.facts.reserve && store.grade === grade);
  const above = { massMg: free.massMg + reserve.massMg - reserve.floorMg, uMg: position.sumOf([...free.stores, ...reserve.stores]).uMg };
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

/**
 * Quantiles of the day on which a stock is used up: P(T ≤ t) = Φ((r t − S) / √(u(S)² + (u(r) t)² + σ² t)).
 * @param stock what is there and its doubt (one standard deviation), milligrams
 * @param drawn mean use a day, its doubt, and the noise of one day, milligrams
 * @returns days; 0 where nothing is there; null where the stock does not run out in that outcome
 */
export function coverQuantiles(
  stock: { readonly massMg: number; readonly uMg: number },
  drawn: { readonly useMgPerDay: number; readonly useUMgPerDay: number; readonly dayUMg: number },
): CoverQuantiles {
  if (stock.massMg <= 0) return { q05: 0, q50: 0, q95: Math.max(0, crossing(stock, drawn, Z95) ?? 0) };
  return { q05: crossing(stock, drawn, -Z95), q50: crossing(stock, drawn, 0), q95: crossing(stock, drawn, Z95) };
}

/**
 * The day t at which r t − S = z √(u(S)² + (u(r) t)² + σ² t); z negative for early outcomes.
 * Squared it is a quadratic in t; the root on the right side of S/r is the one that solves the unsquared equation.
 */
function crossing(
  stock: { readonly massMg: number; readonly uMg: number },
  drawn: { readonly useMgPerDay: number; readonly useUMgPerDay: number; readonly dayUMg: number },
  z: number,
): number | null {
  const { massMg: s, uMg: us } = stock;
  const { useMgPerDay: r, useUMgPerDay: ur, dayUMg: sigma } = drawn;
  if (z === 0) return r > 0 ? s / r : null;
  const zz = z * z;
  const a = r * r - zz * ur * ur;
  const b = -(2 * s * r + zz * sigma * sigma);
  const c = s * s - zz * us * us;
  // The stock itself may be nothing in that outcome.
  if (z < 0 && c <= 0) return 0;
  if (a === 0) return z < 0 ? -c / b : null;
  const discriminant = b * b - 4 * a * c;
  if (discriminant < 0) return null;
  const root = Math.sqrt(discriminant);
  // Citardauq form: no difference of two near numbers.
  const q = -(b + (b < 0 ? -root : root)) / 2;
  const roots = [q / a, c / q].filter((t) => Number.isFinite(t) && t >= 0).sort((x, y) => x - y);
  const solves = (t: number) => (z < 0 ? r * t - s <= 0 : r * t - s >= 0);
  return roots.find(solves) ?? null;
}
