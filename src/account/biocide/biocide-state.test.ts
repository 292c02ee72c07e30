// What is known of a biocide: decay by exact exponentials, what ends a stretch, limits, kinds that speak for one another.
import { describe, expect, test } from 'vitest';
import { HOLM_SILVER, holmSilver, type ToldStorage } from '../../../tests/journeys/holm-silver.ts';
import { litres } from '../../../tests/journeys/told.ts';
import { exp } from '../../ground/maths/index.ts';

/** Holm's containers have 0.5 m² for 20 L in C-01 and for 18 L in C-04. */
const PER_M = { 'C-01': 25, 'C-04': 0.5 / 0.018 } as const;

/** Silver by the law itself, from 0.2 mg/L on the day of a dose. */
const left = (store: 'C-01' | 'C-04', metresPerDay: number, days: number) =>
  0.2 * exp(-metresPerDay * PER_M[store] * days);

function dosed(told: ToldStorage, store: string, day = 1): ToldStorage {
  told
    .goTo(day, 10)
    .tell('dose', { stores: [store], biocide: 'silver', doseEach: litres(0), targetMgPerL: 0.2 });
  return told;
}

/** Samples on those days after a dose on Day 1, told as they were drawn and result by result. */
function decaying(store: 'C-01' | 'C-04', metresPerDay: number, days: readonly number[]): ToldStorage {
  const told = dosed(holmSilver(), store);
  for (const day of days) told.result(store, left(store, metresPerDay, day - 1), { day });
  return told;
}

describe('a rate from the results of a store', () => {
  test.each([0.0002, 0.0005, 0.002])('%f m a day is found again', (rate) => {
    const state = decaying('C-01', rate, [2, 12, 22]).state('C-01');
    expect(state.rate?.metresPerDay).toBeCloseTo(rate, 9);
    expect(state.rate).toMatchObject({ from: 'own', results: 3, stores: 0 });
    expect(state.areaPerVolumePerM).toBeCloseTo(PER_M['C-01'], 9);
    expect(state.noRate).toBeNull();
  });

  test('the ± is that of two results over their exposure', () => {
    const rate = 0.0005;
    const state = decaying('C-01', rate, [2, 22]).state('C-01');
    const [first, second] = [1, 21].map((days) => 0.005 / left('C-01', rate, days));
    const u = Math.sqrt((first ?? 0) ** 2 + (second ?? 0) ** 2) / (25 * 20);
    expect(state.rate?.u).toBeCloseTo(u, 9);
  });

  test('more wall for the water takes more in the same time, and the rate of the wall is the same', () => {
    const rate = 0.0005;
    const [wide, narrow] = (['C-04', 'C-01'] as const).map((store) =>
      decaying(store, rate, [2, 22]).state(store),
    );
    expect(wide?.rate?.metresPerDay).toBeCloseTo(narrow?.rate?.metresPerDay ?? 0, 9);
    expect(wide?.areaPerVolumePerM).toBeGreaterThan(narrow?.areaPerVolumePerM ?? 0);
    expect(wide?.level?.logMgPerL).toBeLessThan(narrow?.level?.logMgPerL ?? 0);
  });

  test('water that is drawn makes the rest go faster, and the rate of the wall is the same', () => {
    const rate = 0.0005;
    const told = dosed(holmSilver(), 'C-01').result('C-01', left('C-01', rate, 1), { day: 2 });
    told.goTo(12).tell('movement', { from: 'C-01', to: 'people', amount: litres(10) });
    const value = 0.2 * exp(-rate * (25 * 11 + 50 * 10));
    const state = told.result('C-01', value, { day: 22 }).state('C-01');
    expect(state.rate?.metresPerDay).toBeCloseTo(rate, 5);
    expect(state.areaPerVolumePerM).toBeCloseTo(50, 0);
  });

  test('the level goes on falling after the last result, and is less sure the longer it is carried on', () => {
    const told = decaying('C-01', 0.0005, [2, 12, 22]);
    const early = told.state('C-01').level;
    const late = told.goTo(60).state('C-01').level;
    expect(exp(late?.logMgPerL ?? 0)).toBeCloseTo(left('C-01', 0.0005, 59), 6);
    expect(late?.uLog).toBeGreaterThan(early?.uLog ?? Number.POSITIVE_INFINITY);
  });

  test('results that scatter more than their doubts say make it less sure, never surer', () => {
    const scattered = dosed(holmSilver(), 'C-01');
    [0.2, 0.13, 0.19, 0.12].forEach((value, k) => {
      scattered.result('C-01', value, { day: 2 + 10 * k });
    });
    const smooth = dosed(holmSilver(), 'C-01');
    [0.2, 0.175, 0.153, 0.134].forEach((value, k) => {
      smooth.result('C-01', value, { day: 2 + 10 * k });
    });
    expect(scattered.state('C-01').rate?.u).toBeGreaterThan(3 * (smooth.state('C-01').rate?.u ?? Number.NaN));
  });
});

describe('no rate is made up', () => {
  test('without a result', () => {
    const state = dosed(holmSilver(), 'C-01').state('C-01');
    expect(state).toMatchObject({ rate: null, level: null, noRate: 'no results', results: [] });
  });

  test('from one result, and what a dose was meant to make is none', () => {
    const state = dosed(holmSilver(), 'C-01').result('C-01', 0.19, { day: 20 }).state('C-01');
    expect(state).toMatchObject({ rate: null, noRate: 'one result' });
    expect(exp(state.level?.logMgPerL ?? 0)).toBeCloseTo(0.19, 12);
  });

  test('across a dose', () => {
    const told = dosed(holmSilver(), 'C-01').result('C-01', 0.19, { day: 2 });
    dosed(told, 'C-01', 30).result('C-01', 0.12, { day: 40 });
    expect(told.state('C-01')).toMatchObject({ rate: null, noRate: 'one result' });
  });

  test('across a fill', () => {
    const told = holmSilver().result('C-04', 0.19, { day: 2 });
    told.goTo(10).tell('movement', { from: 'C-01', to: 'C-04', amount: litres(2) });
    told.result('C-04', 0.12, { day: 20 });
    expect(told.state('C-04')).toMatchObject({ rate: null, noRate: 'one result' });
  });

  test('from limits alone', () => {
    const told = dosed(holmSilver(), 'C-01');
    for (const day of [2, 22]) told.result('C-01', 0.05, { day, below: true });
    expect(told.state('C-01')).toMatchObject({ rate: null, level: null, noRate: 'limits alone' });
  });

  test('from a sample that was drawn on its way in', () => {
    const told = holmSilver();
    told.goTo(2).tell('sample', { store: 'C-01', sample: 'S-1', tests: ['silver'], drawnFrom: 'fill hose' });
    const values = [{ parameter: 'silver', value: 0.19, unit: 'mg/L' }];
    told.goTo(4).tell('result', { sample: 'S-1', store: 'C-01', values });
    expect(told.state('C-01').results).toEqual([]);
  });

  test('where the file tells no instrument', () => {
    const bare = HOLM_SILVER.replace(/ {2}- \{ id: silver-kit, measures: quality.*\n/, '');
    const told = dosed(holmSilver(bare), 'C-01')
      .result('C-01', 0.19, { day: 2 })
      .result('C-01', 0.15, { day: 22 });
    expect(told.state('C-01')).toMatchObject({ rate: null, noRate: 'no instrument' });
  });
});

test('a result below the limit stays one: the rate is faster than without it, and than with the limit as a value', () => {
  const rateWith = (last: (told: ToldStorage) => void) => {
    const told = dosed(holmSilver(), 'C-01')
      .result('C-01', 0.19, { day: 2 })
      .result('C-01', 0.16, { day: 8 });
    last(told);
    return told.state('C-01').rate?.metresPerDay ?? Number.NaN;
  };
  const without = rateWith(() => {});
  const limit = rateWith((told) => told.result('C-01', 0.05, { day: 22, below: true }));
  const asValue = rateWith((told) => told.result('C-01', 0.05, { day: 22 }));
  expect(limit).toBeGreaterThan(without);
  expect(limit).toBeGreaterThan(asValue);
});

test('a sample speaks of when it was drawn, and not of when its result came', () => {
  const state = dosed(holmSilver(), 'C-01').result('C-01', 0.19, { day: 2 }).state('C-01');
  expect(state.results[0]?.exposureDaysPerM).toBeCloseTo(25 * (1 + 2 / 24), 9);
});

test('µg/L are told in mg/L, and another parameter is none of it', () => {
  const told = dosed(holmSilver(), 'C-01');
  told.goTo(2).tell('sample', { store: 'C-01', sample: 'S-1', tests: [] });
  const values = [
    { parameter: 'silver', value: 190, unit: 'µg/L' },
    { parameter: 'TOC', value: 0.5, unit: 'mg/L' },
    { parameter: 'silver', value: 190, unit: 'CFU/mL' },
  ];
  told.goTo(4).tell('result', { sample: 'S-1', values });
  expect(told.state('C-01').results).toMatchObject([{ valueMgPerL: 0.19, parameter: 'silver' }]);
});

describe('age', () => {
  const since = (told: ToldStorage, store: string) => told.state(store).since?.by;

  test('from a dose; else from a delivery, the opening, or the oldest water that came in', () => {
    const told = holmSilver();
    expect(since(told, 'C-01')).toBe('opening');
    dosed(told, 'C-01', 3);
    expect(since(told, 'C-01')).toBe('dose');
    told.goTo(5).tell('movement', { from: 'R1', to: 'C-03', amount: litres(5) });
    expect(since(told, 'C-03')).toBe('opening');
    told.goTo(6).tell('movement', { from: 'C-03', to: 'C-01', amount: litres(1) });
    expect(since(told, 'C-01')).toBe('opening');
  });

  test('over the policy it is a finding, and up to it none', () => {
    const told = dosed(holmSilver(), 'C-01', 3);
    const over = (day: number) =>
      told
        .goTo(day, 9)
        .storageFindings('biocide-over-age')
        .map(({ where }) => where.store);
    expect(over(119)).toEqual([]);
    // What stood at the opening is older by three days than the dose.
    expect(over(122)).toEqual(['R1', 'C-04', 'PB']);
    expect(over(124)).toEqual(['R1', 'C-01', 'C-04', 'PB']);
  });
});
