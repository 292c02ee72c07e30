// The law of propagation of uncertainty: what doubt of a result its inputs make, and which of them makes it.
import type { Arithmetic, Formula } from './arithmetic.ts';
import { correlationMatrix, correlationRoot } from './correlation-root.ts';
import { type Correlation, type Doubted, mustBeDoubted } from './doubted.ts';
import { type Dual, Duals } from './duals.ts';
import type { Matrix } from './matrix.ts';

/** What one input makes of the doubt. */
export interface Part<Name extends string> {
  readonly of: Name;
  /** ∂y/∂x at the best values. */
  readonly sensitivity: number;
  /** |∂y/∂x| u(x), in the unit of the result. */
  readonly u: number;
  /** Part of u²; those of all inputs and pairs make 1. All are 0 where nothing is in doubt. */
  readonly share: number;
}

/** What two inputs make whose errors go together; below 0 where the one takes back what the other does. */
export interface PairPart<Name extends string> {
  readonly of: readonly [Name, Name];
  readonly share: number;
}

export interface Propagated<Name extends string> {
  readonly value: number;
  /** Combined standard uncertainty. */
  readonly u: number;
  /** Effective degrees of freedom; null where an input of few degrees goes together with another, for then none are defined. */
  readonly degrees: number | null;
  /** Of every input that is in doubt, in their order. */
  readonly parts: readonly Part<Name>[];
  readonly pairs: readonly PairPart<Name>[];
}

/** Formulas of the same inputs that are worked out together. */
export type Formulas<Name extends string, Output extends string> = <Value>(
  on: Arithmetic<Value>,
  x: Readonly<Record<Name, Value>>,
) => Readonly<Record<Output, Value>>;

export interface PropagatedTogether<Name extends string, Output extends string> {
  readonly outputs: Readonly<Record<Output, Propagated<Name>>>;
  /** Covariance of two outputs. */
  readonly covariance: (one: Output, other: Output) => number;
  /** Correlation of two outputs; NaN where one of them is in no doubt. */
  readonly correlation: (one: Output, other: Output) => number;
}

interface Told<Name extends string> {
  readonly inputs: Readonly<Record<Name, Doubted>>;
  readonly correlations?: readonly Correlation<Name>[];
}

/**
 * The best value of y = f(x) and its doubt, to first order.
 *
 * u² = Σ c_i² u_i² + 2 Σ Σ c_i c_j u_i u_j r_ij, with c_i = ∂f/∂x_i by dual numbers; ν = u⁴ / Σ (c_i u_i)⁴/ν_i.
 * Right where f is nearly straight over a few u of each input; `propagateByDraws` and `isBorneOut` tell whether it is.
 * @param told inputs by name, in any units: a sensitivity is in that of the result over that of the input
 * @throws RangeError if an input is not finite, correlations contradict each other, or the result is not finite
 * @source gum, 5.1.2, 5.2.2 and G.4.1
 * @example
 * propagate({
 *   inputs: { a: { value: 3, u: 0.1 }, b: { value: 5, u: 0.2 } },
 *   formula: (on, { a, b }) => on.times(a, b),
 * }).u // 0.781…
 */
export function propagate<Name extends string>(
  told: Told<Name> & { readonly formula: Formula<Name> },
): Propagated<Name> {
  const { formula, ...rest } = told;
  return propagateTogether({ ...rest, formulas: (on, x) => ({ y: formula(on, x) }) }).outputs.y;
}

/**
 * Several results of the same inputs, with what their doubts have in common: Cov = C S Cᵀ.
 * @throws RangeError as `propagate`
 * @source gum, H.2.3
 */
export function propagateTogether<Name extends string, Output extends string>(
  told: Told<Name> & { readonly formulas: Formulas<Name, Output> },
): PropagatedTogether<Name, Output> {
  const { inputs, formulas, correlations = [] } = told;
  const every = Object.keys(inputs) as Name[];
  const all = Object.values<Doubted>(inputs);
  // What is in no doubt carries no slope: it is a number like those written in the formula.
  const names: Name[] = [];
  const doubts: Doubted[] = [];
  for (let at = 0; at < every.length; at += 1) {
    const name = every[at] as Name;
    const each = all[at] as Doubted;
    mustBeDoubted(name, each);
    if (each.u === 0) continue;
    names.push(name);
    doubts.push(each);
  }
  const together = correlations.length === 0 ? null : correlationsAmong(names, every, correlations);
  const outputs = {} as Record<Output, Propagated<Name>>;
  const reaches = {} as Record<Output, readonly number[]>;
  withSheet({ every, names }, ({ on, x }) => {
    // The inputs are the first rows of the sheet.
    for (let at = 0; at < all.length; at += 1) on.put(at as Dual, (all[at] as Doubted).value);
    const results = formulas(on, x as Readonly<Record<Name, Dual>>);
    for (const output of Object.keys(results) as Output[]) {
      const result = results[output];
      const reach: number[] = [];
      for (let at = 0; at < names.length; at += 1)
        reach.push(on.slope(result, at) * (doubts[at] as Doubted).u);
      reaches[output] = reach;
      outputs[output] = of({ names, doubts, together, reach, on, result });
    }
  });
  const covariance = (one: Output, other: Output): number =>
    sumOfProducts(reaches[one], reaches[other], together);
  const correlation = (one: Output, other: Output): number =>
    covariance(one, other) / (outputs[one].u * outputs[other].u);
  return { outputs, covariance, correlation };
}

/** Looked at among all inputs, as they are told; kept among those that are in doubt. */
function correlationsAmong<Name extends string>(
  names: readonly Name[],
  every: readonly Name[],
  correlations: readonly Correlation<Name>[],
): Matrix {
  correlationRoot(correlationMatrix(every, correlations));
  return correlationMatrix(
    names,
    correlations.filter(({ of }) => of.every((name) => names.includes(name))),
  );
}

interface SheetOf {
  readonly every: readonly string[];
  /** Of them, those in doubt. */
  readonly names: readonly string[];
}

/** Dual numbers with the inputs in their first rows, in the order of their names. */
interface Sheet extends SheetOf {
  readonly on: Duals;
  readonly x: Readonly<Record<string, Dual>>;
}

/** That of the last propagation, which the next of the same inputs writes over; taken away while it is in use. */
let spare: Sheet | null = null;

function withSheet(asked: SheetOf, work: (sheet: Sheet) => void): void {
  const isFit = spare !== null && areSame(spare.every, asked.every) && areSame(spare.names, asked.names);
  const sheet = isFit && spare !== null ? spare : sheetOf(asked);
  spare = null;
  sheet.on.clear(asked.every.length);
  work(sheet);
  spare = sheet;
}

function sheetOf({ every, names }: SheetOf): Sheet {
  const on = new Duals(names.length);
  const x: Record<string, Dual> = {};
  let slope = 0;
  for (const name of every) x[name] = name === names[slope] ? on.input(slope++, 0) : on.of(0);
  return { every, names, on, x };
}

function areSame(some: readonly string[], others: readonly string[]): boolean {
  if (some.length !== others.length) return false;
  for (let at = 0; at < some.length; at += 1) if (some[at] !== others[at]) return false;
  return true;
}

/** aᵀ R b; without a matrix the inputs are independent. */
function sumOfProducts(a: readonly number[], b: readonly number[], together: Matrix | null): number {
  let sum = 0;
  for (let i = 0; i < a.length; i += 1) {
    if (together === null) sum += (a[i] as number) * (b[i] as number);
    else
      for (let j = 0; j < b.length; j += 1)
        sum += (a[i] as number) * (b[j] as number) * (together.values[i * a.length + j] as number);
  }
  return sum;
}

interface OneOutput<Name extends string> {
  readonly names: readonly Name[];
  readonly doubts: readonly Doubted[];
  readonly together: Matrix | null;
  /** c_i u_i. */
  readonly reach: readonly number[];
  readonly on: Duals;
  readonly result: Dual;
}

function of<Name extends string>(one: OneOutput<Name>): Propagated<Name> {
  const { names, together, reach, on, result } = one;
  const value = on.number(result);
  // Errors that take each other back to nothing may leave a rounding below 0.
  const variance = Math.max(0, sumOfProducts(reach, reach, together));
  if (!(Number.isFinite(value) && Number.isFinite(variance)))
    throw new RangeError(
      `the result is no finite number with a finite doubt: ${value}, variance ${variance}`,
    );
  const parts: Part<Name>[] = [];
  for (let at = 0; at < names.length; at += 1) {
    const each = reach[at] as number;
    const share = variance === 0 ? 0 : (each * each) / variance;
    parts.push({ of: names[at] as Name, sensitivity: on.slope(result, at), u: Math.abs(each), share });
  }
  const pairs = together === null ? [] : pairsOf(one, together, variance);
  return { value, u: Math.sqrt(variance), degrees: degreesOf(one, variance), parts, pairs };
}

function pairsOf<Name extends string>(
  { names, reach }: OneOutput<Name>,
  together: Matrix,
  variance: number,
): PairPart<Name>[] {
  const pairs: PairPart<Name>[] = [];
  for (let i = 0; i < names.length; i += 1)
    for (let j = i + 1; j < names.length; j += 1) {
      const r = together.values[i * names.length + j] as number;
      if (r === 0) continue;
      const both = 2 * r * (reach[i] as number) * (reach[j] as number);
      pairs.push({ of: [names[i] as Name, names[j] as Name], share: variance === 0 ? 0 : both / variance });
    }
  return pairs;
}

/** ν = u⁴ / Σ (c_i u_i)⁴ / ν_i: Welch and Satterthwaite's, which is for independent parts. @source gum, G.4.1 */
function degreesOf<Name extends string>(
  { doubts, together, reach }: OneOutput<Name>,
  variance: number,
): number | null {
  let sum = 0;
  for (let at = 0; at < doubts.length; at += 1) {
    const { degrees = Number.POSITIVE_INFINITY } = doubts[at] as Doubted;
    if (degrees === Number.POSITIVE_INFINITY || reach[at] === 0) continue;
    if (together !== null && goesTogether(together, at)) return null;
    const part = ((reach[at] as number) * (reach[at] as number)) / variance;
    sum += (part * part) / degrees;
  }
  return 1 / sum;
}

function goesTogether({ columns, values }: Matrix, at: number): boolean {
  for (let other = 0; other < columns; other += 1)
    if (other !== at && values[at * columns + other] !== 0) return true;
  return false;
}
