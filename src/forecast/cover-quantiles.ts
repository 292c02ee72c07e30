// When a stock is used up, as quantiles: from the doubt of the stock and what was learned of the use.
import { normalCdf, rootBetween } from '../ground/maths/index.ts';
import { usedAhead } from './use-ahead.ts';
import type { UseCase } from './use-model.ts';

export interface CoverQuantiles {
  /** Days: reached or passed in 19 of 20 outcomes. Null: not within a hundred years. */
  readonly q05: number | null;
  readonly q50: number | null;
  readonly q95: number | null;
}

/** A stock and its doubt, one standard deviation. */
export interface Stock {
  readonly massMg: number;
  readonly uMg: number;
}

/** Who draws on the stock: so many people, each by these cases. */
export interface Draw {
  readonly people: number;
  readonly cases: readonly UseCase[];
}

/** What would last longer than a hundred years is said not to run out. */
const LONGEST_DAYS = 36_525;
/** A probability is found as nearly as this. */
const CLOSE = 1e-12;

export const never: CoverQuantiles = { q05: null, q50: null, q95: null };

/**
 * Quantiles of the day T on which a stock is used up: P(T ≤ t) = Σ w Φ((N m(t) − S) / √(u(S)² + N² v(t))) over the cases,
 * with m and v the mean and variance of what one of N people uses in t days.
 * @param stock what is there and its doubt, milligrams
 * @returns days; 0 where nothing is there; null where the stock does not run out within a hundred years in that outcome
 * @throws RangeError for a figure that is no number, and for a doubt below 0
 * @source derived from the normal distribution; see docs/methods/cover.md
 * @example coverQuantiles({ massMg: 100, uMg: 0 }, { people: 1, cases: [sureUse({ meanMg: 4, uMg: 0, dayUMg: 0 })] }).q50 // 25
 */
export function coverQuantiles(stock: Stock, draw: Draw): CoverQuantiles {
  const outcome = new RunOut(stock, draw);
  return { q05: outcome.day(0.05), q50: outcome.day(0.5), q95: outcome.day(0.95) };
}

/** Half the width of the interval that holds the day of the run-out in 95 of 100 outcomes; null where it has no end. */
export function coverHalfWidth(stock: Stock, draw: Draw): number | null {
  const outcome = new RunOut(stock, draw);
  const [early, late] = [outcome.day(0.025), outcome.day(0.975)];
  return early === null || late === null ? null : (late - early) / 2;
}

/** One stock and those who draw on it: how likely it is that it is used up by a day. */
class RunOut {
  readonly #stock: Stock;
  readonly #draw: Draw;
  /** Chance of an empty stock on days 1, 2, 4, 8 …, as far as it was asked for. */
  readonly #ladder: number[] = [];

  constructor(stock: Stock, draw: Draw) {
    mustBeSound(stock, draw);
    this.#stock = stock;
    this.#draw = draw;
  }

  emptyBy(days: number): number {
    const { massMg, uMg } = this.#stock;
    const { people, cases } = this.#draw;
    let chance = 0;
    for (const { weight, meanMg, variance } of usedAhead(days, cases)) {
      const spread = Math.sqrt(uMg * uMg + people * people * variance);
      const over = people * meanMg - massMg;
      chance += weight * (spread > 0 ? normalCdf(over / spread) : over >= 0 ? 1 : 0);
    }
    return chance;
  }

  /** The first day by which it is empty in this share of outcomes, to the doublings of a day. */
  day(share: number): number | null {
    if (this.emptyBy(0) >= share) return 0;
    let [low, high] = [0, 1];
    for (let rung = 0; this.#rung(rung, high) < share; rung++) {
      if (high >= LONGEST_DAYS) return null;
      [low, high] = [high, Math.min(2 * high, LONGEST_DAYS)];
    }
    return rootBetween((days) => this.emptyBy(days) - share, { low, high }, CLOSE);
  }

  #rung(rung: number, days: number): number {
    let chance = this.#ladder[rung];
    if (chance === undefined) {
      chance = this.emptyBy(days);
      this.#ladder[rung] = chance;
    }
    return chance;
  }
}

function mustBeSound({ massMg, uMg }: Stock, { people, cases }: Draw): void {
  const means = cases.map(({ meanMg }) => meanMg);
  const variances = cases.flatMap(({ meanVariance, noiseVariance }) => [meanVariance, noiseVariance]);
  for (const figure of [massMg, people, ...means])
    if (!Number.isFinite(figure)) throw new RangeError(`a cover was asked of ${figure}`);
  for (const doubt of [uMg, ...variances])
    if (!(doubt >= 0 && Number.isFinite(doubt)))
      throw new RangeError(`a cover was asked with a doubt of ${doubt}`);
}
