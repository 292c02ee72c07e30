// Runs every example of docs/methods/solvers.md.
import { type Given, runExamplesOf } from '../../../tests/docs/page-examples.ts';
import { cos, sin } from './circle.ts';
import { DormandPrince, type Slopes } from './dormand-prince.ts';
import { exp } from './exponential.ts';
import { newtonBetween } from './newton-between.ts';
import { rootBetween } from './root-between.ts';

type Curve = (x: number) => readonly [value: number, slope: number];

const curves: Readonly<Record<string, Curve>> = {
  'x^2-2': (x) => [x * x - 2, 2 * x],
  'cos(x)-x': (x) => [cos(x) - x, -sin(x) - 1],
  'exp(x)-1e6': (x) => [exp(x) - 1e6, exp(x)],
  'step(0.3)': (x) => [x < 0.3 ? -1 : 1, 0],
};

function searched(given: Given, find: (look: Curve, ends: { low: number; high: number }) => number): string {
  const curve = curves[given.text('of')];
  if (curve === undefined) throw new Error(`no curve is called ${given.text('of')}`);
  let looks = 0;
  const root = find(
    (x) => {
      looks += 1;
      return curve(x);
    },
    { low: given.number('low'), high: given.number('high') },
  );
  return `${root.toFixed(15)}, ${looks} looks`;
}

const decay: Slopes = (_t, y, slope) => {
  slope[0] = -(y[0] as number);
};
const turn: Slopes = (_t, y, slope) => {
  slope[0] = y[1] as number;
  slope[1] = -(y[0] as number);
};

runExamplesOf('solvers.md', 10, {
  brent: (given) => searched(given, (look, ends) => rootBetween((x) => look(x)[0], ends)),
  newton: (given) =>
    searched(given, (look, { low, high }) =>
      newtonBetween(
        (x, at) => {
          [at[0], at[1]] = look(x);
        },
        { low, high, start: (low + high) / 2 },
      ),
    ),
  decay: (given) => {
    const y = new Float64Array([1]);
    const { steps } = new DormandPrince(1, decay).run(y, { from: 0, to: given.number('to') });
    return `${y[0]?.toFixed(15)}, ${steps} steps`;
  },
  half: (given) => {
    const y = new Float64Array([1]);
    const level = given.number('until');
    const span = { from: 0, to: Number.POSITIVE_INFINITY };
    const { t } = new DormandPrince(1, decay).run(y, span, (_t, state) => (state[0] as number) - level);
    return `t ${t.toFixed(12)}`;
  },
  circle: (given) => {
    const y = new Float64Array([0, 1]);
    const rules = { relativeError: 1e-12, absoluteError: 1e-14 };
    new DormandPrince(2, turn, rules).run(y, { from: 0, to: given.number('to') });
    return [...y].map((value) => (Math.abs(value) < 5e-11 ? 0 : value).toFixed(10)).join(', ');
  },
});
