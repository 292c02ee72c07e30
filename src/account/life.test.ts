// Openings, visits, hook-ups and the flow by the norm: who and what comes and goes.
import { describe, expect, test } from 'vitest';
import { HOLM } from '../../tests/journeys/holm.ts';
import { at, dayLine, holm, holmOpening, litres, readings, Told } from '../../tests/journeys/told.ts';
import type { Body } from '../book/index.ts';

const berth = (change: Partial<Body<'visit-berth'>> = {}): Body<'visit-berth'> => ({
  visit: 'Skiff',
  peopleArrive: 1,
  stores: [
    {
      store: 'V-1',
      kind: 'vehicleTank',
      capacityL: 200,
      usableRemainderL: 6,
      wasteLimitL: 194,
      grade: 'drinking',
      amount: litres(190, 2),
    },
  ],
  ...change,
});

describe('an opening', () => {
  test('tells every store from outside, and the sum is 0', () => {
    const told = holm();
    expect(told.accountL('outside')).toBe(-(150 + 20 + 20 + 18 + 2 + 4 + 2));
    expect(told.fold.ledger.closureMg()).toBe(0);
    expect(told.findings('opening-missing')).toHaveLength(0);
  });

  test('that is missing is said', () => {
    const told = new Told(HOLM);
    told.goTo(1).tell('movement', { from: 'R1', to: 'C-03', amount: litres(2) });
    expect(told.findings('opening-missing')).toHaveLength(1);
    expect(told.findings('before-opening')).toHaveLength(0);
  });

  test('what happened before it is inside its figures, and that is said, whichever of the two is told first', () => {
    const told = new Told(HOLM);
    told.goTo(0, 9).tell('movement', { from: 'R1', to: 'C-03', amount: litres(2) });
    told.goTo(0, 10).tell('note', { text: 'a note is no water' });
    told.goTo(0, 21).tell('opening', holmOpening());
    expect([told.ledgerL('R1'), told.ledgerL('C-03')]).toEqual([150, 0]);
    expect(told.findings('before-opening').map(({ entries }) => entries[0])).toEqual([told.entries[0]?.id]);
    const other = new Told(HOLM);
    other.goTo(0, 20).tell('opening', holmOpening({ asOfMs: at(0, 21) }));
    other.goTo(0, 20.5).tell('movement', { from: 'R1', to: 'C-03', amount: litres(2) });
    expect(other.findings('before-opening')).toHaveLength(1);
  });

  test('a second one tells the stocks anew and keeps what the stores have met', () => {
    const told = holm();
    told.goTo(1, 12).tell('movement', { from: 'tap', to: 'people', amount: litres(1), use: 'drink' });
    told.tell('movement', { from: 'C-04', to: 'C-02', amount: litres(1) });
    told.goTo(1, 15).tell('opening', holmOpening({ asOfMs: at(1, 15) }));
    expect(told.ledgerL('PB')).toBe(2);
    expect(told.fold.stores.get('C-02')?.biocides).toEqual(['silver']);
    expect(told.fold.counters.get('strokes')?.split.size).toBe(0);
    told.goTo(1, 21).tell('day-line', dayLine(1, { condensate: 991, product: 0, strokes: 20, flushes: 0 }));
    expect(told.fold.ledger.closureMg()).toBe(0);
    expect(told.ledgerL('PB')).toBeCloseTo(1.5, 9);
  });
});

describe('a visit', () => {
  test('brings stores and people, and takes both away', () => {
    const told = holm();
    told.goTo(2, 9).tell('visit-berth', berth());
    expect([told.ledgerL('V-1'), told.fold.peopleAboard]).toEqual([190, 3]);
    expect(told.position().stores.find(({ facts }) => facts.id === 'V-1')).toMatchObject({
      release: 'loader’s certificate',
      howKnown: 'loader’s figure',
    });
    told.goTo(3, 9).tell('movement', { from: 'V-1', to: 'C-03', amount: litres(20) });
    told.goTo(4, 9).tell('visit-depart', { visit: 'Skiff', peopleDepart: 1, took: [] });
    expect([told.ledgerL('V-1'), told.ledgerL('C-03'), told.fold.peopleAboard]).toEqual([0, 20, 2]);
    expect(told.position().stores.some(({ facts }) => facts.id === 'V-1')).toBe(false);
    expect(told.position().visits).toMatchObject([
      { visit: 'Skiff', berthDay: 2, departDay: 4, aboard: false },
    ]);
    expect(told.position().closureMg).toBe(0);
  });

  test('takes what it is said to take', () => {
    const told = holm();
    told.goTo(2, 9).tell('visit-berth', berth());
    told.goTo(4, 9).tell('visit-depart', { visit: 'Skiff', peopleDepart: 1, took: ['C-04'] });
    const aboard = told.position().stores.map(({ facts }) => facts.id);
    expect([aboard.includes('V-1'), aboard.includes('C-04')]).toEqual([true, false]);
  });

  test('a store that left gets and gives nothing any more', () => {
    const told = holm();
    told.goTo(2, 9).tell('visit-berth', berth());
    told.tell('hookup', { store: 'V-1', port: 'tap feed' });
    told.goTo(3, 9).tell('visit-depart', { visit: 'Skiff', peopleDepart: 0, took: [] });
    expect(told.position().ports.get('tap feed')).toBeNull();
    told.goTo(3, 10).tell('movement', { from: 'C-04', to: 'V-1', amount: litres(2) });
    expect([told.accountL('unplaced'), told.ledgerL('V-1')]).toEqual([2, 0]);
    told.tell('weigh', { store: 'V-1', amount: litres(2) });
    expect(told.findings('store-unknown')).toHaveLength(2);
  });

  test('that comes again brings its stores anew', () => {
    const told = holm();
    told.goTo(2, 9).tell('visit-berth', berth());
    told.goTo(3, 9).tell('visit-depart', { visit: 'Skiff', peopleDepart: 1, took: [] });
    told.goTo(9, 9).tell('visit-berth', berth());
    expect(told.believed('V-1')).toEqual({ valueL: 190, uL: 2 });
    expect(told.position().closureMg).toBe(0);
  });

  test('that slips is remembered', () => {
    const told = holm();
    told.goTo(1).tell('visit-slip', { visit: 'Skiff', plannedDay: 9, newDay: 14 });
    expect(told.position().visits).toMatchObject([{ visit: 'Skiff', berthDay: 14, aboard: false }]);
  });
});

describe('hook-ups', () => {
  test('a store stands on one port at a time', () => {
    const told = holm();
    told.goTo(1, 9).tell('hookup', { store: 'C-02', port: 'tap feed' });
    expect([told.position().ports.get('tap feed'), told.position().ports.get('flush feed')]).toEqual([
      'C-02',
      null,
    ]);
  });

  test('a port that is none is said', () => {
    const told = holm();
    told.tell('hookup', { store: 'C-02', port: 'no such' });
    expect(told.findings('port-unknown')).toHaveLength(1);
  });

  test('a container that was declared full leaves its own port, and no other', () => {
    const told = holm();
    told.goTo(1, 9).tell('hookup', { store: 'W-02', port: 'waste port' });
    told.tell('declared-full', { store: 'W-01', amount: litres(20), port: 'waste port' });
    expect(told.position().ports.get('waste port')).toBe('W-02');
    told.tell('declared-full', { store: 'W-02', amount: litres(20) });
    expect(told.position().ports.get('waste port')).toBeNull();
  });
});

describe('the flow by the norm', () => {
  test('goes to the container that was there, by people and time', () => {
    const told = holm();
    told.goTo(1, 9).tell('hookup', { store: 'W-02', port: 'waste port' });
    expect(told.ledgerL('W-01')).toBeCloseTo(2 + 1.5 * 2 * 0.5, 9);
    told.goTo(1, 21).tell('roster', { change: 'arrive', people: 2 });
    told.goTo(2, 9).tell('day-line', dayLine(2, {}));
    expect(told.ledgerL('W-02')).toBeCloseTo(1.5 * 2 * 0.5 + 1.5 * 4 * 0.5, 9);
  });

  test('is in a container before a reading of it', () => {
    const told = holm();
    told.goTo(1, 9).tell('weigh', { store: 'W-01', amount: litres(3.6, 0.01), method: 'balance' });
    told.goTo(1, 21).tell('day-line', dayLine(1, {}));
    // What had flowed in before the reading is inside the reading.
    expect(told.believed('W-01').valueL).toBeCloseTo(3.6 + 1.5 * 2 * 0.5, 0);
    expect(Math.abs(told.believed('W-01').valueL - 5.1)).toBeLessThan(0.2);
  });
});

describe('a declared-empty tank', () => {
  test('whose flow had not stopped is no reading', () => {
    const told = holm();
    told.goTo(2, 9).tell('visit-berth', berth());
    told.tell('declared-empty', { store: 'V-1', flowStopped: false, counters: [] });
    expect(told.findings('tank-not-run-dry')).toHaveLength(1);
    expect(told.believed('V-1').valueL).toBe(190);
    told.tell('declared-empty', { store: 'V-1', flowStopped: true, residual: litres(6, 0.5), counters: [] });
    expect(told.believed('V-1').valueL).toBeLessThan(30);
  });

  test('a container that was declared empty stands at its remainder', () => {
    const told = holm();
    told.goTo(1, 9).tell('declared-empty', {
      store: 'C-01',
      port: 'tap feed',
      residual: litres(0.6, 0.2),
      counters: readings({ strokes: 0, product: 0 }),
    });
    expect(Math.abs(told.believed('C-01').valueL - 0.6)).toBeLessThan(0.7);
    expect(told.findings('reading-far-off')).toHaveLength(1);
  });
});
