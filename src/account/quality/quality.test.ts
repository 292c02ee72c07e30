// What results, releases, waivers and chosen limits make of a store's water.
import { describe, expect, test } from 'vitest';
import { holm, litres, type Told } from '../../../tests/journeys/told.ts';
import type { Body } from '../../book/index.ts';
import { notFreeBecause } from '../stock.ts';

type Values = Body<'result'>['values'];
const silver = (value: number, more: Partial<Values[number]> = {}): Values[number] => ({
  parameter: 'silver',
  value,
  unit: 'mg/L',
  ...more,
});
const plates = (value: number): Values[number] => ({ parameter: 'plate count', value, unit: 'CFU/mL' });
const PASSING = [silver(0.2), plates(2)];

const state = (told: Told, id: string) => {
  const found = told.fold.stores.get(id);
  if (found === undefined) throw new Error(`no store ${id}`);
  return found;
};
const whyNot = (told: Told, id: string) => {
  const position = told.position();
  const store = position.stores.find(({ facts }) => facts.id === id);
  return store === undefined ? 'not aboard' : notFreeBecause(position, store);
};
function sampled(told: Told, store: string, sample: string, values: Values, more = {}): Told {
  told.tell('sample', { store, sample, tests: [] });
  told.tell('result', { sample, store, values, ...more });
  return told;
}

function hold(told: Told, ...stores: string[]): Told {
  told.tell('hold', { hold: 'Q-1', stores, conditional: [], reason: 'taste' });
  return told;
}

function release(told: Told, store: string, values: Values = [], more = {}): void {
  told.tell('release', { stores: [store], values, ...more });
}

describe('a result that fails', () => {
  test.each<[string, Values]>([
    ['above', [plates(51)]],
    ['below', [silver(0.049)]],
    ['under a detection limit that is the limit', [silver(0.05, { below: true })]],
    ['so coarse that nobody can say', [silver(0.1, { below: true })]],
    ['beyond the range of the method', [plates(50), { ...plates(50), above: true }]],
    ['in a unit that cannot be compared', [{ parameter: 'plate count', value: 1, unit: 'NTU' }]],
  ])('holds its store: %s', (_, values) => {
    const told = sampled(holm(), 'C-04', 'S-1', values);
    expect(whyNot(told, 'C-04')).toBe('hold');
    expect(state(told, 'C-04').hold).toMatchObject({ hold: 'result S-1', reason: 'result-fails' });
    expect(told.findings('result-unanswered')).toHaveLength(1);
  });

  test.each<[string, Values]>([
    ['at the upper limit', [plates(50), silver(0.4)]],
    ['at the lower limit', [silver(0.05)]],
    ['of something that no row asks about', [{ parameter: 'lead', value: 9, unit: 'mg/L' }]],
  ])('does not hold: %s', (_, values) => {
    expect(whyNot(sampled(holm(), 'C-04', 'S-1', values), 'C-04')).toBeNull();
  });

  test('of technical water nothing is asked', () => {
    expect(whyNot(sampled(holm(), 'C-02', 'S-1', [plates(900)]), 'C-02')).toBeNull();
  });

  test('comes late: the water is judged as what it was when it was sampled', () => {
    const told = holm();
    told.tell('sample', { store: 'C-04', sample: 'S-1', tests: [] });
    told.goTo(1, 8).tell('declared-empty', { store: 'C-04', counters: [] });
    told.tell('movement', { from: 'C-02', to: 'C-04', amount: litres(5) });
    told.goTo(2).tell('result', { sample: 'S-1', values: [plates(99)] });
    expect(state(told, 'C-04')).toMatchObject({ grade: 'technical', hold: null });
    expect(told.findings('result-unanswered')[0]?.data).toMatchObject({ sample: 'S-1' });
    told.tell('sample', { store: 'C-04', sample: 'S-2', tests: [] });
    told.tell('result', { sample: 'S-2', values: [plates(99)] });
    expect(told.findings('result-unanswered')).toHaveLength(1);
  });

  test('of a sample from the hose it speaks of the store that gave the water', () => {
    const told = holm();
    told.tell('movement', { from: 'C-04', to: 'C-03', amount: litres(2) });
    told.tell('sample', { store: 'C-03', sample: 'S-1', tests: [], drawnFrom: 'fill hose' });
    told.tell('result', { sample: 'S-1', values: [plates(99)] });
    expect([whyNot(told, 'C-04'), whyNot(told, 'C-03')]).toEqual(['hold', null]);
  });

  test('of a unit it speaks of the store that the unit fills, of a port of the store on it', () => {
    const told = holm();
    told.tell('result', { sample: 'P-1', point: 'purifier', values: [plates(99)] });
    expect(whyNot(told, 'PB')).toBe('hold');
    const tap = holm();
    tap.tell('result', { sample: 'P-1', point: 'tap feed', values: [plates(99)] });
    expect(whyNot(tap, tap.fold.storeOn('tap feed')?.facts.id ?? '')).toBe('hold');
  });

  test('goes with its water, and is answered by a downgrade', () => {
    const told = sampled(holm(), 'C-04', 'S-1', [plates(99)]);
    told.tell('movement', { from: 'C-04', to: 'C-03', amount: litres(2) });
    expect(whyNot(told, 'C-03')).toBe('hold');
    told.tell('downgrade', { store: 'C-04', fromGrade: 'drinking', toGrade: 'technical', values: [] });
    expect(state(told, 'C-04')).toMatchObject({ hold: null, grade: 'technical' });
    expect(told.findings('result-unanswered')).toHaveLength(0);
  });

  test('counts for ever, until the medic sets it aside and releases the water on another', () => {
    const told = sampled(holm(), 'C-04', 'S-1', [plates(99), silver(0.2)]);
    sampled(told, 'C-04', 'S-2', PASSING);
    release(told, 'C-04');
    expect(told.findings('release-unproven')[0]?.data['reasons']).toEqual(['plate count: above']);
    expect(whyNot(told, 'C-04')).toBe('hold');
    told.goTo(1, 9).tell('result-set-aside', { sample: 'S-1', reason: 'bottle of another store' });
    release(told, 'C-04');
    expect(whyNot(told, 'C-04')).toBeNull();
  });

  test('a dose answers germs and its own biocide, and nothing else', () => {
    const told = sampled(holm(), 'C-04', 'S-1', [plates(99), silver(0.01)]);
    told.goTo(1, 8).tell('dose', { stores: ['C-04'], biocide: 'silver', doseEach: litres(0.01) });
    release(told, 'C-04');
    expect(whyNot(told, 'C-04')).toBe('hold');
    sampled(told.goTo(1, 9), 'C-04', 'S-2', PASSING);
    release(told, 'C-04');
    expect(whyNot(told, 'C-04')).toBeNull();
    expect(state(told, 'C-04').released).toMatchObject({ samples: ['S-2'] });
  });

  test('of a container that is filled anew is gone with its water', () => {
    const told = sampled(holm(), 'C-04', 'S-1', [plates(2)]);
    told.tell('declared-empty', { store: 'C-04', counters: [] });
    told.tell('movement', { from: 'C-01', to: 'C-04', amount: litres(5) });
    expect(state(told, 'C-04').results).toEqual([]);
  });
});

describe('a release', () => {
  test.each<[string, (told: Told) => void, string]>([
    ['without a result', () => {}, 'plate count: missing'],
    ['of half of what is asked', (told) => void sampled(told, 'C-04', 'S-1', [plates(2)]), 'silver: missing'],
    [
      'on water that was there before',
      (told) => {
        sampled(told, 'C-04', 'S-1', PASSING);
        told.goTo(1, 12).tell('movement', { from: 'C-01', to: 'C-04', amount: litres(1) });
      },
      'plate count: older-water',
    ],
    [
      'on a figure that is not confirmed',
      (told) => void sampled(told, 'C-04', 'S-1', PASSING, { preliminary: true }),
      'plate count: unverified',
    ],
    [
      'on a bottle whose chain was broken',
      (told) => void sampled(told, 'C-04', 'S-1', PASSING, { custody: 'broken' }),
      'plate count: unverified',
    ],
    [
      'on what is too old',
      (told) => {
        sampled(told, 'C-04', 'S-1', PASSING);
        told.goTo(95, 12);
      },
      'plate count: expired',
    ],
  ])('%s is kept, said, and frees nothing', (_, before, reason) => {
    const told = hold(holm(), 'C-04');
    before(told);
    release(told, 'C-04');
    expect(whyNot(told, 'C-04')).toBe('hold');
    expect(told.findings('release-unproven')[0]?.data['reasons']).toContain(reason);
  });

  test('holds to its own day, and no longer than its sample', () => {
    const told = hold(holm(), 'C-04', 'C-01');
    release(told, 'C-04', PASSING, { untilDay: 3 });
    release(told, 'C-01', PASSING);
    told.goTo(3, 23).tell('note', { text: 'quiet' });
    expect(whyNot(told, 'C-04')).toBeNull();
    told.goTo(4, 1).tell('note', { text: 'quiet' });
    expect([whyNot(told, 'C-04'), whyNot(told, 'C-01')]).toEqual(['release over', null]);
    expect(told.findings('release-over')).toHaveLength(1);
    told.goTo(92, 12).tell('note', { text: 'quiet' });
    expect(whyNot(told, 'C-01')).toBe('release over');
  });

  test('goes with its end into what is filled from it', () => {
    const told = hold(holm(), 'C-04');
    release(told, 'C-04', PASSING, { untilDay: 3 });
    told.tell('declared-empty', { store: 'C-01', counters: [] });
    told.tell('movement', { from: 'C-04', to: 'C-01', amount: litres(5) });
    expect(state(told, 'C-01').released?.untilMs).toBe(state(told, 'C-04').released?.untilMs);
    told.goTo(5).tell('note', { text: 'quiet' });
    expect(whyNot(told, 'C-01')).toBe('release over');
  });

  test('of technical water is the word of who releases', () => {
    const told = hold(holm(), 'C-02');
    release(told, 'C-02');
    expect(whyNot(told, 'C-02')).toBeNull();
  });

  test('of treated water counts no sample from before its days are over', () => {
    const told = holm();
    const second = { second: { office: 'second', confirmation: 'by own code' } } as const;
    told.tell('treatment', { store: 'C-02', recipe: 'technical to drinking', toGrade: 'drinking' }, second);
    expect(told.findings('treatment-not-allowed')).toHaveLength(0);
    release(told, 'C-02');
    expect(whyNot(told, 'C-02')).toBe('hold');
    sampled(told.goTo(1, 9), 'C-02', 'S-1', PASSING);
    release(told, 'C-02');
    expect(whyNot(told, 'C-02')).toBeNull();
  });
});

describe('waivers and parked holds', () => {
  test('a waiver lapses by itself, and its hold is back', () => {
    const told = hold(holm(), 'C-04');
    told.tell('waiver', { hold: 'Q-1', stores: ['C-04'], reason: 'nothing else left', untilDay: 3 });
    expect(whyNot(told, 'C-04')).toBeNull();
    const late = told.goTo(4, 1).position();
    const store = late.stores.find(({ facts }) => facts.id === 'C-04');
    expect(store?.hold?.hold).toBe('Q-1');
    told.tell('note', { text: 'quiet' });
    expect(whyNot(told, 'C-04')).toBe('hold');
    expect(state(told, 'C-04').waived).toEqual([]);
  });

  test('a waiver goes with the water', () => {
    const told = hold(holm(), 'C-04');
    told.tell('waiver', { hold: 'Q-1', stores: ['C-04'], reason: 'nothing else left', untilDay: 3 });
    told.tell('movement', { from: 'C-04', to: 'C-03', amount: litres(2) });
    told.goTo(4, 1).tell('note', { text: 'quiet' });
    expect(whyNot(told, 'C-03')).toBe('hold');
  });

  test('a parked hold stays a hold, and is asked about when its date has passed', () => {
    const told = hold(holm(), 'C-04');
    told.tell('parked', { hold: 'Q-1', owner: 'medic', untilDay: 3 });
    expect([whyNot(told, 'C-04'), told.findings('parked-over').length]).toEqual(['hold', 0]);
    told.goTo(4, 1).tell('note', { text: 'quiet' });
    expect([whyNot(told, 'C-04'), told.findings('parked-over').length]).toEqual(['hold', 1]);
  });
});

describe('chosen limits', () => {
  const row = (limit: { atLeast?: number; atMost?: number } | null) => ({
    ...{ id: 'silver at most', parameter: 'silver', basis: 'as itself', unit: 'mg/L', limit },
    ...({ remembered: null, evidence: 'seen', exposure: 'any', source: 'tests', locator: '1' } as const),
    ...{ cause: '', consequence: '', firstAct: '', timeToActH: null, requiredFor: ['drink'] },
    ...({ neededOf: 'every store', degassed: false, noneIfBelow: null } as const),
    ...{ duplicatesWithinShare: null, note: '', typed: null },
  });
  const choose = (told: Told, limit: Parameters<typeof row>[0]): Told => {
    told.tell('limits-chosen', {
      sets: [{ set: 'skerry rules', name: 'rules of Skerry', rows: [row(limit)] }],
      exposureDays: 180,
      reason: 'the medic asks for it',
    });
    return told;
  };

  test('hold what fails them, and let it go when others are chosen', () => {
    const told = sampled(holm(), 'C-04', 'S-1', PASSING);
    choose(told, { atMost: 0.1 });
    expect([whyNot(told, 'C-04'), whyNot(told, 'C-01')]).toEqual(['hold', null]);
    choose(told, { atMost: 0.4 });
    expect(whyNot(told, 'C-04')).toBeNull();
  });

  test('a row that is off holds all water of that use, until its figure is typed', () => {
    const told = choose(holm(), null);
    expect([whyNot(told, 'C-04'), whyNot(told, 'C-02')]).toEqual(['no limit set', null]);
    expect(told.findings('limit-off')).toHaveLength(1);
    told.tell('limit-typed', {
      ...{ set: 'skerry rules', row: 'silver at most', atMost: 400, unit: 'µg/L', basis: 'as itself' },
      copy: 'edition 2, table 1',
    });
    expect(whyNot(told, 'C-04')).toBeNull();
  });

  test('a figure in a unit that the row cannot be told in leaves it off', () => {
    const told = choose(holm(), null);
    told.tell('limit-typed', {
      ...{ set: 'skerry rules', row: 'silver at most', atMost: 4, unit: 'NTU', basis: 'as itself' },
      copy: 'edition 2',
    });
    expect(whyNot(told, 'C-04')).toBe('no limit set');
  });
});

test('bad news of a buffer that a unit fills is gone when it was filled five times and a later sample passed', () => {
  const told = holm();
  told.tell('result', { sample: 'P-1', point: 'purifier', values: [plates(99), silver(0.2)] });
  for (let day = 1; day <= 6; day++)
    told.goTo(day, 12).tell('meter', { readings: [{ instrument: 'product', value: 9 * day }] });
  release(told, 'PB', [plates(2), silver(0.2)]);
  expect(whyNot(told, 'PB')).toBeNull();
  const early = holm();
  early.tell('result', { sample: 'P-1', point: 'purifier', values: [plates(99), silver(0.2)] });
  early.goTo(1, 12).tell('meter', { readings: [{ instrument: 'product', value: 9 }] });
  release(early, 'PB', [plates(2), silver(0.2)]);
  expect(whyNot(early, 'PB')).toBe('hold');
});
