// Table of entries that break a rule about grades, biocides, holds, the reserve, or acts for two persons.
import type { AccountFindingCode } from '../../../src/account/index.ts';
import type { Body } from '../../../src/book/index.ts';
import { at, litres, readings, type Told } from '../../journeys/told.ts';
import type { Samples } from './sample.ts';
import { toldSample } from './told-entries.ts';

const move = (told: Told, from: string, to: string, valueL = 2, more: { happened?: string } = {}) =>
  told.tell('movement', { from, to, amount: litres(valueL) }, more);
const hold = (told: Told, stores: string[], conditional: string[] = []) =>
  told.goTo(1, 8).tell('hold', { hold: 'Q-1', stores, conditional, reason: 'plate count' });
const iodineBag = (told: Told) =>
  told.goTo(1, 8).tell('store-added', {
    store: 'V-1',
    kind: 'softBag',
    capacityL: 10,
    usableRemainderL: 0.2,
    grade: 'iodine',
    amount: litres(9),
  });
const nothingOnTap = (told: Told) =>
  told.goTo(1, 12).tell('declared-empty', {
    store: 'C-01',
    port: 'tap feed',
    counters: readings({ strokes: 0, product: 0 }),
  });

/** Figures that meet the limits of this outpost. */
const passing = [
  { parameter: 'silver', value: 0.2, unit: 'mg/L' },
  { parameter: 'plate count', value: 2, unit: 'CFU/mL' },
];

/** A row that somebody remembers, and nobody has typed. */
const rowOff: Body<'limits-chosen'>['sets'][number]['rows'][number] = {
  id: 'lead at most',
  parameter: 'lead',
  basis: 'as itself',
  unit: 'µg/L',
  limit: null,
  remembered: { atMost: 10 },
  evidence: 'memory',
  exposure: 'any',
  source: 'invented for this page',
  locator: 'from memory',
  cause: 'a pipe of the wrong metal',
  consequence: 'harm to those who drink it for long',
  firstAct: 'hold, find the pipe',
  timeToActH: 24,
  requiredFor: ['drink'],
  neededOf: 'every store',
  degassed: false,
  noneIfBelow: null,
  duplicatesWithinShare: null,
  note: '',
  typed: null,
};

export const qualitySamples = {
  'grade-mismatch': toldSample(
    'grade-mismatch',
    'An entry calls water by another grade than the book.',
    (told) =>
      told.goTo(1).tell('movement', { from: 'C-04', to: 'C-03', amount: litres(2), grade: 'technical' }),
  ),
  'grade-may-not-flow': toldSample(
    'grade-may-not-flow',
    'Water went where water of its grade may not go.',
    (told) => move(told.goTo(1), 'C-02', 'C-04'),
    (told) => move(told.goTo(1), 'C-02', 'C-04', 2, { happened: 'wrong hose' }),
  ),
  'grade-went-up': toldSample('grade-went-up', 'A label was raised; a label only goes down.', (told) =>
    told
      .goTo(1)
      .tell('relabel', { store: 'C-02', fromLabel: 'technical', toGrade: 'drinking', twoPersons: true }),
  ),
  'biocides-meet': toldSample(
    'biocides-meet',
    'Two biocides came together that must not, also in the rest of an emptied store.',
    (told) => {
      iodineBag(told);
      move(told, 'V-1', 'C-04', 2, { happened: 'poured by mistake' });
    },
    (told) => {
      iodineBag(told);
      told.tell('declared-empty', { store: 'C-04', counters: [] });
      move(told, 'V-1', 'C-04', 2, { happened: 'poured by mistake' });
    },
  ),
  'reserve-unreleased': toldSample(
    'reserve-unreleased',
    'Water went into the reserve before a sample of the outpost had passed.',
    (told) => {
      told.goTo(1, 8).tell('visit-berth', {
        visit: 'Skiff',
        peopleArrive: 0,
        stores: [
          {
            store: 'V-2',
            kind: 'vehicleTank',
            capacityL: 100,
            usableRemainderL: 3,
            grade: 'drinking',
            amount: litres(90),
          },
        ],
      });
      move(told, 'V-2', 'R1', 20);
    },
    (told) => {
      move(told.goTo(1, 8), 'outside', 'C-04', 2);
      move(told.goTo(1, 9), 'C-04', 'R1', 5);
    },
  ),
  'reserve-drawn': toldSample(
    'reserve-drawn',
    'Water came out of the reserve: somebody said so, or the counter shows it.',
    (told) => {
      nothingOnTap(told);
      told.goTo(1, 20).tell('source-change', {
        counter: 'strokes',
        store: 'R1',
        sinceMs: at(1, 12),
        amount: litres(3),
        reserve: true,
      });
    },
    (told) => {
      nothingOnTap(told);
      const counted = readings({ condensate: 993, product: 0, strokes: 200, flushes: 0 });
      told.goTo(1, 21).tell('day-line', { day: 1, peopleAboard: 2, readings: counted });
    },
  ),
  'held-water-moved': toldSample(
    'held-water-moved',
    'Held water went into another store, and the hold with it.',
    (told) => {
      hold(told, ['C-04']);
      move(told, 'C-04', 'C-03');
    },
  ),
  'conditional-water-moved': toldSample(
    'conditional-water-moved',
    'Conditional water went into another store, and makes it conditional.',
    (told) => {
      hold(told, ['C-04'], ['R1']);
      move(told, 'R1', 'C-03', 2, { happened: 'no other left' });
    },
  ),
  'hold-open': toldSample('hold-open', 'As long as a hold stands: none of its water is counted on.', (told) =>
    hold(told, ['C-01', 'C-04']),
  ),
  'conditional-reserve': toldSample(
    'conditional-reserve',
    'The same water as under a hold came into it: for an emergency only.',
    (told) => hold(told, ['C-04'], ['R1']),
  ),
  'release-unproven': toldSample(
    'release-unproven',
    'A release stands in the book, and no results prove it: the water stays as it was.',
    (told) => {
      hold(told, ['C-04']);
      told.tell('release', { hold: 'Q-1', stores: ['C-04'], values: [] });
    },
  ),
  'release-over': toldSample('release-over', 'A release has run out.', (told) => {
    hold(told, ['C-04']);
    told.tell('release', { hold: 'Q-1', stores: ['C-04'], values: passing, untilDay: 2 });
    told.goTo(4).tell('note', { text: 'a quiet day' });
  }),
  'treatment-not-allowed': toldSample(
    'treatment-not-allowed',
    'Water was treated by a recipe that the outpost file does not have for it.',
    (told) =>
      told
        .goTo(1)
        .tell(
          'treatment',
          { store: 'C-02', recipe: 'boil it', toGrade: 'drinking' },
          { second: { office: 'second', confirmation: 'by own code' } },
        ),
  ),
  'hold-unknown': toldSample('hold-unknown', 'A hold was parked that no store is on.', (told) =>
    told.goTo(1).tell('parked', { hold: 'Q-9', owner: 'medic', untilDay: 9 }),
  ),
  'result-unanswered': toldSample(
    'result-unanswered',
    'A result fails, and nobody has said what else has the same water.',
    (told) =>
      told.goTo(1).tell('result', {
        sample: 'S-01',
        store: 'C-04',
        values: [{ parameter: 'plate count', value: 140, unit: 'CFU/mL' }],
      }),
  ),
  'limit-off': toldSample(
    'limit-off',
    'Limits were chosen with a row whose figure nobody has typed: all water of that use waits.',
    (told) =>
      told.goTo(1).tell('limits-chosen', {
        sets: [{ set: 'skerry rules', name: 'rules of Skerry', rows: [rowOff] }],
        exposureDays: 180,
        reason: 'the medic asks for it',
      }),
  ),
  'parked-over': toldSample('parked-over', 'The date to which a hold was parked has passed.', (told) => {
    hold(told, ['C-04']);
    told.tell('parked', { hold: 'Q-1', owner: 'medic', untilDay: 2 });
    told.goTo(4).tell('note', { text: 'a quiet day' });
  }),
  'alone-for-two': toldSample(
    'alone-for-two',
    'An act for two persons stands in the book with one.',
    (told) =>
      told
        .goTo(1)
        .tell('relabel', { store: 'C-04', fromLabel: 'drinking', toGrade: 'waste', twoPersons: false }),
    (told) => {
      hold(told, ['C-04']);
      told.tell('waiver', { hold: 'Q-1', stores: ['C-04'], reason: 'nothing else left', untilDay: 9 });
    },
  ),
} satisfies Partial<Samples<AccountFindingCode>>;
