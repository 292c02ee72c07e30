// What is written down of standing water: fillings, emptyings, lines, disinfections, tastes, and the shape of walls.
import { describe, expect, test } from 'vitest';
import { holmSilver, type ToldStorage } from '../../../tests/journeys/holm-silver.ts';
import { at, litres, readings } from '../../../tests/journeys/told.ts';
import { containerLife } from './container-life.ts';
import { wettedArea } from './wetted-area.ts';

const water = (told: ToldStorage, store: string) => {
  const found = told.storage().stores.get(store);
  if (found === undefined) throw new Error(`nothing was told of ${store}`);
  return found;
};

function fillAndEmpty(told: ToldStorage, times: number): ToldStorage {
  for (let time = 0; time < times; time += 1) {
    told.goTo(2 + 2 * time).tell('movement', { from: 'R1', to: 'C-03', amount: litres(5) });
    told.goTo(2 + 2 * time, 14).tell('movement', { from: 'R1', to: 'C-03', amount: litres(1) });
    told.goTo(3 + 2 * time).tell('movement', { from: 'C-03', to: 'people', amount: litres(5.8) });
    told.goTo(3 + 2 * time, 14).tell('declared-empty', { store: 'C-03', counters: [] });
  }
  return told;
}

describe('fillings', () => {
  test('one is one however many times it was topped up, and what stood there at first is one', () => {
    expect(water(holmSilver(), 'C-01')).toMatchObject({ fills: 1, empties: 0 });
    expect(water(holmSilver(), 'C-03')).toMatchObject({ fills: 0, empties: 0 });
    expect(water(fillAndEmpty(holmSilver(), 3), 'C-03')).toMatchObject({ fills: 3, empties: 3 });
  });

  test('a dose fills nothing', () => {
    const told = holmSilver();
    told.goTo(2).tell('dose', { stores: ['C-03'], biocide: 'silver', doseEach: litres(0.01) });
    expect(water(told, 'C-03').fills).toBe(0);
  });

  test('near the life of the file, and past it, is a finding', () => {
    const codes = (fills: number) => {
      const told = fillAndEmpty(holmSilver(), fills);
      return ['container-life-near', 'container-life-over'].flatMap((code) =>
        told.storageFindings(code).map((finding) => `${finding.code} ${finding.where.store}`),
      );
    };
    expect(codes(4)).toEqual([]);
    expect(codes(5)).toEqual(['container-life-near C-03']);
    expect(codes(6)).toEqual(['container-life-over C-03']);
  });
});

describe('a dose above the maximum that has happened', () => {
  const into = (valueL: number, more: { targetMgPerL?: number } = {}) => {
    const told = holmSilver();
    const body = { stores: ['C-04', 'C-01'], biocide: 'silver', doseEach: litres(valueL), ...more };
    told.goTo(2).tell('dose', body, { happened: 'poured already' });
    return told;
  };
  const held = (told: ToldStorage) =>
    told
      .position()
      .stores.flatMap(({ facts, hold }) => (hold === null ? [] : [`${facts.id} ${hold.reason}`]));

  test('holds every store that got too much, by volume and strength or by what was meant', () => {
    // 400 mg/L: 25 mL in 18 L make 0.55 mg/L, and in 20 L 0.5 less a little.
    expect(held(into(0.025))).toEqual(['C-04 dose-above-maximum']);
    expect(held(into(0.1))).toEqual(['C-01 dose-above-maximum', 'C-04 dose-above-maximum']);
    expect(held(into(0.01, { targetMgPerL: 2 }))).toEqual(held(into(0.1)));
    expect(
      into(0.025)
        .findings('dose-above-maximum')
        .map(({ data }) => data['happened']),
    ).toEqual(['poured already']);
  });

  test('up to the maximum holds nothing', () => {
    expect(held(into(0.01, { targetMgPerL: 0.2 }))).toEqual([]);
    expect(held(into(0.01, { targetMgPerL: 0.5 }))).toEqual([]);
    expect(into(0.01).findings('dose-above-maximum')).toEqual([]);
  });
});

describe('a life', () => {
  const water0 = { fills: 3, empties: 2, firstMs: 0, disinfected: null };
  const days = (count: number) => count * 86_400_000;

  test.each([
    [{}, 10, 'no life told'],
    [{ lifeDays: 100 }, 89, 'within'],
    [{ lifeDays: 100 }, 90, 'near'],
    [{ lifeDays: 100 }, 100, 'near'],
    [{ lifeDays: 100 }, 101, 'over'],
    [{ lifeCycles: 3, lifeDays: 1000 }, 10, 'near'],
    [{ lifeCycles: 2, lifeDays: 1000 }, 10, 'over'],
  ] as const)('of %o after %i days is %s', (allowed, after, verdict) => {
    expect(containerLife(water0, allowed, days(after)).verdict).toBe(verdict);
  });

  test('begins anew when it was disinfected', () => {
    const told = holmSilver();
    told.goTo(100).tell('service', { item: 'C-01', what: 'Disinfected and rinsed', readings: [] });
    told.goTo(120).tell('service', { item: 'C-01', what: 'seal looked at', readings: [] });
    const { disinfected } = water(told, 'C-01');
    expect(disinfected?.atMs).toBe(at(100));
    expect(containerLife(water(told, 'C-01'), {}, at(110))).toMatchObject({ days: 10, since: 'disinfected' });
  });
});

describe('lines', () => {
  const lastFlow = (told: ToldStorage, name: string) =>
    told.storage().lines.find(({ line }) => line === name)?.lastFlowMs;

  test('a port by what its store gave, a hose by what went through it, and nothing by a dose', () => {
    const told = holmSilver();
    expect(told.storage().lines.map(({ line }) => line)).toEqual([
      'tap feed',
      'flush feed',
      'waste port',
      'H-1',
    ]);
    expect(lastFlow(told, 'tap feed')).toBeNull();
    told.goTo(2).tell('dose', { stores: ['C-01'], biocide: 'silver', doseEach: litres(0.01) });
    expect(lastFlow(told, 'tap feed')).toBeNull();
    told.goTo(3).tell('movement', { from: 'R1', to: 'C-03', amount: litres(5), hose: 'H-1' });
    expect(lastFlow(told, 'H-1')).toBe(at(3));
    told.goTo(4).tell('meter', { readings: readings({ strokes: 300 }) });
    expect([lastFlow(told, 'tap feed'), lastFlow(told, 'H-1')]).toEqual([at(4), at(3)]);
  });

  test('one that stood longer than a biocide may is a finding', () => {
    const told = holmSilver();
    const stood = (day: number) =>
      told
        .goTo(day)
        .storageFindings('line-stood-too-long')
        .map(({ where }) => where.field);
    expect(stood(119)).toEqual([]);
    expect(stood(121)).toEqual(['tap feed', 'flush feed', 'waste port', 'H-1']);
  });
});

describe('tastes', () => {
  const taste = (
    told: ToldStorage,
    day: number,
    more: { store?: string; point?: string; strength?: number },
  ) => told.goTo(day).tell('taste', { words: 'metallic', ...more });
  const patterns = (told: ToldStorage) => told.findings('taste-repeated').map(({ data }) => data['times']);

  test('two at one place within two weeks are a pattern; one, or two places, or three weeks are none', () => {
    const told = holmSilver();
    taste(told, 1, { store: 'C-01' });
    taste(told, 2, { store: 'C-04' });
    taste(told, 3, { point: 'tap' });
    taste(told, 16, { store: 'C-01' });
    expect(patterns(told)).toEqual([]);
    taste(told, 17, { point: 'tap' });
    expect(patterns(told)).toEqual([2]);
    taste(told, 18, { point: 'tap' });
    expect(patterns(told)).toEqual([2, 2]);
    taste(told, 18, { point: 'tap', strength: 0 });
    expect(patterns(told)).toEqual([2, 2]);
    expect(told.storage().tastes).toHaveLength(7);
  });

  test('a fold that was copied goes its own way', () => {
    const told = holmSilver();
    taste(told, 1, { store: 'C-01' });
    const copy = told.fold.clone();
    taste(told, 2, { store: 'C-01' });
    expect(copy.habits.tastes.get('C-01')).toHaveLength(1);
    expect(told.fold.habits.tastes.get('C-01')).toHaveLength(2);
  });
});

test('a wall is that of the file, exactly; else that of the shape, with its doubt, and grows as a surface does', () => {
  expect(wettedArea({ kind: 'container', capacityL: 22, wettedAreaCm2: 5000 })).toEqual({
    areaM2: 0.5,
    uM2: 0,
    from: 'file',
  });
  const [small, large] = [20, 160].map((capacityL) => wettedArea({ kind: 'tank', capacityL }));
  expect(large?.areaM2).toBeCloseTo(4 * (small?.areaM2 ?? 0), 10);
  // A ball has the least wall of all shapes.
  for (const kind of ['tank', 'vehicleTank', 'container', 'wasteContainer', 'buffer', 'softBag'] as const)
    expect(wettedArea({ kind, capacityL: 1000 }).areaM2).toBeGreaterThan(4.836);
});
