// Coverage: how often the truth lies inside the printed ±, over many simulated outposts, and how sure that figure is.

import { HONEST, lookedAt, Outpost, type World } from './simulate.ts';

export interface Covered {
  readonly what: string;
  /** Share of cells inside ± 2 u, as printed. */
  readonly share: number;
  /** Standard error of the share; the days of one outpost count together, for they share its errors. */
  readonly shareU: number;
  readonly cells: number;
  /** One standard deviation of the estimate, mean over the cells. */
  readonly meanUKg: number;
  /** Mean square of (estimate − truth) / u: 1 where doubts are honest. */
  readonly meanSquare: number;
}

export interface CoverageStudy {
  readonly outposts: number;
  readonly days: readonly number[];
  readonly firstSeed: number;
  readonly world?: World;
}

/** What is printed is twice the standard deviation. */
const PRINTED = 2;

/** Runs the outposts and looks at each on the days given. */
export function coverageOf({ outposts, days, firstSeed, world = HONEST }: CoverageStudy): readonly Covered[] {
  const tallies = lookedAt.map(() => new Tally());
  const lastDay = Math.max(...days);
  for (let seed = firstSeed; seed < firstSeed + outposts; seed += 1) {
    const outpost = new Outpost(seed, world);
    for (let day = 1; day <= lastDay; day += 1) {
      outpost.day();
      if (!days.includes(day)) continue;
      const [misses, doubts] = [outpost.misses(), outpost.doubts()];
      tallies.forEach((tally, at) => {
        tally.look(misses[at]!, doubts[at]!);
      });
    }
    for (const tally of tallies) tally.endOutpost();
  }
  return tallies.map((tally, at) => tally.result(lookedAt[at]!));
}

/** Counts cells, and adds them up an outpost at a time. */
class Tally {
  #inside = 0;
  #looked = 0;
  #cells = 0;
  #sumOfDoubts = 0;
  #sumOfSquares = 0;
  readonly #shares: number[] = [];

  look(miss: number, doubt: number): void {
    this.#looked += 1;
    this.#cells += 1;
    // A miss that is no number is no hit.
    if (Math.abs(miss) <= PRINTED) this.#inside += 1;
    this.#sumOfDoubts += doubt;
    this.#sumOfSquares += miss * miss;
  }

  endOutpost(): void {
    this.#shares.push(this.#inside / this.#looked);
    this.#inside = 0;
    this.#looked = 0;
  }

  result(what: string): Covered {
    const count = this.#shares.length;
    const share = this.#shares.reduce((sum, each) => sum + each, 0) / count;
    const variance =
      this.#shares.reduce((sum, each) => sum + (each - share) * (each - share), 0) / (count - 1);
    return {
      what,
      share,
      shareU: Math.sqrt(variance / count),
      cells: this.#cells,
      meanUKg: this.#sumOfDoubts / this.#cells,
      meanSquare: this.#sumOfSquares / this.#cells,
    };
  }
}

/** The table as printed: one line a store. */
export function coverageLines(rows: readonly Covered[]): readonly string[] {
  const percent = (value: number): string => `${(100 * value).toFixed(2)} %`;
  return rows.map(
    ({ what, share, shareU, cells, meanUKg, meanSquare }) =>
      `${what.padEnd(33)} ${percent(share)} ± ${percent(shareU)} (standard error) of ${cells} cells; mean u ${meanUKg.toFixed(4)}, mean square ${meanSquare.toFixed(3)}`,
  );
}
