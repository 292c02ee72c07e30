// The operations in which a formula is written once, to run on plain numbers or on numbers that carry their slopes.
import { cos, sin } from './circle.ts';
import { exp } from './exponential.ts';
import { log } from './logarithm.ts';
import { pow } from './power.ts';

/**
 * What a formula may do with its values. It is written for any kind of value, so the compiler refuses a bare number where a
 * value has to stand: a constant comes in through `of`, `shifted` or `scaled`.
 * @example const area = <Value>(on: Arithmetic<Value>, side: Value): Value => on.times(side, side);
 */
export interface Arithmetic<Value> {
  /** A constant. */
  of(constant: number): Value;
  plus(a: Value, b: Value): Value;
  minus(a: Value, b: Value): Value;
  times(a: Value, b: Value): Value;
  over(a: Value, b: Value): Value;
  /** a + by. */
  shifted(a: Value, by: number): Value;
  /** a × by. */
  scaled(a: Value, by: number): Value;
  /** a to a constant power. */
  raised(a: Value, exponent: number): Value;
  squareRoot(a: Value): Value;
  exp(a: Value): Value;
  log(a: Value): Value;
  sin(a: Value): Value;
  cos(a: Value): Value;
}

/** A formula of named values, written for every kind of value. */
export type Formula<Name extends string> = <Value>(
  on: Arithmetic<Value>,
  x: Readonly<Record<Name, Value>>,
) => Value;

/** Plain numbers: a formula run on these costs what it would cost written with signs. */
export const NUMBERS: Arithmetic<number> = {
  of: (constant) => constant,
  plus: (a, b) => a + b,
  minus: (a, b) => a - b,
  times: (a, b) => a * b,
  over: (a, b) => a / b,
  shifted: (a, by) => a + by,
  scaled: (a, by) => a * by,
  raised: (a, exponent) => pow(a, exponent),
  squareRoot: (a) => Math.sqrt(a),
  exp,
  log,
  sin,
  cos,
};
