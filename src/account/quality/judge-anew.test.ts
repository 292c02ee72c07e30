// Holds by chosen limits go with the water, and end only when what failed meets the limits that are in force.
import { describe, expect, test } from 'vitest';
import { holm, litres, type Told } from '../../../tests/journeys/told.ts';
import type { Body } from '../../book/index.ts';
import { holdsOf } from '../hold.ts';
import { notFreeBecause } from '../stock.ts';

type Row = Body<'limits-chosen'>['sets'][number]['rows'][number];

const row = (parameter: string, limit: Row['limit']): Row => ({
  ...{ id: `${parameter} most`, parameter, basis: 'as itself', limit, remembered: null, evidence: 'seen' },
  ...{
    unit: parameter === 'plate count' ? 'CFU/mL' : 'mg/L',
    exposure: 'any',
    source: 'tests',
    locator: '1',
  },
  ...{ cause: '', consequence: '', firstAct: '', timeToActH: null, requiredFor: ['drink'] },
  ...{ neededOf: 'every store', degassed: false, noneIfBelow: null, duplicatesWithinShare: null },
  ...{ note: '', typed: null },
});
const choose = (told: Told, ...rows: Row[]) =>
  told.tell('limits-chosen', {
    sets: [{ set: 'skerry rules', name: 'rules of Skerry', rows }],
    exposureDays: 180,
    reason: 'asked',
  });
const STRICT = row('silver', { atMost: 0.1 });

/** C-04 has a result of 0.2 mg/L, and a choice holds it. */
function heldBySilver(): Told {
  const told = holm();
  told.tell('sample', { store: 'C-04', sample: 'S-1', tests: ['silver'] });
  told.tell('result', { sample: 'S-1', values: [{ parameter: 'silver', value: 0.2, unit: 'mg/L' }] });
  choose(told, STRICT);
  return told;
}

function holdsIn(told: Told, store: string) {
  const state = told.fold.stores.get(store);
  return state === undefined ? [] : holdsOf(state).map(({ hold, failed }) => `${hold}: ${failed ?? ''}`);
}

function whyNot(told: Told, id: string) {
  const position = told.position();
  const store = position.stores.find(({ facts }) => facts.id === id);
  return store === undefined ? 'not aboard' : notFreeBecause(position, store);
}

const SILVER = ['limits chosen: silver'];

describe('a hold by chosen limits', () => {
  test('stays on water that went elsewhere when another choice asks for no less', () => {
    const told = heldBySilver();
    told.tell('movement', { from: 'C-04', to: 'C-01', amount: litres(2) }, { happened: 'by mistake' });
    expect(holdsIn(told, 'C-01')).toContain(SILVER[0]);
    choose(told, STRICT, row('nickel', null));
    told.tell('limit-typed', {
      ...{ set: 'skerry rules', row: 'nickel most', atMost: 0.02, unit: 'mg/L', basis: 'as itself' },
      copy: 'edition 2',
    });
    expect(holdsIn(told, 'C-01')).toContain(SILVER[0]);
    expect(holdsIn(told, 'C-04')).toContain(SILVER[0]);
  });

  test('ends wherever the water is when what failed meets the new choice', () => {
    const told = heldBySilver();
    told.tell('movement', { from: 'C-04', to: 'C-01', amount: litres(2) }, { happened: 'by mistake' });
    choose(told, row('silver', { atMost: 0.4 }));
    expect([...holdsIn(told, 'C-01'), ...holdsIn(told, 'C-04')].filter((one) => one === SILVER[0])).toEqual(
      [],
    );
  });

  test('keeps its beginning while the same fails, and begins anew when more fails', () => {
    const told = heldBySilver();
    const since = told.fold.stores.get('C-04')?.hold?.sinceMs;
    told.goTo(2);
    choose(told, STRICT, row('nickel', { atMost: 0.02 }));
    expect(told.fold.stores.get('C-04')?.hold?.sinceMs).toBe(since);
  });

  test('that was waived stays waived while the same fails, and no longer when more fails', () => {
    const told = heldBySilver();
    told.tell('result', { sample: 'S-1', values: [{ parameter: 'plate count', value: 30, unit: 'CFU/mL' }] });
    told.tell(
      'waiver',
      { hold: 'limits chosen', stores: ['C-04'], reason: 'nothing else', untilDay: 9 },
      { second: { office: 'medic', confirmation: 'declared, not verified' } },
    );
    expect(whyNot(told, 'C-04')).toBeNull();
    choose(told, STRICT, row('nickel', { atMost: 0.02 }));
    expect(whyNot(told, 'C-04')).toBeNull();
    choose(told, STRICT, row('plate count', { atMost: 10 }));
    expect(whyNot(told, 'C-04')).toBe('hold');
    expect(holdsIn(told, 'C-04')).toEqual(['limits chosen: plate count,silver']);
  });

  test('a waiver of a choice that is gone brings no hold back', () => {
    const told = heldBySilver();
    told.tell('waiver', { hold: 'limits chosen', stores: ['C-04'], reason: 'nothing else', untilDay: 3 });
    choose(told, row('silver', { atMost: 0.4 }));
    told.goTo(5).tell('note', { text: 'quiet' });
    expect(whyNot(told, 'C-04')).toBeNull();
  });

  test('of a choice that is gone back to at once is judged by that choice', () => {
    const told = heldBySilver();
    choose(told, row('silver', { atMost: 0.4 }));
    choose(told, STRICT);
    expect([whyNot(told, 'C-04'), told.findings('copy-proposed').length]).toEqual(['hold', 0]);
  });

  test('one store with what fails in two waters waits for both', () => {
    const told = heldBySilver();
    told.tell('sample', { store: 'C-01', sample: 'S-2', tests: ['plate count'] });
    told.tell('result', { sample: 'S-2', values: [{ parameter: 'plate count', value: 30, unit: 'CFU/mL' }] });
    choose(told, STRICT, row('plate count', { atMost: 10 }));
    told.tell('movement', { from: 'C-04', to: 'C-01', amount: litres(2) }, { happened: 'by mistake' });
    expect(holdsIn(told, 'C-01')).toContain('limits chosen: plate count,silver');
    choose(told, STRICT);
    expect(holdsIn(told, 'C-01')).toContain(SILVER[0]);
  });
});
