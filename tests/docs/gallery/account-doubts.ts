// Table of entries after which the book asks about readings, openings, calibrations and doubts themselves.
import type { AccountFindingCode } from '../../../src/account/index.ts';
import { HOLM } from '../../journeys/holm.ts';
import { AIRY_HOLM, airyLine, VAPOUR_L_A_DAY } from '../../journeys/holm-air.ts';
import { dayLine, holmOpening, litres, Told } from '../../journeys/told.ts';
import { changed } from '../../outpost/small-outpost.ts';
import { type Samples, sample } from './sample.ts';
import { failureOf, toldSample } from './told-entries.ts';

/** C-04 was guessed at the opening. */
const GUESSED = holmOpening().stores.map((each) =>
  each.store === 'C-04' ? { ...each, amount: litres(18, 2) } : each,
);

function opened(outpost: string, stores = holmOpening().stores): Told {
  const told = new Told(outpost);
  told.tell('opening', holmOpening({ stores }));
  return told;
}

/** The balance was calibrated on Day 5. */
const CALIBRATED = changed('logMethod: balance }', 'logMethod: balance, calibratedOn: 2147-01-05 }', HOLM);

/** A week in which everything that people give off comes to the condenser. */
function quietWeek(): Told {
  const told = opened(AIRY_HOLM);
  for (let day = 1; day <= 7; day += 1)
    told.goTo(day, 21).tell('day-line', airyLine(day, { condensateL: VAPOUR_L_A_DAY * day }));
  return told;
}

/** Weighings of one container that nobody touches, to and fro about what it holds. */
function weighOften(told: Told, offL: number): void {
  for (let day = 1; day <= 24; day += 1)
    told.goTo(day, 9).tell('weigh', {
      store: 'C-04',
      amount: litres(18 + (day % 2 === 0 ? offL : -offL)),
      method: 'balance',
    });
}

/** Pressures and temperatures of a gauging by gas injection. */
const gasInjection = {
  bottleVolumeL: 2,
  tankVolumeL: 180,
  bottleBeforeKPaAbs: 900,
  bottleAfterKPaAbs: 400,
  bottleBeforeC: 20,
  bottleAfterC: 20,
  tankBeforeKPaAbs: 101,
  tankAfterKPaAbs: 131,
  tankBeforeC: 20,
  tankAfterC: 20,
};

const line = (day: number) =>
  dayLine(day, { condensate: (990 + 3 * day) % 1000, product: 3, strokes: 200, flushes: 12 });

export const doubtSamples = {
  'labels-swapped': toldSample(
    'labels-swapped',
    'Two stores were each read at what the other one should hold.',
    (told) => {
      told.goTo(1, 9).tell('weigh', { store: 'C-01', amount: litres(18.1), method: 'balance' });
      told.goTo(1, 9.5).tell('weigh', { store: 'C-04', amount: litres(19.9), method: 'balance' });
    },
  ),
  'opening-off': sample(
    'A reading shows that the opening was wrong: it was told with a wide ±.',
    () =>
      failureOf(
        'opening-off',
        (told) => told.goTo(2).tell('weigh', { store: 'C-04', amount: litres(20.9), method: 'balance' }),
        () => opened(HOLM, GUESSED),
      ),
    () =>
      failureOf('opening-off', (told) => {
        told.goTo(2, 9).tell('visit-berth', {
          visit: 'Skiff',
          peopleArrive: 0,
          stores: [
            {
              store: 'V-1',
              kind: 'container',
              capacityL: 22,
              usableRemainderL: 0.6,
              grade: 'drinking',
              amount: litres(20, 1),
            },
          ],
        });
        told.goTo(2, 11).tell('weigh', { store: 'V-1', amount: litres(17.4), method: 'balance' });
      }),
    () =>
      failureOf('opening-off', (told) =>
        told.goTo(55).tell('pvt', { ...gasInjection, store: 'R1', amount: litres(143.5) }),
      ),
  ),
  'air-does-not-close': sample(
    'What people give off, what the condenser collects and the humidity do not fit.',
    () =>
      failureOf(
        'air-does-not-close',
        (told) => told.goTo(8, 21).tell('day-line', airyLine(8, { condensateL: VAPOUR_L_A_DAY * 8 - 1.5 })),
        quietWeek,
      ),
    () =>
      failureOf(
        'air-does-not-close',
        (told) => told.goTo(8, 21).tell('day-line', airyLine(8, { condensateL: VAPOUR_L_A_DAY * 8 + 1.5 })),
        quietWeek,
      ),
  ),
  'means-disagree': toldSample(
    'means-disagree',
    'One movement was measured in two ways that do not fit.',
    (told) =>
      told.goTo(1).tell('movement', {
        from: 'R1',
        to: 'C-03',
        amount: litres(18.5),
        hose: 'H-1',
        method: 'flow meter',
        alsoRead: [{ amount: litres(17.1, 0.15), method: 'weight before and after' }],
      }),
  ),
  'doubts-do-not-fit': toldSample(
    'doubts-do-not-fit',
    'Readings scatter more, or less, than the outpost file declares.',
    (told) => weighOften(told, 0.3),
    (told) => weighOften(told, 0.05),
  ),
  'reading-before-calibration': sample('An instrument was read before the day of its calibration.', () =>
    failureOf(
      'reading-before-calibration',
      (told) => told.goTo(2).tell('weigh', { store: 'C-04', amount: litres(18), method: 'balance' }),
      () => opened(CALIBRATED),
    ),
  ),
  'counter-gap': toldSample(
    'counter-gap',
    'A counter was replaced, and the old one was not read at the end.',
    (told) => {
      for (const day of [1, 2, 3]) told.goTo(day, 21).tell('day-line', line(day));
      told.goTo(4, 12).tell('instrument-replaced', { instrument: 'strokes', serial: 'DS-32', startsAt: 0 });
    },
    (told) =>
      told
        .goTo(1, 12)
        .tell('instrument-replaced', { instrument: 'strokes', serial: 'DS-32', startsAt: 0, endedAt: null }),
  ),
} satisfies Partial<Samples<AccountFindingCode>>;
