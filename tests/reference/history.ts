// A history of movements and readings, told to the online estimator and, as one batch problem, to the reference twin.
import type { Estimator } from '../../src/account/index.ts';
import type { Matrix } from '../../src/ground/maths/index.ts';
import { made } from './dense.ts';
import { type Problem, type Reconciled, reconcile, seenThrough } from './reconcile.ts';

export interface Prior {
  readonly mean: number;
  readonly variance: number;
}

export type Act =
  | {
      readonly act: 'move';
      readonly from: number;
      readonly to: number;
      readonly calibration: number;
      readonly massKg: number;
      readonly uKg: number;
    }
  | {
      readonly act: 'read';
      readonly places: readonly number[];
      readonly weights: readonly number[];
      readonly value: number;
      readonly u: number;
    }
  | { readonly act: 'drift'; readonly place: number; readonly variance: number }
  | { readonly act: 'told'; readonly place: number; readonly prior: Prior };

/** One amount that several means have measured: a batch knows it as one thing, the product takes it in steps of its own. */
export interface FusedAct {
  readonly act: 'fused';
  readonly from: number;
  readonly to: number;
  readonly means: readonly {
    readonly calibration: number;
    readonly massKg: number;
    readonly uKg: number;
  }[];
}

export interface History<Acts = Act> {
  /** Stores first, then calibration errors and offsets. */
  readonly priors: readonly Prior[];
  readonly acts: readonly Acts[];
}

/** Tells it to an estimator. Returns the sum of the squared innovations over their variances. */
export function tell(
  estimator: Estimator,
  { priors, acts }: History,
): { sumOfSquares: number; readings: number } {
  for (const { mean, variance } of priors) estimator.add(mean, variance);
  let sumOfSquares = 0;
  let readings = 0;
  for (const act of acts) {
    if (act.act === 'move') estimator.move(act);
    else if (act.act === 'drift') estimator.widen(act.place, act.variance);
    else if (act.act === 'told') estimator.reset(act.place, act.prior.mean, act.prior.variance);
    else {
      const { innovation, variance } = estimator.read(act);
      sumOfSquares += (innovation * innovation) / variance;
      readings += 1;
    }
  }
  return { sumOfSquares, readings };
}

/** A sum of the problem's variables, each with its weight. */
type Sum = Map<number, number>;

/**
 * The same history as a batch. Its variables are the priors, every amount that moved, every step of a drift, every reading;
 * a balance for each reading says that what stood there is what was put in less what was taken out. Amounts measured by
 * one instrument share its calibration error through their covariance: no state is carried from one to the next.
 */
class Batch {
  readonly #measured: number[] = [];
  /** For each variable the independent errors that it has, by weight. */
  readonly #errors: Sum[] = [];
  readonly #errorVariances: number[] = [];
  /** What each state is now, as a sum of variables. */
  readonly #states: Sum[] = [];
  readonly #balances: Sum[] = [];
  readonly #totals: number[] = [];

  constructor({ priors, acts }: History<Act | FusedAct>) {
    for (const prior of priors)
      this.#states.push(new Map([[this.#variable(prior.mean, this.#error(prior.variance)), 1]]));
    for (const act of acts) this.#take(act);
  }

  #take(act: Act | FusedAct): void {
    if (act.act === 'drift') add(this.#states[act.place]!, this.#variable(0, this.#error(act.variance)), 1);
    else if (act.act === 'told')
      this.#states[act.place] = new Map([
        [this.#variable(act.prior.mean, this.#error(act.prior.variance)), 1],
      ]);
    else if (act.act === 'move') this.#move(act);
    else if (act.act === 'fused') this.#fuse(act);
    else this.#read(act);
  }

  #move(act: Extract<Act, { act: 'move' }>): void {
    const { from, to } = act;
    if (from === to) return;
    this.#pour(from, to, this.#amount(act));
  }

  /** What each means says is a variable of its own, and all of them are one amount. */
  #fuse({ from, to, means }: FusedAct): void {
    const [first, ...others] = means.map((each) => this.#amount(each));
    for (const other of others) {
      this.#balances.push(
        new Map([
          [first!, 1],
          [other, -1],
        ]),
      );
      this.#totals.push(0);
    }
    this.#pour(from, to, first!);
  }

  #pour(from: number, to: number, amount: number): void {
    if (from >= 0) add(this.#states[from]!, amount, -1);
    if (to >= 0) add(this.#states[to]!, amount, 1);
  }

  /** True amount = m (1 + b) + e: its best value before any reading is m (1 + prior mean of b). */
  #amount({ calibration, massKg, uKg }: { calibration: number; massKg: number; uKg: number }): number {
    const errors = this.#error(uKg * uKg);
    let mean = massKg;
    for (const [variable, weight] of calibration < 0 ? [] : this.#states[calibration]!) {
      mean += massKg * weight * this.#measured[variable]!;
      for (const [error, part] of this.#errors[variable]!) add(errors, error, massKg * weight * part);
    }
    return this.#variable(mean, errors);
  }

  #read({ places, weights, value, u }: Extract<Act, { act: 'read' }>): void {
    const balance: Sum = new Map();
    places.forEach((place, at) => {
      for (const [variable, weight] of this.#states[place]!) add(balance, variable, weight * weights[at]!);
    });
    add(balance, this.#variable(value, this.#error(u * u)), -1);
    this.#balances.push(balance);
    this.#totals.push(0);
  }

  #error(variance: number): Sum {
    this.#errorVariances.push(variance);
    return new Map([[this.#errorVariances.length - 1, 1]]);
  }

  #variable(value: number, errors: Sum): number {
    this.#measured.push(value);
    this.#errors.push(errors);
    return this.#measured.length - 1;
  }

  problem(): Problem {
    return {
      measured: Float64Array.from(this.#measured),
      covariance: this.#covariance(),
      balances: this.#matrixOf(this.#balances),
      totals: Float64Array.from(this.#totals),
    };
  }

  /** States as they are at the end, one row each. */
  view(): Matrix {
    return this.#matrixOf(this.#states);
  }

  #matrixOf(sums: readonly Sum[]): Matrix {
    return made(sums.length, this.#measured.length, (row, column) => sums[row]!.get(column) ?? 0);
  }

  #covariance(): Matrix {
    const count = this.#measured.length;
    const covariance = made(count, count, () => 0);
    const holders = new Map<number, [variable: number, weight: number][]>();
    this.#errors.forEach((errors, variable) => {
      for (const [error, weight] of errors)
        holders.set(error, [...(holders.get(error) ?? []), [variable, weight]]);
    });
    for (const [error, shared] of holders) {
      for (const [a, left] of shared) {
        for (const [b, right] of shared)
          covariance.values[a * count + b]! += left * right * this.#errorVariances[error]!;
      }
    }
    return covariance;
  }
}

function add(sum: Sum, variable: number, weight: number): void {
  sum.set(variable, (sum.get(variable) ?? 0) + weight);
}

export interface BatchAnswer {
  readonly problem: Problem;
  readonly view: Matrix;
  readonly solution: Reconciled;
  readonly means: Float64Array;
  readonly covariance: Matrix;
}

/** Solves the history as one batch, and looks at the states as they are at its end. */
export function solveAsBatch(history: History<Act | FusedAct>): BatchAnswer {
  const batch = new Batch(history);
  const problem = batch.problem();
  const view = batch.view();
  const solution = reconcile(problem);
  const means = Float64Array.from({ length: view.rows }, (_, row) => {
    let sum = 0;
    for (let at = 0; at < view.columns; at += 1)
      sum += view.values[row * view.columns + at]! * solution.values[at]!;
    return sum;
  });
  return { problem, view, solution, means, covariance: seenThrough(view, solution.covariance) };
}
