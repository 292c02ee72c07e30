// How often chance draws so many, and what censored values come from, against scipy.
import { atLeastDrawn, type Chance, censoredNormal, normalQuantile } from '../../src/ground/maths/index.ts';
import type { Oracle } from './oracle.ts';

const script = 'counting_values.py';

interface Counted extends Readonly<Record<string, number>> {
  readonly total: number;
  readonly marked: number;
  readonly drawn: number;
  readonly atLeast: number;
}

/** As many drawn marked ones as there can be, so that a table of two by two has no entry below nought. */
function counted(chance: Chance, most: number): Counted {
  const total = 2 + chance.integerBelow(most);
  const marked = chance.integerBelow(total + 1);
  const drawn = chance.integerBelow(total + 1);
  const [low, high] = [Math.max(0, drawn + marked - total), Math.min(drawn, marked)];
  return { total, marked, drawn, atLeast: low + chance.integerBelow(high - low + 1) };
}

const ours = ({ atLeast, ...draw }: Counted) => atLeastDrawn(draw, atLeast);
const oneMore = ({ atLeast, ...draw }: Counted) => atLeastDrawn(draw, atLeast + 1);

const tail: Oracle<Counted> = {
  subject: 'counting, tail of drawing',
  against: 'scipy, hypergeom.sf',
  answers: { script, ask: 'atLeastDrawn' },
  count: 300,
  point: (chance) => counted(chance, 400),
  ours,
  tolerance: { rel: 1e-9 },
  because: 'scipy sums terms made of logarithms of factorials, which lose digits as these grow',
  control: { is: 'more than so many, instead of at least', wrong: oneMore },
};

const fisher: Oracle<Counted> = {
  subject: 'counting, exact test of a table',
  against: 'scipy, fisher_exact, greater',
  answers: { script, ask: 'fisher' },
  count: 150,
  point: (chance) => counted(chance, 40),
  ours,
  tolerance: { rel: 1e-10 },
  because: 'the same sum of logarithms, of small numbers',
  control: { is: 'more than so many, instead of at least', wrong: oneMore },
};

const censored: Oracle<{
  seen: readonly number[];
  below: readonly number[];
  above: readonly number[];
}> = {
  subject: 'counting, normal of censored values',
  against: 'scipy, root of the slopes of the likelihood',
  answers: { script, ask: 'censoredNormal' },
  count: 150,
  point: (chance) => {
    const values = Array.from({ length: 12 }, () => 5 + 2 * normalQuantile(chance.uniform()));
    const [low, high] = [4, 8];
    const seen = values.filter((value) => value >= low && value <= high);
    // Too few that were seen would be another question.
    const enough = seen.length >= 4 ? seen : [...seen, 4.5, 5.5, 6.5, 7.5];
    const of = (list: readonly number[], bound: number) => list.map(() => bound);
    return {
      seen: enough,
      below: of(
        values.filter((value) => value < low),
        low,
      ),
      above: of(
        values.filter((value) => value > high),
        high,
      ),
    };
  },
  ours: (values) => {
    const fit = censoredNormal(values);
    return fit === null ? [Number.NaN, Number.NaN] : [fit.mean, fit.sd];
  },
  tolerance: { rel: 1e-8 },
  because: 'it looks for the root by differences, and is asked for nine digits',
  control: {
    is: 'the bound put in for what was not seen',
    wrong: ({ seen, below, above }) => {
      const fit = censoredNormal({ seen: [...seen, ...below, ...above], below: [], above: [] });
      return fit === null ? [Number.NaN, Number.NaN] : [fit.mean, 1.05 * fit.sd];
    },
  },
};

export const COUNTING_ORACLES: readonly Oracle[] = [tail, fisher, censored];
