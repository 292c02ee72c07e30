// Runs every example of docs/methods/control-chart.md.
import { type Given, runExamplesOf } from '../../../tests/docs/page-examples.ts';
import {
  censoredNormal,
  type IndividualsChart,
  individualsChart,
  normalQuantile,
  type RunRule,
  runSignals,
  seededChance,
} from '../../ground/maths/index.ts';
import { chanceStepOf } from './pattern.ts';

const SERIES = 4000;

/** A row of normal numbers, each with so much of the one before. */
function drawn(count: number, memory: number, draw: () => number): number[] {
  const values = [draw()];
  while (values.length < count)
    values.push(memory * (values.at(-1) ?? 0) + Math.sqrt(1 - memory * memory) * draw());
  return values;
}

function normals(seed: number): () => number {
  const chance = seededChance({ seed });
  return () => normalQuantile(chance.uniform());
}

const chartOf = (values: readonly number[]): IndividualsChart => {
  const chart = individualsChart([values]);
  if (chart === null) throw new Error('no chart');
  return chart;
};
const plain = (values: readonly number[]) =>
  values.map((value) => ({ value, censored: 'no' as const, afterGap: false }));
const percent = (count: number): string => ((100 * count) / SERIES).toFixed(1);

function alarms(given: Given): string {
  const [count, memory] = [given.number('n'), given.number('memory')];
  const draw = normals(20 + count);
  const found: Record<RunRule | 'any', number> = {
    'beyond the limits': 0,
    'on one side': 0,
    rising: 0,
    falling: 0,
    any: 0,
  };
  for (let series = 0; series < SERIES; series += 1) {
    const values = drawn(count, memory, draw);
    const rules = new Set(runSignals(plain(values), chartOf(values)).map(({ rule }) => rule));
    for (const rule of rules) found[rule] += 1;
    if (rules.size > 0) found.any += 1;
  }
  const { 'beyond the limits': beyond, 'on one side': side, rising, falling, any } = found;
  return `beyond ${percent(beyond)}, side ${percent(side)}, rising ${percent(rising)}, falling ${percent(falling)}, any ${percent(any)}`;
}

function next(given: Given): string {
  const draw = normals(100 + given.number('n'));
  let outside = 0;
  for (let series = 0; series < SERIES; series += 1) {
    const { low, high } = chartOf(drawn(given.number('n'), 0, draw));
    const value = draw();
    if (value < low || value > high) outside += 1;
  }
  return percent(outside);
}

const list = (given: Given, name: string): readonly number[] =>
  given.text(name) === '' ? [] : given.list(name);

runExamplesOf('control-chart.md', 18, {
  alarms,
  next,
  chart: (given) => {
    const { centre, low, high } = chartOf(given.list('values'));
    return `${+centre.toFixed(4)} from ${low.toFixed(4)} to ${high.toFixed(4)}`;
  },
  fit: (given) => {
    const fit = censoredNormal({
      seen: list(given, 'seen'),
      below: list(given, 'below'),
      above: list(given, 'above'),
    });
    return fit === null ? 'none' : `${fit.mean.toFixed(4)} ${fit.sd.toFixed(4)}`;
  },
  runs: (given) => {
    const signals = runSignals(plain(given.list('values')), { centre: 10, low: 4, high: 16 });
    return signals.length === 0 ? 'none' : signals.map(({ rule }) => rule).join(', ');
  },
  chance: (given) => {
    const [k, n, marked, total] = ['k', 'n', 'K', 'N'].map(given.number);
    const others = { beyond: (marked ?? 0) - (k ?? 0), of: (total ?? 0) - (n ?? 0) };
    const step = chanceStepOf({ beyond: k ?? 0, of: n ?? 0 }, others);
    return step === 1 ? 'more than 1 of 10' : `fewer than 1 of ${step}`;
  },
});
