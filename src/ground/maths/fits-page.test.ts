// Runs every example of docs/methods/fits.md.
import { type Given, runExamplesOf } from '../../../tests/docs/page-examples.ts';
import { type CurveFit, curveFit } from './curve-fit.ts';
import type { Curve } from './curve-surface.ts';

function fitted<Name extends string>(
  given: Given,
  asked: { curve: Curve<Name, number>; along: string; start: Record<Name, number>; mostSteps?: number },
): CurveFit<Name> {
  const values = given.list('y');
  const points = given.list(asked.along).map((at, row) => ({ at, value: values[row]! }));
  return curveFit({ ...asked, points });
}

const known = (value: number, digits: number): string => (Number.isNaN(value) ? '-' : value.toFixed(digits));

function told<Name extends string>(
  { verdict, parameters, u }: CurveFit<Name>,
  digits: Record<Name, number>,
): string {
  if (verdict !== 'settled') return verdict;
  const each = (Object.keys(digits) as Name[]).map(
    (name) => `${name} ${parameters[name].toFixed(digits[name])} u ${known(u[name], digits[name])}`,
  );
  return `settled: ${each.join(', ')}`;
}

runExamplesOf('fits.md', 6, {
  line: (given) => {
    const curve: Curve<'a' | 'b', number> = (on, { a, b }, x) => on.plus(a, on.scaled(b, x));
    const fit = fitted(given, { curve, along: 'x', start: { a: 0, b: 0 } });
    const scatter = fit.verdict === 'settled' ? `, s ${known(fit.residualU, 2)}` : '';
    return told(fit, { a: 2, b: 2 }) + scatter;
  },
  decay: (given) => {
    const curve: Curve<'a' | 'k', number> = (on, { a, k }, t) => on.times(a, on.exp(on.scaled(k, -t)));
    let mostSteps = 1000;
    try {
      mostSteps = given.number('most');
    } catch {
      // The line that does not tell it has as many as it needs.
    }
    return told(fitted(given, { curve, along: 't', start: { a: 1, k: 1 }, mostSteps }), { a: 3, k: 3 });
  },
  breakthrough: (given) => {
    const curve: Curve<'k' | 't0', number> = (on, { k, t0 }, t) =>
      on.over(on.of(1), on.shifted(on.exp(on.times(k, on.shifted(t0, -t))), 1));
    const fit = fitted(given, { curve, along: 't', start: { k: 0.01, t0: 600 } });
    return told(fit, { k: 5, t0: 1 });
  },
});
