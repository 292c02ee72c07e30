// Days that water lasts at the rates of policy, with nothing made meanwhile: free water, the reserve to its floor, the reserve alone.
import { freeStock, type Position, reserveStock } from '../account/index.ts';
import { stockToFloor } from './cover.ts';
import type { Stock } from './cover-quantiles.ts';

/** Days, and one standard deviation from the doubt of the stock. */
export interface DaysAtRate {
  readonly days: number;
  readonly uDays: number;
}

export interface CoverAtRate {
  readonly rate: 'planning' | 'survival';
  readonly litresPerPersonDay: number;
  readonly people: number;
  /** Free water alone. */
  readonly free: DaysAtRate;
  /** Free water, and the reserve down to its floor. */
  readonly toFloor: DaysAtRate;
  /** The reserve by itself, down to what its stores do not give. */
  readonly reserve: DaysAtRate;
  /** Entries that the stocks rest on. */
  readonly because: readonly string[];
}

/**
 * t = S / (r N) with u(t) = u(S) / (r N): the rate is policy and so is not in doubt, and nothing that is made comes in.
 * The people aboard are taken to stay, and no visit to come.
 * @returns planning and survival, or null: the reserve is not of this grade, or nobody is aboard
 * @source definition; the rates are the outpost's own, see docs/methods/cover.md
 */
export function coverAtRates(position: Position, grade: string): readonly CoverAtRate[] | null {
  const above = stockToFloor(position, grade);
  const people = position.peopleAboard;
  if (above === null || people === 0) return null;
  const { policy } = position.index.outpost;
  const free = freeStock(position, grade);
  const reserve = usableReserve(position);
  const because = [...new Set([...free.because, ...reserve.because])];
  return (
    [
      ['planning', policy.planningLPerPersonDay],
      ['survival', policy.survivalLPerPersonDay],
    ] as const
  ).map(([rate, litresPerPersonDay]) => {
    const daysOf = lasting(litresPerPersonDay * position.mgPerL * people);
    const stocks = { free: daysOf(free), toFloor: daysOf(above), reserve: daysOf(reserve) };
    return { rate, litresPerPersonDay, people, ...stocks, because };
  });
}

function lasting(mgPerDay: number): (stock: Stock) => DaysAtRate {
  return ({ massMg, uMg }) => ({ days: Math.max(0, massMg / mgPerDay), uDays: uMg / mgPerDay });
}

/** What the stores of the reserve give: their content above what stays behind in each. */
function usableReserve(position: Position): Stock & { readonly because: readonly string[] } {
  const { stores, massMg, uMg, because } = reserveStock(position);
  const facts = position.stores
    .filter((store) => stores.includes(store.facts.id))
    .map((store) => store.facts);
  const remainderMg = facts.reduce((sum, each) => sum + each.remainderMg, 0);
  const remainderVariance = facts.reduce((sum, each) => sum + each.remainderUMg * each.remainderUMg, 0);
  return {
    massMg: massMg - remainderMg,
    uMg: Math.round(Math.sqrt(uMg * uMg + remainderVariance)),
    because,
  };
}
