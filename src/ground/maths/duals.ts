// Dual numbers: each value carries its slopes in all inputs, so that one run of a formula gives every sensitivity, exactly.
import type { Arithmetic } from './arithmetic.ts';
import { cos, sin } from './circle.ts';
import { exp } from './exponential.ts';
import { log } from './logarithm.ts';
import { pow } from './power.ts';

declare const isDual: unique symbol;

/** A dual number: its row in the sheet of the `Duals` that made it, and of no other. */
export type Dual = number & { readonly [isDual]: true };

const FIRST_ROWS = 64;

/**
 * Arithmetic on dual numbers of so many inputs (forward mode). All of them lie in one sheet that is used again and again: an
 * operation makes no object, and `clear` begins the sheet anew.
 * @source griewank-walther, chapter 3: (f ∘ g)' = f'(g) g', carried along with every operation
 * @example
 * const on = new Duals(2);
 * const product = on.times(on.input(0, 3), on.input(1, 5));
 * [on.number(product), on.slope(product, 0), on.slope(product, 1)] // [15, 5, 3]
 */
export class Duals implements Arithmetic<Dual> {
  readonly inputs: number;
  #numbers: Float64Array;
  #slopes: Float64Array;
  #used = 0;

  /** @throws RangeError if the count is no whole number from 0. */
  constructor(inputs: number) {
    if (!(Number.isSafeInteger(inputs) && inputs >= 0))
      throw new RangeError(`a count of inputs is a whole number from 0, not ${inputs}`);
    this.inputs = inputs;
    this.#numbers = new Float64Array(FIRST_ROWS);
    this.#slopes = new Float64Array(FIRST_ROWS * inputs);
  }

  /** Forgets every dual number that was made, but the first so many. */
  clear(kept = 0): void {
    this.#used = kept;
  }

  /** Gives an input or a constant another number; what was made of it before stays as it was. */
  put(at: Dual, value: number): void {
    this.#numbers[at] = value;
  }

  number(of: Dual): number {
    return this.#numbers[of] as number;
  }

  /** The slope in one input. */
  slope(of: Dual, input: number): number {
    return this.#slopes[of * this.inputs + input] as number;
  }

  /** An input: its slope in itself is 1. */
  input(at: number, value: number): Dual {
    if (!(at >= 0 && at < this.inputs)) throw new RangeError(`there is no input ${at} of ${this.inputs}`);
    const made = this.of(value);
    this.#slopes[made * this.inputs + at] = 1;
    return made;
  }

  of(constant: number): Dual {
    const made = this.#row(constant);
    const from = made * this.inputs;
    for (let at = 0; at < this.inputs; at += 1) this.#slopes[from + at] = 0;
    return made;
  }

  plus(a: Dual, b: Dual): Dual {
    return this.#fromTwo(this.number(a) + this.number(b), a, 1, b, 1);
  }

  minus(a: Dual, b: Dual): Dual {
    return this.#fromTwo(this.number(a) - this.number(b), a, 1, b, -1);
  }

  times(a: Dual, b: Dual): Dual {
    const x = this.number(a);
    const y = this.number(b);
    return this.#fromTwo(x * y, a, y, b, x);
  }

  over(a: Dual, b: Dual): Dual {
    const divisor = this.number(b);
    const quotient = this.number(a) / divisor;
    return this.#fromTwo(quotient, a, 1 / divisor, b, -quotient / divisor);
  }

  shifted(a: Dual, by: number): Dual {
    return this.#fromOne(this.number(a) + by, a, 1);
  }

  scaled(a: Dual, by: number): Dual {
    return this.#fromOne(this.number(a) * by, a, by);
  }

  raised(a: Dual, exponent: number): Dual {
    const x = this.number(a);
    return this.#fromOne(pow(x, exponent), a, exponent === 0 ? 0 : exponent * pow(x, exponent - 1));
  }

  squareRoot(a: Dual): Dual {
    const root = Math.sqrt(this.number(a));
    return this.#fromOne(root, a, 0.5 / root);
  }

  exp(a: Dual): Dual {
    const value = exp(this.number(a));
    return this.#fromOne(value, a, value);
  }

  log(a: Dual): Dual {
    const x = this.number(a);
    return this.#fromOne(log(x), a, 1 / x);
  }

  sin(a: Dual): Dual {
    const x = this.number(a);
    return this.#fromOne(sin(x), a, cos(x));
  }

  cos(a: Dual): Dual {
    const x = this.number(a);
    return this.#fromOne(cos(x), a, -sin(x));
  }

  /** The next row of the sheet, which doubles when it is full; its slopes are for the caller to write. */
  #row(value: number): Dual {
    if (this.#used === this.#numbers.length) {
      const [numbers, slopes] = [this.#numbers, this.#slopes];
      this.#numbers = new Float64Array(2 * numbers.length);
      this.#slopes = new Float64Array(2 * slopes.length);
      this.#numbers.set(numbers);
      this.#slopes.set(slopes);
    }
    this.#numbers[this.#used] = value;
    this.#used += 1;
    return (this.#used - 1) as Dual;
  }

  #fromOne(value: number, a: Dual, by: number): Dual {
    const made = this.#row(value);
    const from = a * this.inputs;
    const to = made * this.inputs;
    const slopes = this.#slopes;
    if (Number.isFinite(by))
      for (let at = 0; at < this.inputs; at += 1) slopes[to + at] = (slopes[from + at] as number) * by;
    else
      for (let at = 0; at < this.inputs; at += 1) slopes[to + at] = carried(slopes[from + at] as number, by);
    return made;
  }

  /** Positional, and without a pattern: this is the loop that all of propagation runs in, and it makes no object. */
  #fromTwo(value: number, a: Dual, byA: number, b: Dual, byB: number): Dual {
    const made = this.#row(value);
    const fromA = a * this.inputs;
    const fromB = b * this.inputs;
    const to = made * this.inputs;
    const slopes = this.#slopes;
    if (Number.isFinite(byA) && Number.isFinite(byB)) {
      for (let at = 0; at < this.inputs; at += 1)
        slopes[to + at] = (slopes[fromA + at] as number) * byA + (slopes[fromB + at] as number) * byB;
      return made;
    }
    for (let at = 0; at < this.inputs; at += 1)
      slopes[to + at] =
        carried(slopes[fromA + at] as number, byA) + carried(slopes[fromB + at] as number, byB);
    return made;
  }
}

/** A slope of 0 stays 0 also where the outer slope is infinite: what does not hang on an input never does. */
function carried(slope: number, by: number): number {
  return slope === 0 ? 0 : slope * by;
}
