// Curves of published data, fitted by the product.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { type Arithmetic, type CurveFit, curveFit } from '../../src/ground/maths/index.ts';
import type { Subject } from './subject.ts';

interface DataSet {
  readonly x: readonly number[];
  readonly y: readonly number[];
  readonly starts: readonly (readonly number[])[];
}

const sets = JSON.parse(readFileSync(join(import.meta.dirname, 'data/curve-fits.json'), 'utf8')) as Readonly<
  Record<string, DataSet>
>;

type Model = <Value>(on: Arithmetic<Value>, b: readonly Value[], x: number) => Value;

/** b₀ + b₁ x + b₂ x² + … */
function polynomial<Value>(on: Arithmetic<Value>, b: readonly Value[], x: number): Value {
  return b.reduceRight((sum, each) => on.plus(on.scaled(sum, x), each), on.of(0));
}

const rising: Model = (on, [b1, b2], x) =>
  on.times(b1!, on.shifted(on.scaled(on.exp(on.scaled(b2!, -x)), -1), 1));

const models: Readonly<Record<string, Model>> = {
  misra1a: rising,
  boxbod: rising,
  thurber: (on, b, x) =>
    on.over(polynomial(on, b.slice(0, 4), x), polynomial(on, [on.of(1), ...b.slice(4)], x)),
  mgh09: (on, [b1, b2, b3, b4], x) =>
    on.over(
      on.times(b1!, on.shifted(on.scaled(b2!, x), x * x)),
      on.plus(on.shifted(on.scaled(b3!, x), x * x), b4!),
    ),
  mgh10: (on, [b1, b2, b3], x) => on.times(b1!, on.exp(on.over(b2!, on.shifted(b3!, x)))),
  rat43: (on, [b1, b2, b3, b4], x) => {
    const base = on.shifted(on.exp(on.minus(b2!, on.scaled(b3!, x))), 1);
    return on.over(b1!, on.exp(on.over(on.log(base), b4!)));
  },
  eckerle4: (on, [b1, b2, b3], x) => {
    const off = on.over(on.shifted(on.scaled(b3!, -1), x), b2!);
    return on.times(on.over(b1!, b2!), on.exp(on.scaled(on.times(off, off), -0.5)));
  },
  /** A bed that breaks through: c/c₀ = 1/(1 + e^(k (t₀ − t))). */
  breakthrough: (on, [k, t0], t) =>
    on.over(on.of(1), on.shifted(on.exp(on.times(k!, on.shifted(t0!, -t))), 1)),
};

const kept = new Map<string, CurveFit<string>>();

function fitted(name: string, start: string): CurveFit<string> {
  const key = `${name} ${start}`;
  const { x, y, starts } = sets[name]!;
  const fit =
    kept.get(key) ??
    curveFit<string, number>({
      curve: (on, parameters, at) => models[name]!(on, Object.values(parameters), at),
      points: x.map((at, row) => ({ at, value: y[row]! })),
      start: Object.fromEntries(starts[Number(start) - 1]!.map((value, at) => [`b${at + 1}`, value])),
    });
  kept.set(key, fit);
  return fit;
}

/** A data set and which of its starts, then what of the fit. A fit that has not settled has no figure. */
const curve: Subject = (name = '', start = '', quantity = '', which = '') => {
  const fit = fitted(name, start);
  if (fit.verdict !== 'settled') return Number.NaN;
  if (quantity === 'sumOfSquares') return fit.sumOfSquares;
  return (quantity === 'u' ? fit.u : fit.parameters)[which] ?? Number.NaN;
};

export const CURVES: Readonly<Record<string, Subject>> = { curve };
