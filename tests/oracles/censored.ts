// Regression through observations of which some are only limits, against the survival package of R.
import {
  type CensoredRow,
  type Chance,
  censoredRegression,
  coefficientU,
  type Observed,
} from '../../src/ground/maths/index.ts';
import { between, type Oracle } from './oracle.ts';

/** Sets of observations as plain figures: kind 0 a value, 1 at most, 2 at least, 3 between; a scale of 0 is to be found. */
interface CensoredSet {
  readonly [name: string]: number | readonly number[];
  readonly scale: number;
  readonly kinds: readonly number[];
  readonly xs: readonly number[];
  readonly lows: readonly number[];
  readonly highs: readonly number[];
}

/** A line with scatter, seen through a detection limit, a ceiling, and two marks that bound some of the values. */
function drawn(chance: Chance, scale: number): CensoredSet {
  const count = 8 + chance.integerBelow(23);
  const truth = {
    constant: between(chance, 0.5, 3),
    slope: -between(chance, 0.1, 1),
    scatter: between(chance, 0.2, 1),
  };
  const xs = Array.from({ length: count }, (_, at) => (10 * (at + chance.uniform())) / count);
  const ys = xs.map((x) => truth.constant + truth.slope * x + truth.scatter * chance.normal());
  const sorted = ys.toSorted((a, b) => a - b);
  const [floor, ceiling] = [0.35, 0.9].map((part) => sorted[Math.floor(part * count)] ?? 0);
  const rows = ys.map((y, at): readonly [number, number, number] => {
    if (y < (floor ?? 0)) return [1, floor ?? 0, floor ?? 0];
    if (y > (ceiling ?? 0)) return [2, ceiling ?? 0, ceiling ?? 0];
    if (at % 5 === 0) return [3, Math.floor(2 * y) / 2, Math.floor(2 * y) / 2 + 0.5];
    return [0, y, y];
  });
  const column = (k: 0 | 1 | 2) => rows.map((row) => row[k]);
  return { scale, kinds: column(0), xs, lows: column(1), highs: column(2) };
}

function observedOf(kind: number, low: number, high: number): Observed {
  if (kind === 1) return { atMost: high };
  if (kind === 2) return { atLeast: low };
  return kind === 3 ? { from: low, to: high } : { value: low };
}

function rowsOf({ kinds, xs, lows, highs }: CensoredSet): readonly CensoredRow[] {
  return xs.map((x, at) => ({
    design: [1, x],
    observed: observedOf(kinds[at] ?? 0, lows[at] ?? Number.NaN, highs[at] ?? Number.NaN),
  }));
}

function fitted(set: CensoredSet, rows = rowsOf(set)): readonly number[] {
  const fit = censoredRegression({ rows, ...(set.scale > 0 && { scale: set.scale }) });
  if (fit.covariance === null) throw new Error('undetermined');
  const doubts = Array.from({ length: fit.covariance.rows }, (_, at) => coefficientU(fit, at));
  const shared = fit.covariance.values[1] ?? Number.NaN;
  return [...fit.coefficients, fit.scale, ...doubts, shared, fit.logLikelihood];
}

/** The common slip: half of the limit stands in for a result below it. */
function withHalves(set: CensoredSet): readonly number[] {
  const rows = rowsOf(set).map(({ design, observed }) => ({
    design,
    observed: 'atMost' in observed ? { value: observed.atMost / 2 } : observed,
  }));
  return fitted(set, rows);
}

function oracle(subject: string, scaleOf: (chance: Chance) => number): Oracle<CensoredSet> {
  return {
    subject,
    against: 'R, survival::survreg',
    answers: { script: 'censored_values.py', ask: 'survreg' },
    count: 200,
    point: (chance) => drawn(chance, scaleOf(chance)),
    ours: fitted,
    tolerance: { rel: 1e-9 },
    because:
      'its last step is judged by the likelihood, which is flat at the summit, and its bend is of the step before',
    control: { is: 'half of the limit in the place of a result below it', wrong: withHalves },
  };
}

export const CENSORED_ORACLES: readonly Oracle[] = [
  oracle('censored regression, scatter found', () => 0),
  oracle('censored regression, scatter known', (chance) => between(chance, 0.3, 1)),
];
