// Runs every example of docs/methods/censored-regression.md.
import { type Given, runExamplesOf } from '../../../tests/docs/page-examples.ts';
import { censoredRegression, coefficientU } from './censored-regression.ts';
import type { Observed } from './censored-row.ts';

/** `1.2`, `<0.5`, `>3`, `1..2`. */
function observed(text: string): Observed {
  if (text.startsWith('<')) return { atMost: Number(text.slice(1)) };
  if (text.startsWith('>')) return { atLeast: Number(text.slice(1)) };
  const [from, to] = text.split('..').map(Number);
  if (from !== undefined && to !== undefined) return { from, to };
  return { value: Number(text) };
}

function told(given: Given, designs: readonly (readonly number[])[], names: readonly string[]): string {
  const seen = given.text('y').split(',').map(observed);
  const rows = designs.map((design, at) => ({ design, observed: seen[at] ?? { value: Number.NaN } }));
  const scatter = given.text('scatter');
  const fit = censoredRegression({ rows, ...(scatter !== 'found' && { scale: Number(scatter) }) });
  if (fit.verdict === 'undetermined') return fit.verdict;
  const parts = names.map(
    (name, at) =>
      `${name} ${(fit.coefficients[at] ?? Number.NaN).toFixed(3)} u ${coefficientU(fit, at).toFixed(3)}`,
  );
  return [...parts, ...(scatter === 'found' ? [`scatter ${fit.scale.toFixed(3)}`] : [])].join(', ');
}

runExamplesOf('censored-regression.md', 8, {
  level: (given) =>
    told(
      given,
      given
        .text('y')
        .split(',')
        .map(() => [1]),
      ['a'],
    ),
  line: (given) =>
    told(
      given,
      given.list('x').map((x) => [1, x]),
      ['a', 'b'],
    ),
});
