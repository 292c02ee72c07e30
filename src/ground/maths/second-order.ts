// The doubt of a result with the terms of second order: for a formula that bends over the doubt of its inputs.
import type { Formula } from './arithmetic.ts';
import { type Doubted, mustBeDoubted } from './doubted.ts';
import { type Dual, Duals } from './duals.ts';

/**
 * The combined doubt with the most important terms that propagation leaves out, for independent normal inputs.
 *
 * u² = Σ f_i² u_i² + Σ Σ (½ f_ij² + f_i f_ijj) u_i² u_j². First slopes by dual numbers; second and third as differences of
 * these over one u to each side, which is as far as they matter.
 * @throws RangeError if an input or the result is not finite, or the terms make the variance fall below 0
 * @source gum, note to 5.1.2
 * @example secondOrderU({ inputs: { a: { value: 0, u: 1 } }, formula: (on, { a }) => on.times(a, a) }) // √2; to first order it is 0
 */
export function secondOrderU<Name extends string>({
  inputs,
  formula,
}: {
  readonly inputs: Readonly<Record<Name, Doubted>>;
  readonly formula: Formula<Name>;
}): number {
  const names = Object.keys(inputs) as Name[];
  for (const name of names) mustBeDoubted(name, inputs[name]);
  const on = new Duals(names.length);
  /** f_i u_i with one input moved by so many of its u. */
  const reachAt = (moved: number, by: number): Float64Array => {
    on.clear();
    const x = {} as Record<Name, Dual>;
    names.forEach((name, at) => {
      x[name] = on.input(at, inputs[name].value + (at === moved ? by * inputs[name].u : 0));
    });
    const y = formula(on, x);
    return Float64Array.from(names, (name, at) => on.slope(y, at) * inputs[name].u);
  };
  const first = reachAt(-1, 0);
  let variance = first.reduce((sum, each) => sum + each * each, 0);
  names.forEach((_, j) => {
    const up = reachAt(j, 1);
    const down = reachAt(j, -1);
    for (let i = 0; i < names.length; i += 1) {
      const [here, above, below] = [first[i] as number, up[i] as number, down[i] as number];
      const mixed = (above - below) / 2;
      variance += 0.5 * mixed * mixed + here * (above - 2 * here + below);
    }
  });
  if (!(variance >= 0 && variance < Number.POSITIVE_INFINITY))
    throw new RangeError(`the terms of second order make a variance of ${variance}: draw instead`);
  return Math.sqrt(variance);
}
