// The pattern over stores: how many of how many, against before, and what the bad ones share.
import { describe, expect, test } from 'vitest';
import { atDay, measured, row } from '../../../tests/quality/measured.ts';
import type { MeasuredPoint } from './measured-point.ts';
import { chanceStepOf, patternOf, type Trait } from './pattern.ts';

const rows = [row({ limit: { atLeast: 0.05, atMost: 0.4 } })];
const silver = (store: string, value: number, change: Partial<MeasuredPoint> & { day?: number } = {}) => {
  const { day = 50, ...rest } = change;
  return measured({ day, value, store, ...rest });
};

/** Four from FA, of which one came by the other hose; three from T1, one of them by the hose of the bad ones. */
const ways: Readonly<Record<string, readonly Trait[]>> = {
  'C-01': [
    { kind: 'from', name: 'FA' },
    { kind: 'by', name: 'H-1' },
  ],
  'C-02': [
    { kind: 'from', name: 'FA' },
    { kind: 'by', name: 'H-1' },
  ],
  'C-03': [
    { kind: 'from', name: 'FA' },
    { kind: 'by', name: 'H-1' },
  ],
  'C-04': [
    { kind: 'from', name: 'FA' },
    { kind: 'by', name: 'H-2' },
  ],
  'C-05': [
    { kind: 'from', name: 'T1' },
    { kind: 'by', name: 'H-1' },
  ],
  'C-06': [
    { kind: 'from', name: 'T1' },
    { kind: 'by', name: 'H-2' },
  ],
  'C-07': [
    { kind: 'from', name: 'T1' },
    { kind: 'by', name: 'H-2' },
  ],
};
const rack: Trait = { kind: 'stands in', name: 'rack' };
const traitsOf = ({ store }: MeasuredPoint): readonly Trait[] => [...(ways[store ?? ''] ?? []), rack];
const asked = { rows, nowMs: atDay(60), traitsOf };
const seven = Object.keys(ways).map((store, k) => silver(store, k < 3 ? 0.03 : 0.2));

function mustBe(points: readonly MeasuredPoint[], change: Partial<typeof asked> = {}) {
  const pattern = patternOf(points, { ...asked, ...change });
  if (pattern === null) throw new Error('no pattern');
  return pattern;
}

describe('what the bad ones share', () => {
  test('3 of 3 that came from FA by H-1, 0 of 4 others', () => {
    const { now, groups, sharedByAll } = mustBe(seven);
    expect(now).toEqual({ beyond: 3, of: 7 });
    const [first] = groups;
    expect(first).toMatchObject({
      traits: [
        { kind: 'from', name: 'FA' },
        { kind: 'by', name: 'H-1' },
      ],
      stores: ['C-01', 'C-02', 'C-03'],
      inside: { beyond: 3, of: 3 },
      outside: { beyond: 0, of: 4 },
      // 1 of the 35 ways to draw three of seven.
      chance: 20,
    });
    expect(sharedByAll).toEqual([rack]);
  });

  test('is ranked: what chance would hardly give comes first, and nothing that holds more among the others', () => {
    const { groups } = mustBe(seven);
    expect(groups.map(({ chance }) => chance)).toEqual(
      [...groups.map(({ chance }) => chance)].sort((a, b) => b - a),
    );
    expect(groups.length).toBeGreaterThan(1);
    for (const { inside, outside } of groups)
      expect(inside.beyond / inside.of).toBeGreaterThan(outside.beyond / outside.of);
  });

  test('is told in one line where the very same stores share it', () => {
    const both = (point: MeasuredPoint): readonly Trait[] =>
      traitsOf(point).flatMap((trait) =>
        trait.name === 'FA' ? [trait, { kind: 'filled on', name: 'Day 40' } as const] : [trait],
      );
    const { groups } = mustBe(seven, { traitsOf: both });
    const four = groups.find(({ stores }) => stores.length === 4 && stores.includes('C-04'));
    expect(four?.traits).toEqual([
      { kind: 'from', name: 'FA' },
      { kind: 'filled on', name: 'Day 40' },
    ]);
  });

  test('does not hang on the order of the results', () => {
    expect(mustBe([...seven].reverse())).toEqual(mustBe(seven));
  });
});

describe('of several results of a store', () => {
  test('the worst counts, whichever came last', () => {
    const { now, stores } = mustBe([
      silver('C-01', 0.03, { day: 45 }),
      silver('C-01', 0.2),
      silver('C-02', 0.2),
    ]);
    expect(now).toEqual({ beyond: 1, of: 2 });
    expect(stores[0]).toMatchObject({ store: 'C-01', found: 'below', isBeyond: true });
  });

  test('second figures and sampling points are passed over', () => {
    const points = [silver('C-01', 0.2), silver('C-02', 0.2), silver('C-02', 9, { duplicate: true })];
    expect(mustBe([...points, measured({ day: 50, value: 9, point: 'tap' })]).now).toEqual({
      beyond: 0,
      of: 2,
    });
  });
});

describe('what is not clear', () => {
  test('counts in neither number', () => {
    const { now, stores } = mustBe([
      silver('C-01', 0.1, { censored: 'below' }),
      silver('C-02', 0.2),
      silver('C-03', 0.5),
    ]);
    expect(stores[0]?.found).toBe('unclear');
    expect(now).toEqual({ beyond: 1, of: 2 });
  });

  test('without a row in force: seen or not seen; what is off judges nothing', () => {
    const off = [row({ limit: null, remembered: { atMost: 0.1 } })];
    const points = [silver('C-01', 0.5), silver('C-02', 0), silver('C-03', 0.01, { censored: 'below' })];
    for (const none of [[], off])
      expect(mustBe(points, { rows: none }).stores.map(({ found }) => found)).toEqual([
        'seen',
        'not seen',
        'not seen',
      ]);
  });
});

describe('against before', () => {
  test('stores with results up to thirty days back are compared', () => {
    const earlier = Array.from({ length: 9 }, (_, k) => silver(`B-${k}`, 0.2, { day: 20 }));
    const five = Array.from({ length: 5 }, (_, k) => silver(`C-${k}`, k < 3 ? 0.03 : 0.2));
    const { now, before } = mustBe([...earlier, ...five]);
    expect(now).toEqual({ beyond: 3, of: 5 });
    // 10 of the 364 ways to draw three of fourteen.
    expect(before).toEqual({ count: { beyond: 0, of: 9 }, chance: 20 });
    expect(mustBe(five).before).toBeNull();
  });

  test('the future is not looked at, and one store is no pattern', () => {
    expect(patternOf([silver('C-01', 0.2), silver('C-02', 9, { day: 61 })], asked)).toBeNull();
    expect(patternOf([], asked)).toBeNull();
  });
});

test('the steps of chance', () => {
  expect(chanceStepOf({ beyond: 3, of: 3 }, { beyond: 0, of: 4 })).toBe(20);
  expect(chanceStepOf({ beyond: 2, of: 4 }, { beyond: 0, of: 4 })).toBe(1);
  expect(chanceStepOf({ beyond: 8, of: 8 }, { beyond: 0, of: 8 })).toBe(1000);
  expect(chanceStepOf({ beyond: 0, of: 8 }, { beyond: 3, of: 8 })).toBe(1);
});
