// Propagation by chance: what distribution the result has, whatever the formula and the shapes of its inputs.
import { type Formula, NUMBERS } from './arithmetic.ts';
import { seededChance } from './chance.ts';
import type { Correlation, Doubted } from './doubted.ts';
import { inputDraws } from './draw-inputs.ts';

export interface Interval {
  readonly low: number;
  readonly high: number;
}

export interface Drawn {
  /** Mean of the draws. */
  readonly value: number;
  /** Their standard deviation. */
  readonly u: number;
  readonly probability: number;
  /** As much beyond the one end as beyond the other. */
  readonly symmetric: Interval;
  /** The narrowest that holds as much. */
  readonly shortest: Interval;
  /** Twice the standard deviation of the figures above, from block to block: how far another seed would move them. */
  readonly unsettled: {
    readonly value: number;
    readonly u: number;
    readonly symmetric: Interval;
    readonly shortest: Interval;
  };
  /** All draws in rising order. */
  readonly sorted: Float64Array;
}

/** Draws of a block; a block gives the ends of an interval of up to 99 %. @source jcgm-101, 7.9.4 */
const BLOCK = 10_000;
const HIGHEST_PROBABILITY = 0.99;

/**
 * The distribution of y = f(x), by drawing its inputs and working the formula out each time.
 * @param draws a whole number of ten thousands, two of them at least
 * @param probability of the intervals, above 0 and at most 0.99
 * @throws RangeError if these are out of range, inputs are not as `inputDraws` wants them, or a draw gives no finite number
 * @source jcgm-101, clause 7
 * @example propagateByDraws({ inputs: { a: { value: 0, u: 1 } }, formula: (on, { a }) => on.times(a, a), seed: 7 }).value // about 1
 */
export function propagateByDraws<Name extends string>(told: {
  readonly inputs: Readonly<Record<Name, Doubted>>;
  readonly correlations?: readonly Correlation<Name>[];
  readonly formula: Formula<Name>;
  readonly seed: number;
  readonly draws?: number;
  readonly probability?: number;
}): Drawn {
  const { formula, seed, draws = 100_000, probability = 0.95 } = told;
  if (!(Number.isSafeInteger(draws / BLOCK) && draws >= 2 * BLOCK))
    throw new RangeError(`draws come in blocks of ${BLOCK}, two at least, not ${draws}`);
  if (!(probability > 0 && probability <= HIGHEST_PROBABILITY))
    throw new RangeError(
      `a coverage probability here is above 0 and at most ${HIGHEST_PROBABILITY}, not ${probability}`,
    );
  const { x, draw } = inputDraws(told, seededChance({ seed }));
  const sorted = new Float64Array(draws);
  for (let at = 0; at < draws; at += 1) {
    draw();
    const y = formula(NUMBERS, x);
    if (!Number.isFinite(y))
      throw new RangeError(`draw ${at} gave ${y}: the inputs reach where the formula has no value`);
    sorted[at] = y;
  }
  const blocks = Array.from({ length: draws / BLOCK }, (_, at) =>
    figuresOf(sorted.slice(at * BLOCK, (at + 1) * BLOCK).sort(), probability),
  );
  const figures = figuresOf(sorted.sort(), probability);
  return { ...figures, probability, unsettled: spreadOf(blocks), sorted };
}

type Figures = Pick<Drawn, 'value' | 'u' | 'symmetric' | 'shortest'>;

function figuresOf(sorted: Float64Array, probability: number): Figures {
  const { value, u } = momentsOf(sorted);
  return { value, u, symmetric: symmetricOf(sorted, probability), shortest: shortestOf(sorted, probability) };
}

/** Mean and standard deviation, by sums of what is left above a middle one: large values with small spread lose nothing. */
function momentsOf(values: Float64Array): { readonly value: number; readonly u: number } {
  const count = values.length;
  const middle = values[count >> 1] as number;
  let sum = 0;
  let squares = 0;
  for (let at = 0; at < count; at += 1) {
    const off = (values[at] as number) - middle;
    sum += off;
    squares += off * off;
  }
  return {
    value: middle + sum / count,
    u: Math.sqrt(Math.max(0, squares - (sum * sum) / count) / (count - 1)),
  };
}

/** @source jcgm-101, 7.7.2 */
function symmetricOf(sorted: Float64Array, probability: number): Interval {
  const within = Math.floor(probability * sorted.length + 0.5);
  const below = Math.floor((sorted.length - within + 1) / 2);
  return { low: sorted[below - 1] as number, high: sorted[below + within - 1] as number };
}

/** @source jcgm-101, 7.7.4 */
function shortestOf(sorted: Float64Array, probability: number): Interval {
  const within = Math.floor(probability * sorted.length + 0.5);
  let from = 0;
  let width = Number.POSITIVE_INFINITY;
  for (let at = 0; at + within < sorted.length; at += 1) {
    const each = (sorted[at + within] as number) - (sorted[at] as number);
    if (each < width) {
      width = each;
      from = at;
    }
  }
  return { low: sorted[from] as number, high: sorted[from + within] as number };
}

/** Twice the standard deviation of the mean over the blocks, figure by figure. @source jcgm-101, 7.9.4 */
function spreadOf(blocks: readonly Figures[]): Drawn['unsettled'] {
  const spread = (figure: (of: Figures) => number): number =>
    (2 * momentsOf(Float64Array.from(blocks, figure)).u) / Math.sqrt(blocks.length);
  const ends = (interval: (of: Figures) => Interval): Interval => ({
    low: spread((of) => interval(of).low),
    high: spread((of) => interval(of).high),
  });
  return {
    value: spread(({ value }) => value),
    u: spread(({ u }) => u),
    symmetric: ends(({ symmetric }) => symmetric),
    shortest: ends(({ shortest }) => shortest),
  };
}
