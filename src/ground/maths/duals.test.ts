// Dual numbers: their numbers are those of plain arithmetic, their slopes those of differences.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Arithmetic, type Formula, NUMBERS } from './arithmetic.ts';
import { Duals } from './duals.ts';

type Two = 'a' | 'b';

const formulas: Readonly<Record<string, Formula<Two>>> = {
  plus: (on, { a, b }) => on.plus(a, b),
  minus: (on, { a, b }) => on.minus(a, b),
  times: (on, { a, b }) => on.times(a, b),
  over: (on, { a, b }) => on.over(a, b),
  shifted: (on, { a }) => on.shifted(a, 3.5),
  scaled: (on, { b }) => on.scaled(b, -2),
  raised: (on, { a, b }) => on.raised(on.times(a, b), 1.7),
  squareRoot: (on, { a, b }) => on.squareRoot(on.plus(a, b)),
  exp: (on, { a, b }) => on.exp(on.over(a, b)),
  log: (on, { a, b }) => on.log(on.times(a, b)),
  sin: (on, { a, b }) => on.sin(on.times(a, b)),
  cos: (on, { a, b }) => on.cos(on.over(b, a)),
  oneTwice: (on, { a, b }) => on.times(on.plus(a, a), on.minus(b, on.of(0.25))),
};

const on = new Duals(2);

function dual(formula: Formula<Two>, a: number, b: number): readonly [number, number, number] {
  on.clear();
  const y = formula(on, { a: on.input(0, a), b: on.input(1, b) });
  return [on.number(y), on.slope(y, 0), on.slope(y, 1)];
}

/** The slope by central differences, to the fourth order in the step. */
function difference(of: (x: number) => number, x: number): number {
  const h = 1e-3 * x;
  return (8 * (of(x + h) - of(x - h)) - (of(x + 2 * h) - of(x - 2 * h))) / (12 * h);
}

describe.each(Object.entries(formulas))('%s', (_name, formula) => {
  it('has the number of plain arithmetic, and the slopes of differences', () => {
    let looked = 0;
    fc.assert(
      fc.property(
        fc.double({ min: 0.5, max: 3, noNaN: true }),
        fc.double({ min: 0.5, max: 3, noNaN: true }),
        (a, b) => {
          const [number, inA, inB] = dual(formula, a, b);
          expect(number).toBe(formula(NUMBERS, { a, b }));
          const close = (slope: number, other: number): void =>
            expect(Math.abs(slope - other)).toBeLessThan(1e-7 * (1 + Math.abs(slope)));
          close(
            inA,
            difference((x) => formula(NUMBERS, { a: x, b }), a),
          );
          close(
            inB,
            difference((x) => formula(NUMBERS, { a, b: x }), b),
          );
          looked += 1;
        },
      ),
    );
    expect(looked).toBeGreaterThanOrEqual(100);
  });
});

describe('the sheet of dual numbers', () => {
  it('grows with a long formula and loses nothing', () => {
    const sums = new Duals(3);
    let sum = sums.input(1, 2);
    for (let count = 0; count < 1000; count += 1) sum = sums.plus(sum, sums.input(2, 0.5));
    expect([sums.number(sum), sums.slope(sum, 0), sums.slope(sum, 1), sums.slope(sum, 2)]).toEqual([
      502, 0, 1, 1000,
    ]);
  });

  it('begins anew when it is cleared, with no slope left over', () => {
    const first = on.input(0, 7);
    expect(on.slope(first, 0)).toBe(1);
    on.clear();
    const constant = on.of(7);
    expect([on.slope(constant, 0), on.slope(constant, 1)]).toEqual([0, 0]);
  });

  it('keeps the slope 0 of what hangs on no input, also where the outer slope is infinite', () => {
    on.clear();
    const root = on.squareRoot(on.of(0));
    expect(on.slope(root, 0)).toBe(0);
    expect(on.slope(on.squareRoot(on.input(0, 0)), 0)).toBe(Number.POSITIVE_INFINITY);
    expect(on.slope(on.raised(on.input(0, 0), 0), 0)).toBe(0);
  });

  it('refuses an input that it was not made for', () => {
    expect(() => on.input(2, 1)).toThrow(RangeError);
    expect(() => new Duals(-1)).toThrow(RangeError);
    expect(() => new Duals(1.5)).toThrow(RangeError);
  });

  it('has the slopes of Heron’s formula, written once', () => {
    const area = <Value>(sheet: Arithmetic<Value>, sides: readonly [Value, Value, Value]): Value => {
      const [a, b, c] = sides;
      const half = sheet.scaled(sheet.plus(sheet.plus(a, b), c), 0.5);
      const rest = sides.map((side) => sheet.minus(half, side)) as [Value, Value, Value];
      return sheet.squareRoot(rest.reduce((product, each) => sheet.times(product, each), half));
    };
    const three = new Duals(3);
    const y = area(three, [three.input(0, 3), three.input(1, 4), three.input(2, 5)]);
    expect(three.number(y)).toBe(6);
    expect(area(NUMBERS, [3, 4, 5])).toBe(6);
    // By hand: dA/da = a (b² + c² − a²) / (8 A).
    expect([0, 1, 2].map((at) => three.slope(y, at))).toEqual([2, 1.5, 0]);
  });
});
