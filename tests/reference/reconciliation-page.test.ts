// Runs every example of docs/methods/reconciliation.md.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { Estimator } from '../../src/account/index.ts';
import { chosenColumns, diagonal, made } from './dense.ts';
import {
  biasDirection,
  type Explained,
  explainedBy,
  globalProbability,
  leakDirection,
} from './gross-errors.ts';
import { reconcilePositive } from './positive.ts';
import { doubtsOf, type Problem, reconcile } from './reconcile.ts';
import { reconcilePartly } from './unmeasured.ts';

const page = readFileSync(join(import.meta.dirname, '../../docs/methods/reconciliation.md'), 'utf8');
const block = /```examples\n([\s\S]*?)```/.exec(page)?.[1] ?? '';
const examples = block
  .trim()
  .split('\n')
  .map((line) => /^(\S+(?: (?:x\d|\d)(?= ))?)\s+(.*?)\s+=> (.*)$/.exec(line)?.slice(1) ?? [line, '', '']);

interface Written extends Problem {
  readonly isMeasured: readonly boolean[];
}

/** `100±1 ? 98±1 | x1 - x2 - x3; x2 - x3`: values with their doubts, then balances. */
function written(text: string): Written {
  const [values = '', sums = ''] = text.split(' | ');
  const told = values.split(' ').map((value) => value.split('±').map(Number));
  const balances = sums.split('; ').map((sum) => {
    const terms = [...sum.matchAll(/([+-]?) ?x(\d)/g)];
    return new Map(terms.map(([, sign, which]) => [Number(which) - 1, sign === '-' ? -1 : 1]));
  });
  return {
    isMeasured: told.map(([value]) => Number.isFinite(value)),
    measured: Float64Array.from(told, ([value = Number.NaN]) => value),
    covariance: diagonal(told.map(([, u = 0]) => u * u)),
    balances: made(balances.length, told.length, (row, column) => balances[row]!.get(column) ?? 0),
  };
}

function reconciledText(text: string): string {
  const { values, covariance } = reconcile(written(text));
  const doubts = doubtsOf(covariance);
  return [...values].map((value, at) => `${value.toFixed(1)}±${doubts[at]!.toFixed(1)}`).join(' ');
}

function chiSquareText(text: string): string {
  const solution = reconcile(written(text));
  const percent = Number((100 * globalProbability(solution)).toPrecision(3));
  return `${solution.chiSquare.toFixed(2)} of ${solution.degrees}, ${Number(percent.toPrecision(percent < 1 ? 2 : 3))} %`;
}

function wordsText(text: string): string {
  const { isMeasured, measured, covariance, balances } = written(text);
  const places = isMeasured.map((_, at) => at);
  const [known, unknown] = [places.filter((at) => isMeasured[at]), places.filter((at) => !isMeasured[at])];
  const { words } = reconcilePartly({
    measured: Float64Array.from(known, (at) => measured[at]!),
    covariance: made(
      known.length,
      known.length,
      (a, b) => covariance.values[known[a]! * places.length + known[b]!]!,
    ),
    balances: chosenColumns(balances, known),
    unmeasuredBalances: chosenColumns(balances, unknown),
  });
  const byPlace = new Map(
    [...known, ...unknown].map((at, k) => [at, [...words.measured, ...words.unmeasured][k]]),
  );
  return places.map((at) => byPlace.get(at)?.replace(' ', '-')).join(' ');
}

/** `10±0.05 10±0.05 by one of 1.5 %`: into one store, by one instrument or by one each. */
function transfersText(text: string): string {
  const [amounts = '', count = '', percent = ''] = text.split(/ by | of /);
  const estimator = new Estimator();
  const store = estimator.add(0, 0);
  let calibration = -1;
  for (const amount of amounts.split(' ')) {
    const [massKg = Number.NaN, uKg = Number.NaN] = amount.split('±').map(Number);
    if (calibration === -1 || count !== 'one')
      calibration = estimator.add(0, (Number.parseFloat(percent) / 100) ** 2);
    estimator.move({ from: -1, to: store, calibration, massKg, uKg });
  }
  return `${estimator.mean(store)}±${Math.sqrt(estimator.variance(store)).toFixed(3)}`;
}

const explainedText = ({ size, statistic }: Explained): string =>
  `${size.toFixed(3)}, T ${statistic.toFixed(2)}`;

const acts: Readonly<Record<string, (text: string, which: number) => string>> = {
  reconcile: reconciledText,
  'chi-square': chiSquareText,
  bounded: (text) => [...reconcilePositive(written(text)).values].map((value) => value.toFixed(1)).join(' '),
  bias: (text, which) => {
    const problem = written(text);
    return explainedText(explainedBy(reconcile(problem), biasDirection(problem.balances, which - 1)));
  },
  leak: (text, which) => {
    const problem = written(text);
    return explainedText(explainedBy(reconcile(problem), leakDirection(problem.balances, which - 1)));
  },
  words: wordsText,
  transfers: transfersText,
};

it.each(examples)('%s %s => %s', (act = '', text = '', expected = '') => {
  const [name = '', which = ''] = act.split(' ');
  const run = acts[name];
  if (run === undefined) throw new Error(`the page has an example "${act}" that no test knows`);
  expect(run(text, Number(which.replace('x', '')))).toBe(expected);
});

it('has found the examples', () => {
  expect(examples.length).toBeGreaterThanOrEqual(11);
  expect(new Set(examples.map(([act = '']) => act.split(' ')[0])).size).toBe(Object.keys(acts).length);
});
