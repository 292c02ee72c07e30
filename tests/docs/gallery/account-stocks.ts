// Table of entries after which the figures of stores and counters do not fit together.
import type { AccountFindingCode } from '../../../src/account/index.ts';
import { HOLM } from '../../journeys/holm.ts';
import { dayLine, holmOpening, litres, readings, Told } from '../../journeys/told.ts';
import { changed } from '../../outpost/small-outpost.ts';
import { type Samples, sample } from './sample.ts';
import { failureOf, toldSample } from './told-entries.ts';

const whole = (day: number) => ({
  condensate: (990 + 3 * day) % 1000,
  product: 3,
  strokes: 200,
  flushes: 12,
});

/** An opening in which C-04 was guessed. */
const WIDE = holmOpening().stores.map((each) =>
  each.store === 'C-04' ? { ...each, amount: litres(18, 2.5) } : each,
);

/** Holm with a second condenser, before whose bag no meter stands. */
const WITH_STANDBY = changed(
  '  - { id: purifier,',
  '  - { id: standby condenser, kind: condenser, place: hut, feeds: { store: SB }, limitLPerDay: 8 }\n  - { id: purifier,',
  changed(
    '  - { id: PB,',
    '  - { id: SB, kind: softBag, place: hut, capacityL: 12, usableRemainderL: 0, usableRemainderDoubtL: 0.1, holds: raw, gaugedBy: nothing, ratingOverCabinKPa: 5 }\n  - { id: PB,',
    HOLM,
  ),
);

function opened(outpost: string, stores = holmOpening().stores): Told {
  const told = new Told(outpost);
  told.tell('opening', holmOpening({ stores }));
  return told;
}

/** A visit that brings a tank and a person. */
const berth = (told: Told, tank = {}) =>
  told.goTo(2, 9).tell('visit-berth', {
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
        ...tank,
      },
    ],
  });

export const stockSamples = {
  'over-capacity': toldSample('over-capacity', 'More is in a store by the book than it can hold.', (told) =>
    told.goTo(1).tell('movement', { from: 'R1', to: 'C-04', amount: litres(20) }),
  ),
  'negative-stock': toldSample('negative-stock', 'Less than nothing is in a store by the book.', (told) =>
    told.goTo(1).tell('movement', { from: 'W-02', to: 'outside', amount: litres(3) }),
  ),
  'stands-over-capacity': toldSample(
    'stands-over-capacity',
    'A store stands at more than it can hold, as long as it does.',
    (told) => told.goTo(1).tell('movement', { from: 'R1', to: 'C-04', amount: litres(20) }),
  ),
  'never-weighed': sample(
    'A store was told at the opening with a wide ±, and nobody has measured it since.',
    () =>
      failureOf(
        'never-weighed',
        (told) => told.goTo(1).tell('note', { text: 'C-04 was last weighed nobody knows when' }),
        () => opened(HOLM, WIDE),
      ),
  ),
  'reading-far-off': toldSample(
    'reading-far-off',
    'A reading and the book differ by more than their doubts allow.',
    (told) => told.goTo(1).tell('weigh', { store: 'C-04', amount: litres(12), method: 'balance' }),
  ),
  'reading-skipped': toldSample('reading-skipped', 'A reading was planned and not done.', (told) =>
    told.goTo(1).tell('weigh', { store: 'C-04', amount: null }),
  ),
  'count-missing': toldSample('count-missing', 'A day line lacks a counter.', (told) =>
    told.goTo(1, 21).tell('day-line', dayLine(1, { ...whole(1), strokes: null })),
  ),
  'counter-backwards': toldSample(
    'counter-backwards',
    'A counter that only counts upwards reads less than before.',
    (told) => {
      told.goTo(1, 12).tell('meter', { readings: readings({ strokes: 150 }) });
      told.goTo(1, 14).tell('meter', { readings: readings({ strokes: 90 }) });
    },
  ),
  'counter-leaps': toldSample(
    'counter-leaps',
    'A counter has counted more than its unit can pass in the time.',
    (told) => told.goTo(1, 21).tell('day-line', dayLine(1, { ...whole(1), product: 31 })),
  ),
  'drinks-exceed-counter': toldSample(
    'drinks-exceed-counter',
    'Single drinks add up to more than the counter behind them has counted.',
    (told) => {
      told.goTo(1, 12).tell('movement', { from: 'tap', to: 'people', amount: litres(6), use: 'drink' });
      told.goTo(1, 21).tell('day-line', dayLine(1, whole(1)));
    },
  ),
  'unmetered-inflow': sample(
    'A unit that no meter counts has brought water, seen by what was taken out behind it.',
    () =>
      failureOf(
        'unmetered-inflow',
        (told) => told.goTo(2).tell('movement', { from: 'SB', to: 'W-02', amount: litres(1.5) }),
        () => opened(WITH_STANDBY),
      ),
  ),
  'legs-differ': toldSample(
    'legs-differ',
    'Who gave and who got tell different amounts of one push.',
    (told) =>
      told.goTo(1).tell('push', {
        from: [{ store: 'C-04', amount: litres(6) }],
        to: [{ store: 'C-03', amount: litres(5.5) }],
        amount: litres(6, 0.01),
      }),
  ),
  'tank-not-run-dry': toldSample(
    'tank-not-run-dry',
    'A tank was called empty although its flow had not stopped.',
    (told) => {
      berth(told);
      told.tell('declared-empty', { store: 'V-1', flowStopped: false, bookMg: 11_000_000, counters: [] });
    },
  ),
  'reserve-below-floor': toldSample(
    'reserve-below-floor',
    'The stores that count as reserve hold less than the floor.',
    (told) => told.goTo(1).tell('movement', { from: 'R1', to: 'outside', amount: litres(60) }),
  ),
  'waste-limit': toldSample('waste-limit', 'Waste stands above the limit of its tank.', (told) =>
    berth(told, { grade: 'waste', amount: litres(199, 0.5) }),
  ),
  'no-reading': toldSample('no-reading', 'No day line for two days or more: all figures are old.', (told) => {
    told.goTo(1, 21).tell('day-line', dayLine(1, whole(1)));
    told.goTo(4, 9).tell('note', { text: 'all well' });
  }),
  'opening-missing': sample('A book with entries and without opening stocks.', () =>
    failureOf(
      'opening-missing',
      (told) => told.goTo(1).tell('movement', { from: 'R1', to: 'C-03', amount: litres(2) }),
      () => new Told(HOLM),
    ),
  ),
  'before-opening': sample('It happened before the opening stocks were told.', () =>
    failureOf(
      'before-opening',
      (told) => {
        told.goTo(0, 9).tell('movement', { from: 'R1', to: 'C-03', amount: litres(2) });
        told.goTo(0, 21).tell('opening', holmOpening());
      },
      () => new Told(HOLM),
    ),
  ),
} satisfies Partial<Samples<AccountFindingCode>>;
