// Days of cover: when the free water of a grade is used up by those who are aboard, as quantiles.
import { type FreeStock, freeStock, type Position, reserveStock } from '../account/index.ts';
import { type CoverQuantiles, coverQuantiles, type Draw, never, type Stock } from './cover-quantiles.ts';
import { type DailyUse, dailyUse, type NormOfDay } from './daily-use.ts';
import { normUse } from './norm-use.ts';

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
  const use = useOf(position, grade);
  const people = position.peopleAboard;
  const draw = drawOf(position, use);
  const above = stockToFloor(position, grade);
  return {
    grade,
    free,
    use,
    useMgPerDay: use === null ? null : use.meanMg * people,
    useUMgPerDay: use === null ? null : use.meanUMg * people,
    ...(draw === null ? never : coverQuantiles(free, draw)),
    toFloor: draw === null || above === null ? null : coverQuantiles(above, draw),
  };
}

/** What is known of the daily use of a grade. */
export function useOf(position: Position, grade: string): DailyUse | null {
  const norm = normUse(position.index.outpost, grade);
  const ofDay: NormOfDay | null =
    norm === null ? null : { netMg: norm.netL * position.mgPerL, grossMg: norm.grossL * position.mgPerL };
  return dailyUse(position.usageDays(grade), ofDay, position.atMs);
}

/** Those who are aboard, taken to stay. */
export function drawOf(position: Position, use: DailyUse | null): Draw | null {
  return use === null ? null : { people: position.peopleAboard, cases: use.cases };
}

/** Free water and what the reserve holds above its floor; null for a grade of which no reserve is kept. */
export function stockToFloor(position: Position, grade: string): Stock | null {
  const holdsReserve = position.stores.some((store) => store.facts.reserve && store.grade === grade);
  if (!holdsReserve) return null;
  const free = freeStock(position, grade);
  const reserve = reserveStock(position);
  return {
    massMg: free.massMg + reserve.massMg - reserve.floorMg,
    uMg: position.sumOf([...free.stores, ...reserve.stores]).uMg,
  };
}
