// Table of entries that tell something of the doubts themselves: openings, labels, means, instruments, the cabin air.
import type { AccountFindingCode } from '../../../src/account/index.ts';
import { HOLM } from '../../journeys/holm.ts';
import { dayLine, holmOpening, litres, Told } from '../../journeys/told.ts';
import { changed } from '../../outpost/small-outpost.ts';
import { type Samples, sample } from './sample.ts';
import { failureOf, toldSample } from './told-entries.ts';

/** Holm, whose cabin air is read. */
const WITH_AIR = changed(
  '  - { id: fill-meter,',
  `  - { id: humidity, measures: humidity, unit: '%', random: { absolute: 1.5 }, calibration: { absolute: 2 }, reading: spot }
  - { id: warmth, measures: temperature, unit: °C, random: { absolute: 0.2 }, reading: spot }
  - { id: fill-meter,`,
  HOLM,
);

/** Holm, whose balance was calibrated a month after the book began. */
const CALIBRATED_LATER = changed('{ id: balance,', '{ id: balance, calibratedOn: 2147-02-01,', HOLM);

/** An opening in which C-04 was guessed. */
const GUESSED = holmOpening().stores.map((each) =>
  each.store === 'C-04' ? { ...each, amount: litres(18, 2.5) } : each,
);

function opened(outpost: string, stores = holmOpening().stores): Told {
  const told = new Told(outpost);
  told.tell('opening', holmOpening({ stores }));
  return told;
}

const weighed = (store: string, volumeL: number) => ({ store, amount: litres(volumeL), method: 'balance' });

const line = (day: number, condensate: number) =>
  dayLine(day, { condensate, product: 3, strokes: 200, flushes: 12, humidity: 48, warmth: 22 });

export const doubtSamples = {
  'opening-off': sample('A reading says that a store was told wrongly from the beginning.', () =>
    failureOf(
      'opening-off',
      (told) => told.goTo(5).tell('weigh', weighed('C-04', 15)),
      () => opened(HOLM, GUESSED),
    ),
  ),
  'labels-swapped': toldSample(
    'labels-swapped',
    'Two readings are far off, and each fits the other store.',
    (told) => {
      told.goTo(1).tell('weigh', weighed('C-01', 18));
      told.goTo(1, 13).tell('weigh', weighed('C-04', 20));
    },
  ),
  'means-disagree': toldSample(
    'means-disagree',
    'Two means for the same water differ by more than their doubts allow.',
    (told) =>
      told.goTo(1).tell('movement', {
        from: 'R1',
        to: 'C-03',
        amount: litres(20, 0.2),
        alsoRead: [{ amount: litres(15, 0.2), method: 'weighing' }],
      }),
  ),
  'doubts-do-not-fit': toldSample(
    'doubts-do-not-fit',
    'Readings of an instrument scatter otherwise than the outpost file declares.',
    (told) => {
      for (let day = 1; day <= 24; day++)
        told.goTo(day).tell('weigh', weighed('C-04', day % 2 === 0 ? 17.7 : 18.3));
    },
  ),
  'reading-before-calibration': sample('A reading was taken before the instrument was calibrated.', () =>
    failureOf(
      'reading-before-calibration',
      (told) => told.goTo(1).tell('weigh', weighed('C-04', 18)),
      () => opened(CALIBRATED_LATER),
    ),
  ),
  'counter-gap': toldSample(
    'counter-gap',
    'A counter was replaced, and nobody read the old one at the end.',
    (told) => {
      for (let day = 1; day <= 3; day++)
        told.goTo(day, 21).tell('day-line', line(day, (990 + 3 * day) % 1000));
      told.goTo(4).tell('instrument-replaced', { instrument: 'strokes', serial: 'DS-32', startsAt: 0 });
    },
  ),
  'air-does-not-close': sample(
    'What people give off into the air and what is collected from it differ.',
    () =>
      failureOf(
        'air-does-not-close',
        (told) => {
          told.goTo(1, 21).tell('day-line', line(1, 993.4));
          told.goTo(2, 21).tell('day-line', line(2, 993.9));
        },
        () => opened(WITH_AIR),
      ),
  ),
} satisfies Partial<Samples<AccountFindingCode>>;
