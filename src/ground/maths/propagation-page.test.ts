// Runs every example of docs/methods/propagation.md.
import { type Given, runExamplesOf } from '../../../tests/docs/page-examples.ts';
import type { Formula } from './arithmetic.ts';
import { isBorneOut } from './borne-out.ts';
import { coverageFactor } from './coverage-factor.ts';
import { propagate } from './propagate.ts';
import { propagateByDraws } from './propagate-by-draws.ts';
import { secondOrderU } from './second-order.ts';

type Two = 'a' | 'b';

function ofTwo(given: Given, formula: Formula<Two>): string {
  const told = (name: Two) => {
    const [value = Number.NaN, u = Number.NaN] = given.list(name);
    return { value, u };
  };
  const { value, u, parts, pairs } = propagate({
    inputs: { a: told('a'), b: told('b') },
    correlations: [{ of: ['a', 'b'], r: given.number('r') }],
    formula,
  });
  const percent = (share: number): string => `${(100 * share).toFixed(0)} %`;
  const shares = [`a makes ${percent(parts[0]!.share)}`, `b ${percent(parts[1]!.share)}`];
  for (const { share } of pairs) shares.push(`both together ${percent(share)}`);
  return `${value.toFixed(3)}, u ${u.toFixed(3)}; ${shares.join(', ')}`;
}

const square: Formula<'x'> = (on, { x }) => on.times(x, x);

runExamplesOf('propagation.md', 10, {
  sum: (given) => ofTwo(given, (on, { a, b }) => on.plus(a, b)),
  product: (given) => ofTwo(given, (on, { a, b }) => on.times(a, b)),
  coverage: (given) =>
    coverageFactor({ probability: given.number('probability'), degrees: given.number('degrees') }).toFixed(3),
  square: (given) => {
    const inputs = { x: { value: given.number('value'), u: given.number('u') } };
    const propagated = propagate({ inputs, formula: square });
    const drawn = propagateByDraws({ inputs, formula: square, seed: 2147, draws: 200_000 });
    const { verdict } = isBorneOut({ propagated, drawn, digits: 1 });
    return `u ${propagated.u.toFixed(2)}; to second order ${secondOrderU({ inputs, formula: square }).toFixed(2)}; ${verdict}`;
  },
});
