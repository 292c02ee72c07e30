// Days of cover against a simulation of the same model, and what must hold whatever the figures are.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { MG_PER_L } from '../../tests/journeys/holm.ts';
import { dayLine, holm, litres } from '../../tests/journeys/told.ts';
import { normalCdf, normalQuantile, seededChance } from '../ground/maths/index.ts';
import { coverOf } from './cover.ts';
import { coverHalfWidth, coverQuantiles as quantilesOf, type Stock } from './cover-quantiles.ts';
import { sureUse } from './use-ahead.ts';

interface Drawn {
  readonly useMgPerDay: number;
  readonly useUMgPerDay: number;
  readonly dayUMg: number;
}

/** One person whose mean use is uncertain and whose days differ without a mood. */
const draw = ({ useMgPerDay, useUMgPerDay, dayUMg }: Drawn) => ({
  people: 1,
  cases: [sureUse({ meanMg: useMgPerDay, uMg: useUMgPerDay, dayUMg })],
});
const coverQuantiles = (of: Stock, drawn: Drawn) => quantilesOf(of, draw(drawn));

const stock = (valueL: number, uL: number): Stock => ({ massMg: valueL * MG_PER_L, uMg: uL * MG_PER_L });
const drawn = (useL: number, uL: number, dayL: number): Drawn => ({
  useMgPerDay: useL * MG_PER_L,
  useUMgPerDay: uL * MG_PER_L,
  dayUMg: dayL * MG_PER_L,
});

/** The model: an unknown stock, an unknown mean use, and a noise of every day. */
const CASES: readonly { name: string; s: Stock; d: Drawn; paths: number }[] = [
  { name: 'a well known stock and use', s: stock(150, 3), d: drawn(4.3, 0.3, 0.6), paths: 5000 },
  { name: 'a doubtful stock', s: stock(60, 12), d: drawn(3, 0.1, 0.4), paths: 5000 },
  { name: 'a doubtful use', s: stock(100, 2), d: drawn(4, 1, 0.3), paths: 5000 },
  { name: 'noisy days', s: stock(40, 1), d: drawn(4, 0.1, 2.5), paths: 5000 },
];

/** Contents of all paths after so many days; the noise of a part of a day is its part of the variance. */
function contentsAfter(days: number, { s, d, paths }: (typeof CASES)[number], seed: number): number[] {
  const chance = seededChance({ seed });
  return Array.from({ length: paths }, () => {
    const start = s.massMg + s.uMg * chance.normal();
    const use = d.useMgPerDay + d.useUMgPerDay * chance.normal();
    return start - use * days + d.dayUMg * Math.sqrt(days) * chance.normal();
  });
}

/** First day at which each path is empty, walked in tenths of a day; infinite where it is not within 400 days. */
function firstEmpty({ s, d, paths }: (typeof CASES)[number], seed: number): number[] {
  const chance = seededChance({ seed });
  const step = 0.1;
  return Array.from({ length: paths }, () => {
    let content = s.massMg + s.uMg * chance.normal();
    const use = d.useMgPerDay + d.useUMgPerDay * chance.normal();
    for (let k = 1; k <= 4000; k++) {
      content -= use * step + d.dayUMg * Math.sqrt(step) * chance.normal();
      if (content <= 0) return k * step;
    }
    return Number.POSITIVE_INFINITY;
  });
}

const share = (list: readonly number[], isIn: (value: number) => boolean) =>
  list.filter(isIn).length / list.length;
/** Four standard errors of a share of 5,000 paths. */
const errorOf = (p: number, paths: number) => 4 * Math.sqrt((p * (1 - p)) / paths);

describe.each(CASES.map((each, k) => ({ ...each, seed: k + 1 })))('$name', (each) => {
  const quantiles = coverQuantiles(each.s, each.d);
  test.each([
    [0.05, 'q05'],
    [0.5, 'q50'],
    [0.95, 'q95'],
  ] as const)('%s of the simulated paths are empty at %s', (p, key) => {
    const days = quantiles[key];
    if (days === null) throw new Error('no quantile');
    const empty = share(contentsAfter(days, each, each.seed), (content) => content <= 0);
    expect(Math.abs(empty - p)).toBeLessThan(errorOf(p, each.paths));
  });

  test('a walk that counts the first empty moment agrees within two in a hundred', () => {
    const first = firstEmpty(each, each.seed + 10);
    for (const [p, days] of [
      [0.05, quantiles.q05],
      [0.5, quantiles.q50],
      [0.95, quantiles.q95],
    ] as const) {
      expect(Math.abs(share(first, (day) => day <= (days ?? 0)) - p)).toBeLessThan(
        errorOf(p, each.paths) + 0.02,
      );
    }
  });
});

test('the simulation would see a wrong quantile: a tenth more days is caught', () => {
  const [each] = CASES;
  if (each === undefined) throw new Error('no case');
  const late = (coverQuantiles(each.s, each.d).q50 ?? 0) * 1.1;
  expect(Math.abs(share(contentsAfter(late, each, 5), (content) => content <= 0) - 0.5)).toBeGreaterThan(
    errorOf(0.5, 5000),
  );
});

/** Litres in whole milligrams. */
const figure = (min: number, max: number) =>
  fc.integer({ min: min * MG_PER_L, max: max * MG_PER_L }).map((mg) => mg / MG_PER_L);
const anyCase = fc.record({
  s: figure(0, 500),
  us: figure(0, 100),
  r: figure(0.01, 50),
  ur: figure(0, 10),
  sigma: figure(0, 20),
});
/** Null says never: later than any day. */
const orNever = (days: number | null) => days ?? Number.POSITIVE_INFINITY;
const of = (c: { s: number; us: number; r: number; ur: number; sigma: number }) =>
  coverQuantiles(stock(c.s, c.us), drawn(c.r, c.ur, c.sigma));

describe('relations', () => {
  test('quantiles stand in order, and each one solves its equation', () => {
    fc.assert(
      fc.property(anyCase, (c) => {
        const { q05, q50, q95 } = of(c);
        expect(orNever(q05)).toBeLessThanOrEqual(orNever(q50));
        expect(orNever(q50)).toBeLessThanOrEqual(orNever(q95));
        for (const [p, t] of [
          [0.05, q05],
          [0.95, q95],
        ] as const) {
          if (t === null || t <= 0 || c.s <= 0) continue;
          const spread = Math.sqrt(c.us * c.us + c.ur * c.ur * t * t + c.sigma * c.sigma * t);
          if (spread > 1e-9) expect(normalCdf((c.r * t - c.s) / spread)).toBeCloseTo(p, 6);
        }
      }),
      { numRuns: 3000, seed: 31 },
    );
  });

  test('more stock never lasts shorter, more use never longer', () => {
    fc.assert(
      fc.property(anyCase, figure(0, 100), (c, more) => {
        const [one, other, faster] = [of(c), of({ ...c, s: c.s + more }), of({ ...c, r: c.r + more })];
        for (const key of ['q05', 'q50', 'q95'] as const) {
          expect(orNever(other[key])).toBeGreaterThanOrEqual(orNever(one[key]) * (1 - 1e-9) - 1e-9);
          expect(orNever(faster[key])).toBeLessThanOrEqual(orNever(one[key]) * (1 + 1e-9) + 1e-9);
        }
      }),
      { numRuns: 3000, seed: 32 },
    );
  });

  test('more doubt never brings the early day later', () => {
    fc.assert(
      fc.property(anyCase, figure(0, 20), (c, more) => {
        for (const key of ['us', 'ur', 'sigma'] as const) {
          expect(orNever(of({ ...c, [key]: c[key] + more }).q05)).toBeLessThanOrEqual(
            orNever(of(c).q05) * (1 + 1e-9) + 1e-9,
          );
        }
      }),
      { numRuns: 1000, seed: 33 },
    );
  });

  test('a unit of mass is a unit of mass: days do not depend on it', () => {
    const grams = coverQuantiles(
      { massMg: 150_000, uMg: 3000 },
      { useMgPerDay: 4300, useUMgPerDay: 300, dayUMg: 600 },
    );
    const [whole] = CASES;
    if (whole === undefined) throw new Error('no case');
    const kilograms = coverQuantiles(whole.s, whole.d);
    for (const key of ['q05', 'q50', 'q95'] as const) expect(grams[key]).toBeCloseTo(kilograms[key] ?? 0, 9);
  });
});

describe('limits', () => {
  test('without any doubt all three are stock over use', () => {
    for (const days of Object.values(coverQuantiles(stock(100, 0), drawn(4, 0, 0))))
      expect(days).toBeCloseTo(25, 9);
  });

  test('nothing there lasts no day', () => {
    expect(coverQuantiles(stock(0, 0), drawn(4, 0.5, 1)).q05).toBe(0);
    expect(coverQuantiles(stock(0, 0), drawn(4, 0.5, 1)).q50).toBe(0);
    expect(coverQuantiles(stock(-2, 0.1), drawn(4, 0.5, 1))).toEqual({ q05: 0, q50: 0, q95: 0 });
  });

  test('a stock that may be nothing may last no day, and may last longer', () => {
    const { q05, q50, q95 } = coverQuantiles(stock(1, 10), drawn(4, 0.5, 1));
    expect(q05).toBe(0);
    expect(q50).toBeCloseTo(0.25, 9);
    expect(q95).toBeGreaterThan(4);
  });

  test('a stock that grows by a known rate never runs out', () => {
    expect(coverQuantiles(stock(100, 2), drawn(-1, 0.1, 0))).toEqual({ q05: null, q50: null, q95: null });
    expect(coverQuantiles(stock(100, 0), drawn(0, 0, 0))).toEqual({ q05: null, q50: null, q95: null });
  });

  test('a stock that may grow has an early day and no late one', () => {
    const { q05, q50, q95 } = coverQuantiles(stock(100, 2), drawn(-1, 4, 0));
    expect(q05).toBeGreaterThan(15);
    expect([q50, q95]).toEqual([null, null]);
  });

  test('a huge doubt of the use leaves the late day open', () => {
    const { q05, q50, q95 } = coverQuantiles(stock(100, 2), drawn(4, 40, 1));
    expect(q05).toBeGreaterThan(0);
    expect(q50).toBeCloseTo(25, 9);
    expect(q95).toBeNull();
  });

  test('no day is below 0, even where two doubts cancel to the last bit', () => {
    const z95 = normalQuantile(0.95);
    for (const r of [-2, 2]) {
      for (const day of Object.values(coverQuantiles(stock(50, 1), drawn(r, Math.abs(r) / z95, 0))))
        expect(day ?? 0).toBeGreaterThanOrEqual(0);
    }
  });

  test('a figure that is none is refused, never an endless cover', () => {
    for (const bad of [Number.NaN, Number.POSITIVE_INFINITY]) {
      expect(() => coverQuantiles(stock(bad, 1), drawn(4, 1, 1))).toThrow(RangeError);
      expect(() => coverQuantiles(stock(10, bad), drawn(4, 1, 1))).toThrow(RangeError);
      expect(() => coverQuantiles(stock(10, 1), drawn(bad, 1, 1))).toThrow(RangeError);
      expect(() => coverQuantiles(stock(10, 1), drawn(4, bad, 1))).toThrow(RangeError);
      expect(() => coverQuantiles(stock(10, 1), drawn(4, 1, bad))).toThrow(RangeError);
    }
    expect(() => coverQuantiles(stock(10, -1), drawn(4, 1, 1))).toThrow(RangeError);
  });

  test('what would last longer than a hundred years does not run out', () => {
    expect(coverQuantiles(stock(365, 0), drawn(0.011, 0, 0)).q50).toBeCloseTo(365 / 0.011, 6);
    expect(coverQuantiles(stock(365, 0), drawn(0.0099, 0, 0)).q50).toBeNull();
  });
});

describe('mixtures', () => {
  const [light, heavy] = [
    sureUse({ meanMg: 3, uMg: 0.1, dayUMg: 0.5 }),
    sureUse({ meanMg: 5, uMg: 0.3, dayUMg: 1 }),
  ];
  const mixed = {
    people: 2,
    cases: [
      { ...light, weight: 0.25 },
      { ...heavy, weight: 0.75 },
    ],
  };
  const stockOf = { massMg: 300, uMg: 4 };

  test('a quantile of a mixture solves the mixture of its parts', () => {
    const { q05, q50, q95 } = quantilesOf(stockOf, mixed);
    for (const [p, t] of [
      [0.05, q05],
      [0.5, q50],
      [0.95, q95],
    ] as const) {
      if (t === null) throw new Error('no quantile');
      const chanceOf = ({ meanMg, meanVariance, noiseVariance }: typeof light) =>
        normalCdf((2 * t * meanMg - 300) / Math.sqrt(16 + 4 * (t * t * meanVariance + t * noiseVariance)));
      expect(0.25 * chanceOf(light) + 0.75 * chanceOf(heavy)).toBeCloseTo(p, 8);
    }
  });

  test('a mixture of one thing with itself is that thing', () => {
    const halves = {
      people: 2,
      cases: [
        { ...light, weight: 0.5 },
        { ...light, weight: 0.5 },
      ],
    };
    const whole = quantilesOf(stockOf, { people: 2, cases: [light] });
    for (const key of ['q05', 'q50', 'q95'] as const)
      expect(quantilesOf(stockOf, halves)[key]).toBeCloseTo(whole[key] ?? 0, 8);
  });

  test('twice the people and twice the stock last as long', () => {
    const once = quantilesOf(stockOf, mixed);
    const twice = quantilesOf({ massMg: 600, uMg: 8 }, { ...mixed, people: 4 });
    for (const key of ['q05', 'q50', 'q95'] as const) expect(twice[key]).toBeCloseTo(once[key] ?? 0, 6);
  });

  test('half the width at 95 %: of a doubtful stock alone it is 1.96 u over the use', () => {
    const sure = { people: 1, cases: [sureUse({ meanMg: 5, uMg: 0, dayUMg: 0 })] };
    expect(coverHalfWidth(stockOf, sure)).toBeCloseTo((normalQuantile(0.975) * 4) / 5, 8);
    expect(coverHalfWidth({ massMg: 300, uMg: 0 }, sure)).toBeCloseTo(0, 9);
    expect(coverHalfWidth(stockOf, { people: 0, cases: sure.cases })).toBeNull();
  });
});

describe('of a position', () => {
  const lines = (told: ReturnType<typeof holm>, days: number) => {
    for (let day = 1; day <= days; day++) {
      told.goTo(day, 21).tell(
        'day-line',
        dayLine(day, {
          condensate: (990 + 3 * day) % 1000,
          product: 3,
          strokes: 160 + 8 * (day % 3),
          flushes: 12,
        }),
      );
    }
  };

  test('few days stand on the norm and say so, more days on what was used', () => {
    const told = holm();
    lines(told, 3);
    const norm = coverOf(told.position(), 'drinking');
    expect(norm.use?.basis).toBe('norm');
    expect(norm.useMgPerDay).toBeCloseTo(2 * (2.7 - 1.7 * 0.96) * MG_PER_L, 0);
    const longer = holm();
    lines(longer, 9);
    const learned = coverOf(longer.position(), 'drinking');
    expect(learned.use).toMatchObject({ basis: 'learned', days: 9 });
    // 168 strokes of 25 mL less 3 L made; the norm of 2.1 L draws a little.
    expect(learned.useMgPerDay).toBeGreaterThan(1.2 * MG_PER_L);
    expect(learned.useMgPerDay).toBeLessThan(1.25 * MG_PER_L);
  });

  test('water on hold, conditional, unreleased, emptied or of the reserve is not in it', () => {
    const told = holm();
    const freeL = () => coverOf(told.position(), 'drinking').free.massMg / MG_PER_L;
    // C-01 and C-04 above their remainder, and the buffer.
    expect(freeL()).toBeCloseTo(20 - 0.6 + 18 - 0.6 + 2 - 0.3, 6);
    told.tell('hold', { hold: 'Q-1', stores: ['C-04'], conditional: ['C-01'], reason: 'count' });
    expect(freeL()).toBeCloseTo(1.7, 6);
    told.tell('release', {
      hold: 'Q-1',
      stores: ['C-01', 'C-04'],
      values: [
        { parameter: 'silver', value: 0.2, unit: 'mg/L' },
        { parameter: 'plate count', value: 2, unit: 'CFU/mL' },
      ],
    });
    told.tell('movement', { from: 'unplaced', to: 'C-04', amount: litres(1) });
    expect(freeL()).toBeCloseTo(20 - 0.6 + 1.7, 6);
  });

  test('to the floor counts what the reserve holds above it', () => {
    const told = holm();
    const cover = coverOf(told.position(), 'drinking');
    const use = cover.useMgPerDay ?? 1;
    expect(cover.toFloor?.q50).toBeCloseTo((cover.free.massMg + 50 * MG_PER_L) / use, 9);
    expect(coverOf(told.position(), 'technical').toFloor).toBeNull();
  });

  test('a grade without use and without a norm says so', () => {
    const told = holm();
    const cover = coverOf(told.position(), 'raw');
    expect([cover.use, cover.q05, cover.q50, cover.q95]).toEqual([null, null, null, null]);
  });
});
