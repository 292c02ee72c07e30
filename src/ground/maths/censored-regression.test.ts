// Relations of a fit through limits: what must not change it, what it turns into, and when it says that nothing is determined.
import { describe, expect, test } from 'vitest';
import { type CensoredRow, likelihoodAt } from './censored-likelihood.ts';
import { type CensoredFit, censoredRegression, coefficientU } from './censored-regression.ts';
import type { Observed } from './censored-row.ts';
import { seededChance } from './chance.ts';
import { leastSquares } from './least-squares.ts';
import { matrixOf } from './matrix.ts';
import { logNormalCdf, normalEdge } from './normal-tail.ts';

/** y falls with x, seen through a detection limit and with a few intervals. */
function drawn(seed: number, count = 24): CensoredRow[] {
  const chance = seededChance({ seed });
  return Array.from({ length: count }, (_, at) => {
    const x = (10 * at) / count;
    const y = 2 - 0.4 * x + 0.5 * chance.normal();
    return { design: [1, x], observed: seen(y, at) };
  });
}

function seen(y: number, at: number): Observed {
  if (y < -0.5) return { atMost: -0.5 };
  if (y > 2.4) return { atLeast: 2.4 };
  return at % 6 === 0 ? { from: Math.floor(y), to: Math.floor(y) + 1 } : { value: y };
}

const changed = (rows: readonly CensoredRow[], change: (y: number) => number): CensoredRow[] =>
  rows.map(({ design, observed }) => ({
    design,
    observed: Object.fromEntries(Object.entries(observed).map(([key, y]) => [key, change(y)])) as Observed,
  }));

const figures = (fit: CensoredFit) => [...fit.coefficients, fit.scale, ...(fit.covariance?.values ?? [])];

function close(found: readonly number[], wanted: readonly number[], rel = 1e-8): void {
  expect(found.length).toBe(wanted.length);
  found.forEach((value, at) => {
    const want = wanted[at] ?? Number.NaN;
    expect(Math.abs(value - want)).toBeLessThanOrEqual(rel * Math.max(1, Math.abs(want)));
  });
}

const SEEDS = Array.from({ length: 30 }, (_, seed) => seed);

test.each(SEEDS)('the likelihood is least of all slopes where it settles, seed %i', (seed) => {
  const rows = drawn(seed);
  const fit = censoredRegression({ rows });
  expect(fit.verdict).toBe('settled');
  const place = Float64Array.from([...fit.coefficients, 1], (value) => value / fit.scale);
  const there = likelihoodAt(rows, place, true);
  expect(there?.logLikelihood).toBeCloseTo(fit.logLikelihood, 10);
  for (const slope of there?.slope ?? [Number.NaN]) expect(Math.abs(slope)).toBeLessThan(1e-7);
});

test.each(SEEDS)('slope and bend are those of the likelihood, seed %i', (seed) => {
  const rows = drawn(seed);
  const place = Float64Array.from([1.5, -0.3, 1.8]);
  const here = likelihoodAt(rows, place, true);
  const step = 1e-5;
  for (const at of [0, 1, 2]) {
    const [up, down] = [step, -step].map((by) =>
      likelihoodAt(
        rows,
        place.map((value, k) => (k === at ? value + by : value)),
        true,
      ),
    );
    const slope = ((up?.logLikelihood ?? Number.NaN) - (down?.logLikelihood ?? 0)) / (2 * step);
    expect(here?.slope[at]).toBeCloseTo(slope, 4);
    for (const other of [0, 1, 2]) {
      const bent = ((up?.slope[other] ?? Number.NaN) - (down?.slope[other] ?? 0)) / (2 * step);
      const bend = here?.bend.values[at * 3 + other] ?? Number.NaN;
      expect(Math.abs(-bent - bend)).toBeLessThan(1e-5 * Math.max(1, Math.abs(bend)));
    }
  }
});

test('without limits it is least squares, with the sum over the count as the scatter', () => {
  const chance = seededChance({ seed: 4 });
  const points = Array.from({ length: 12 }, (_, x) => ({ x, y: 1 + 0.5 * x + chance.normal() }));
  const rows = points.map(({ x, y }) => ({ design: [1, x], observed: { value: y } }));
  const fit = censoredRegression({ rows });
  const plain = leastSquares(
    matrixOf(points.map(({ x }) => [1, x])),
    Float64Array.from(points, ({ y }) => y),
  );
  if (plain === null) throw new Error('least squares are determined');
  close([...fit.coefficients], [...plain.solution]);
  const squares = points.reduce((sum, { x, y }) => {
    const [constant = 0, slope = 0] = fit.coefficients;
    return sum + (y - constant - slope * x) ** 2;
  }, 0);
  expect(fit.scale).toBeCloseTo(Math.sqrt(squares / points.length), 10);
  // The logarithm of the scatter is known to 1/√(2n).
  expect(coefficientU(fit, 2)).toBeCloseTo(1 / Math.sqrt(24), 8);
});

describe('what must not change a fit', () => {
  test.each(SEEDS)('the order of the rows, seed %i', (seed) => {
    const rows = drawn(seed);
    close(figures(censoredRegression({ rows: rows.toReversed() })), figures(censoredRegression({ rows })));
  });

  test.each(SEEDS)('another unit of y and another nought, seed %i', (seed) => {
    const rows = drawn(seed);
    const [plain, other] = [rows, changed(rows, (y) => 1000 * y + 70)].map((each) =>
      censoredRegression({ rows: each }),
    );
    close(
      [...(other?.coefficients ?? [])],
      [1000 * (plain?.coefficients[0] ?? 0) + 70, 1000 * (plain?.coefficients[1] ?? 0)],
    );
    close([other?.scale ?? 0], [1000 * (plain?.scale ?? 0)]);
  });

  test.each(SEEDS)('everything turned round: at most is at least, seed %i', (seed) => {
    const rows = drawn(seed);
    const turned = rows.map(({ design, observed }): CensoredRow => {
      if ('atMost' in observed) return { design, observed: { atLeast: -observed.atMost } };
      if ('atLeast' in observed) return { design, observed: { atMost: -observed.atLeast } };
      if ('from' in observed) return { design, observed: { from: -observed.to, to: -observed.from } };
      return { design, observed: { value: -observed.value } };
    });
    const [plain, other] = [rows, turned].map((each) => censoredRegression({ rows: each }));
    close(
      [...(other?.coefficients ?? [])].map((value) => -value),
      [...(plain?.coefficients ?? [])],
    );
    close([other?.scale ?? 0], [plain?.scale ?? 0]);
  });

  test('the same bits for the same rows', () => {
    expect(figures(censoredRegression({ rows: drawn(3) }))).toEqual(
      figures(censoredRegression({ rows: drawn(3) })),
    );
  });
});

test('an interval that shrinks becomes its middle, and one without an end becomes a limit', () => {
  const rows = drawn(8).filter(({ observed }) => 'value' in observed);
  const asIntervals = (half: number) =>
    rows.map(({ design, observed }): CensoredRow => {
      const y = 'value' in observed ? observed.value : Number.NaN;
      return { design, observed: { from: y - half, to: y + half } };
    });
  close(
    figures(censoredRegression({ rows: asIntervals(1e-3) })),
    figures(censoredRegression({ rows })),
    1e-4,
  );
  close(
    figures(censoredRegression({ rows: asIntervals(1e-6) })),
    figures(censoredRegression({ rows })),
    1e-7,
  );
  const limit: CensoredRow = { design: [1, 9.9], observed: { atMost: -2 } };
  const between: CensoredRow = { design: [1, 9.9], observed: { from: -500, to: -2 } };
  close(
    figures(censoredRegression({ rows: [...rows, between] })),
    figures(censoredRegression({ rows: [...rows, limit] })),
  );
});

test('a limit that the relation lies far from says nothing, and one it lies beyond draws it over', () => {
  const rows = drawn(8).filter(({ observed }) => 'value' in observed);
  const plain = censoredRegression({ rows, scale: 0.5 });
  const withLimit = (atMost: number) =>
    censoredRegression({ rows: [...rows, { design: [1, 9], observed: { atMost } }], scale: 0.5 });
  close(figures(withLimit(10)), figures(plain));
  expect(withLimit(-4).coefficients[1]).toBeLessThan(plain.coefficients[1] ?? Number.NaN);
});

test('half of the limit in its place is another, steadier and wrong answer', () => {
  const truth = -0.4;
  const slopes = SEEDS.map((seed) => {
    const rows = drawn(seed, 60);
    const halved = rows.map(({ design, observed }) => ({
      design,
      observed: 'atMost' in observed ? { value: observed.atMost } : observed,
    }));
    return [rows, halved].map((each) => censoredRegression({ rows: each }).coefficients[1] ?? Number.NaN);
  });
  const mean = (k: 0 | 1) => slopes.reduce((sum, pair) => sum + (pair[k] ?? Number.NaN), 0) / slopes.length;
  expect(Math.abs(mean(0) - truth)).toBeLessThan(0.02);
  expect(Math.abs(mean(1) - truth)).toBeGreaterThan(0.05);
});

test('the ± of the slope holds the truth about as often as it says', () => {
  let held = 0;
  const tries = 400;
  for (let seed = 1000; seed < 1000 + tries; seed += 1) {
    const fit = censoredRegression({ rows: drawn(seed, 40) });
    if (Math.abs((fit.coefficients[1] ?? Number.NaN) + 0.4) <= 1.96 * coefficientU(fit, 1)) held += 1;
  }
  // 95 % of 400 is 380, give or take 4.4; a fit by the greatest likelihood is a little too sure of itself.
  expect(held).toBeGreaterThan(360);
  expect(held).toBeLessThan(396);
});

describe('what nothing determines', () => {
  const below: CensoredRow = { design: [1], observed: { atMost: 2 } };
  test.each<[string, { rows: readonly CensoredRow[]; scale?: number }]>([
    ['limits alone', { rows: [below, below], scale: 1 }],
    ['limits alone, scatter to be found', { rows: [below, below, below] }],
    ['one value, scatter to be found', { rows: [{ design: [1], observed: { value: 2 } }] }],
    [
      'a line through two points, scatter to be found',
      { rows: [0, 1].map((x) => ({ design: [1, x], observed: { value: x } })) },
    ],
    [
      'two columns that say the same',
      { rows: [1, 2, 3].map((x) => ({ design: [x, 2 * x], observed: { value: x * x } })), scale: 1 },
    ],
    [
      'a slope that only a limit bounds',
      {
        rows: [
          { design: [1, 0], observed: { value: 0 } },
          { design: [1, 1], observed: { atMost: -1 } },
        ],
        scale: 1,
      },
    ],
  ])('%s', (_, asked) => {
    const fit = censoredRegression(asked);
    expect(fit.verdict).toBe('undetermined');
    expect(fit.covariance).toBeNull();
    expect([...fit.coefficients].every(Number.isNaN)).toBe(true);
    expect(coefficientU(fit, 0)).toBeNaN();
  });
});

test.each<[string, { rows: readonly CensoredRow[]; scale?: number }]>([
  ['no rows', { rows: [] }],
  ['an empty design', { rows: [{ design: [], observed: { value: 1 } }] }],
  [
    'rows of unequal length',
    { rows: [1, 2].map((n) => ({ design: Array(n).fill(1), observed: { value: 1 } })) },
  ],
  ['a value that is none', { rows: [{ design: [1], observed: { value: Number.NaN } }] }],
  ['an endless limit', { rows: [{ design: [1], observed: { atMost: Number.POSITIVE_INFINITY } }] }],
  ['a figure that is none', { rows: [{ design: [Number.NaN], observed: { value: 1 } }] }],
  ['an interval turned round', { rows: [{ design: [1], observed: { from: 2, to: 1 } }] }],
  ['no scatter', { rows: [{ design: [1], observed: { value: 1 } }], scale: 0 }],
])('%s is refused', (_, asked) => {
  expect(() => censoredRegression(asked)).toThrow(RangeError);
});

describe('the tail of the normal distribution', () => {
  test('its two ways meet where they change over, and its edge is its slope', () => {
    for (const z of [-1.000001, -0.999999, -8, -0.2, 0, 1.5, 6, -37, -38.5]) {
      const slope = (logNormalCdf(z + 1e-6) - logNormalCdf(z - 1e-6)) / 2e-6;
      expect(Math.abs(normalEdge(z) - slope)).toBeLessThan(1e-6 * Math.max(1, Math.abs(z)));
    }
    expect(logNormalCdf(-0.9999999999)).toBeCloseTo(logNormalCdf(-1.0000000001), 9);
  });

  test('far out it goes on where the probability itself has vanished', () => {
    // −z²/2 − ln(|z| √(2π)) + ln(1 − 1/z² + 3/z⁴ − …), for z = −1000.
    const wanted = -500_000 - 6.907755278982137 - 0.9189385332046727 - 1e-6;
    expect(logNormalCdf(-1000)).toBeCloseTo(wanted, 7);
    expect(normalEdge(-1000)).toBeCloseTo(1000.000999998, 8);
    expect(logNormalCdf(Number.NEGATIVE_INFINITY)).toBe(Number.NEGATIVE_INFINITY);
    expect(normalEdge(Number.POSITIVE_INFINITY)).toBe(0);
    expect(() => logNormalCdf(Number.NaN)).toThrow(RangeError);
    expect(() => normalEdge(Number.NaN)).toThrow(RangeError);
  });
});
