// Ways by which unfit water once came into the free figure, found by random histories; each stays shut.
import { expect, test } from 'vitest';
import { holm, litres, type Told } from '../../../tests/journeys/told.ts';
import type { Body } from '../../book/index.ts';
import { freeStock, notFreeBecause } from '../stock.ts';

const PASSING: Body<'release'>['values'] = [
  { parameter: 'silver', value: 0.2, unit: 'mg/L' },
  { parameter: 'plate count', value: 2, unit: 'CFU/mL' },
];
const BY_TWO = { second: { office: 'second', confirmation: 'by own code' } } as const;
const RECIPE = { recipe: 'technical to drinking', toGrade: 'drinking' };

function isFree(told: Told, id: string): boolean {
  const position = told.position();
  return position.index.outpost.grades.some(({ id: grade }) =>
    freeStock(position, grade).stores.includes(id),
  );
}
function whyNot(told: Told, id: string): string | null {
  const position = told.position();
  const store = position.stores.find(({ facts }) => facts.id === id);
  return store === undefined ? 'not aboard' : notFreeBecause(position, store);
}
const move = (told: Told, from: string, to: string) => told.tell('movement', { from, to, amount: litres(3) });
const hold = (told: Told, name: string, ...stores: string[]) =>
  told.tell('hold', { hold: name, stores, conditional: [], reason: 'taste' });
const empty = (told: Told, store: string) => told.tell('declared-empty', { store, counters: [] });
const release = (told: Told, store: string, more: Partial<Body<'release'>> = {}) =>
  told.tell('release', { stores: [store], values: PASSING, ...more });
const waive = (told: Told, name: string, store: string, untilDay: number) =>
  told.tell('waiver', { hold: name, stores: [store], reason: 'none left', untilDay }, BY_TWO);

/** Each tells what happened; the store that is named is not free after it. */
const WAYS: readonly [string, string, (told: Told) => void][] = [
  ['water of no known grade in a drinking store', 'C-04', (told) => move(told, 'C-03', 'C-04')],
  [
    'held water that stood in a hose alone',
    'C-03',
    (told) => {
      hold(told, 'Q-1', 'C-04');
      const run = { run: 'RUN-1', from: 'C-04', to: 'C-03' };
      told.tell('run-pause', { ...run, amount: litres(2), lineContentMg: litres(2).massMg });
      told.tell('run-finish', { ...run, amount: litres(0) });
    },
  ],
  [
    'a drinking container on the waste port',
    'C-04',
    (told) => {
      told.tell('hookup', { store: 'C-04', port: 'waste port' });
      told.goTo(1, 21).tell('day-line', { day: 1, peopleAboard: 2, readings: [] });
    },
  ],
  [
    'held water that went through the purifier',
    'PB',
    (told) => {
      hold(told, 'Q-1', 'KB');
      told.goTo(1, 12).tell('meter', { readings: [{ instrument: 'product', value: 3 }] });
    },
  ],
  [
    'waste that went through the purifier',
    'PB',
    (told) => {
      move(told, 'W-01', 'KB');
      release(told, 'KB', { values: [] });
      told.goTo(1, 12).tell('meter', { readings: [{ instrument: 'product', value: 3 }] });
    },
  ],
  [
    'mixed biocides after a plain release',
    'C-02',
    (told) => {
      told.tell('dose', { stores: ['C-02'], biocide: 'silver', doseEach: litres(0.01) });
      told.tell('dose', { stores: ['C-02'], biocide: 'iodine', doseEach: litres(0.01) });
      release(told, 'C-02');
    },
  ],
  [
    'mixed biocides after a waiver',
    'C-04',
    (told) => {
      told.tell('dose', { stores: ['C-04'], biocide: 'iodine', doseEach: litres(0.01) });
      waive(told, 'rule holm 2', 'C-04', 9);
    },
  ],
  [
    'technical water with a better label and a good result',
    'C-02',
    (told) => {
      told.tell('relabel', { store: 'C-02', fromLabel: 'technical', toGrade: 'drinking', twoPersons: true });
      release(told, 'C-02');
    },
  ],
  [
    'a treatment that is not allowed, and a good result',
    'C-02',
    (told) => {
      told.tell('treatment', { store: 'C-02', ...RECIPE, recipe: 'boil it' }, BY_TWO);
      release(told.goTo(1, 12), 'C-02');
    },
  ],
  [
    'a downgrade to the same grade',
    'C-04',
    (told) => {
      hold(told, 'Q-1', 'C-04');
      told.tell('downgrade', { store: 'C-04', fromGrade: 'drinking', toGrade: 'drinking', values: [] });
    },
  ],
  [
    'a label on water that nobody knows',
    'C-04',
    (told) => {
      move(told, 'C-03', 'C-04');
      told.tell('relabel', { store: 'C-04', fromLabel: 'unknown', toGrade: 'drinking', twoPersons: true });
    },
  ],
  [
    'two waivers of one hold, after the first of them',
    'C-01',
    (told) => {
      hold(told, 'Q-1', 'C-01', 'C-04');
      waive(told, 'Q-1', 'C-01', 2);
      waive(told, 'Q-1', 'C-04', 9);
      move(told, 'C-04', 'C-01');
      told.goTo(4).tell('note', { text: 'quiet' });
    },
  ],
  [
    'a waiver that was made shorter',
    'C-04',
    (told) => {
      hold(told, 'Q-1', 'C-04');
      waive(told, 'Q-1', 'C-04', 9);
      waive(told, 'Q-1', 'C-04', 2);
      told.goTo(4).tell('note', { text: 'quiet' });
    },
  ],
  [
    'iodine in silver water that is labelled as of iodine',
    'C-02',
    (told) => {
      told.tell('dose', { stores: ['C-02'], biocide: 'silver', doseEach: litres(0.01) });
      for (const toGrade of ['iodine', 'raw']) {
        told.tell('relabel', { store: 'C-02', fromLabel: 'technical', toGrade, twoPersons: true });
        if (toGrade === 'iodine')
          told.tell('dose', { stores: ['C-02'], biocide: 'iodine', doseEach: litres(0.01) });
      }
      release(told, 'C-02');
    },
  ],
  [
    'unknown water with a label and a waiver',
    'C-04',
    (told) => {
      move(told, 'C-03', 'C-04');
      const label = { store: 'C-04', fromLabel: 'unknown', toGrade: 'drinking', twoPersons: true };
      const { site, number } = told.tell('relabel', label);
      waive(told, `rule ${site} ${number}`, 'C-04', 9);
    },
  ],
  [
    'unknown water that went through the purifier into unknown water',
    'PB',
    (told) => {
      for (const store of ['KB', 'PB']) move(told, 'C-03', store);
      told.goTo(1, 12).tell('meter', { readings: [{ instrument: 'product', value: 3 }] });
      told.tell('relabel', { store: 'PB', fromLabel: 'unknown', toGrade: 'drinking', twoPersons: true });
      release(told, 'PB');
    },
  ],
  [
    'a release that is over for a part of the mix',
    'C-04',
    (told) => {
      release(told, 'C-04', { untilDay: 2 });
      move(told, 'C-01', 'C-04');
      told.goTo(5).tell('note', { text: 'quiet' });
    },
  ],
  [
    'conditional for two reasons of which one ended',
    'C-04',
    (told) => {
      for (const name of ['Q-1', 'Q-2'])
        told.tell('hold', { hold: name, stores: ['C-01'], conditional: ['C-04'], reason: 'taste' });
      release(told, 'C-04', { hold: 'Q-2' });
    },
  ],
  [
    'figures of a release that speak against the water',
    'C-04',
    (told) => release(told, 'C-04', { values: [{ parameter: 'plate count', value: 99, unit: 'CFU/mL' }] }),
  ],
  [
    'a result of a sample at a place that nobody knows',
    'C-04',
    (told) => {
      told.tell('sample', { sample: 'S-1', point: 'galley', tests: [] });
      const values = [{ parameter: 'plate count', value: 99, unit: 'CFU/mL' }];
      told.tell('result', { sample: 'S-1', store: 'C-04', values });
    },
  ],
  [
    'a store that is told of again while it is on hold',
    'C-04',
    (told) => {
      hold(told, 'Q-1', 'C-04');
      const store = { store: 'C-04', kind: 'container', capacityL: 22, usableRemainderL: 0.6 };
      const stores = [{ ...store, grade: 'drinking', amount: litres(18) }];
      told.tell('visit-berth', { visit: 'Pannier 8', peopleArrive: 0, stores });
    },
  ],
  [
    'a sample of the product buffer from before a hand poured into it',
    'PB',
    (told) => {
      told.tell('result', { sample: 'P-1', point: 'purifier', values: PASSING });
      move(told.goTo(1, 12), 'unplaced', 'PB');
      release(told, 'PB', { values: [] });
    },
  ],
  [
    'water under a container that was set aside with water in it',
    'C-04',
    (told) => {
      move(told, 'unplaced', 'C-04');
      told.tell('declared-empty', { store: 'C-04', counters: [], flowStopped: false });
      move(told, 'C-01', 'C-04');
    },
  ],
];

test.each(WAYS)('%s is not free', (_, store, happened) => {
  const told = holm();
  happened(told);
  expect(isFree(told, store)).toBe(false);
});

test('mixed biocides come back by a treatment of two, a sample after it, and a release', () => {
  const told = holm();
  told.tell('dose', { stores: ['C-02'], biocide: 'silver', doseEach: litres(0.01) });
  told.tell('dose', { stores: ['C-02'], biocide: 'iodine', doseEach: litres(0.01) });
  release(told, 'C-02');
  expect(told.findings('release-unproven')[0]?.data['reasons']).toEqual(['biocides-meet: not-treated']);
  told.tell('treatment', { store: 'C-02', ...RECIPE }, BY_TWO);
  expect(whyNot(told, 'C-02')).toBe('hold');
  release(told.goTo(1, 12), 'C-02');
  expect(whyNot(told, 'C-02')).toBeNull();
});

test('an emptied container is of what is poured into it, as of old', () => {
  const told = holm();
  move(told, 'unplaced', 'C-04');
  empty(told, 'C-04');
  move(told, 'C-01', 'C-04');
  expect(whyNot(told, 'C-04')).toBeNull();
});
