// Errors that readings repeat: a walk that is walked when it is looked at, what taught an error, and starting anew.
import { expect, test } from 'vitest';
import { HOLM } from '../../tests/journeys/holm.ts';
import { at, holmOpening, litres, Told } from '../../tests/journeys/told.ts';
import { changed } from '../../tests/outpost/small-outpost.ts';
import { seededChance } from '../ground/maths/index.ts';
import { msPerDay } from '../ground/units/index.ts';
import { type ErrorState, errorKey, noteLessons, startAnew, variancesOf, walkTo } from './error-state.ts';
import { Estimator } from './estimator.ts';

const DRIFT = 0.002;

const DRIFTING = changed(
  'calibration: { relative: 0.01 }, reading: amount',
  `calibration: { relative: 0.01 }, driftRelativePerSqrtDay: ${DRIFT}, reading: amount`,
  HOLM,
);

function opened(): Told {
  const told = new Told(DRIFTING);
  told.tell('opening', holmOpening());
  return told;
}

function fill(told: Told, day: number, value: number): void {
  told
    .goTo(day, 9)
    .tell('movement', { from: 'R1', to: 'C-03', amount: litres(value), instrument: 'fill-meter' });
}

const meterOf = (told: Told): ErrorState => told.fold.errors.get(errorKey('calibration', 'fill-meter'))!;

test('walked lazily or day by day, with movements and readings in between: the same to 1e-12', () => {
  const chance = seededChance({ seed: 2147 });
  const [lazy, daily] = [opened(), opened()];
  let read = 0;
  for (let day = 1; day <= 90; day += 1) {
    const [what, value] = [chance.uniform(), 1 + chance.uniform()];
    for (const told of [lazy, daily]) {
      // Looked at in the middle of each night, too.
      const known = told.fold.errors.get(errorKey('calibration', 'fill-meter'));
      if (told === daily && known !== undefined) walkTo(told.fold.estimator, known, at(day, 2));
      if (what < 0.15) fill(told, day, value);
      else if (what < 0.25) {
        const amount = litres(Math.round(10 * told.believed('C-03').valueL) / 10, 0.1);
        told.goTo(day, 10).tell('weigh', { store: 'C-03', amount, instrument: 'balance' });
        read += told === lazy ? 1 : 0;
      }
    }
  }
  expect(read).toBeGreaterThan(4);
  const [one, other] = [lazy.fold.estimator, daily.fold.estimator];
  walkTo(one, meterOf(lazy), at(91));
  walkTo(other, meterOf(daily), at(91));
  for (let i = 0; i < one.size; i += 1) {
    expect(Math.abs(one.mean(i) - other.mean(i))).toBeLessThan(1e-12);
    for (let j = 0; j <= i; j += 1)
      expect(Math.abs(one.covariance(i, j) - other.covariance(i, j))).toBeLessThan(1e-12);
  }
});

test('a walk of so many days: σ² + d² t, shown as it is now and not as it was last looked at', () => {
  const told = opened();
  fill(told, 1, 5);
  const learned = (day: number) =>
    told
      .goTo(day, 9)
      .position()
      .learned.find(({ of }) => of === 'fill-meter')!;
  for (const days of [0, 1, 25, 100])
    expect(learned(1 + days).u).toBeCloseTo(Math.sqrt(0.01 ** 2 + DRIFT ** 2 * days), 12);
  // Looking changes nothing.
  expect(told.fold.estimator.variance(meterOf(told).place)).toBeCloseTo(1e-4, 15);
  fill(told, 101, 5);
  expect(told.fold.estimator.variance(meterOf(told).place)).toBeCloseTo(1e-4 + DRIFT ** 2 * 100, 15);
});

const errorOf = (estimator: Estimator, change: Partial<ErrorState> = {}): ErrorState => ({
  kind: 'calibration',
  of: 'meter',
  place: estimator.add(0, 0.0001),
  assumedU: 0.01,
  driftPerSqrtDay: 0,
  walkedToMs: 0,
  lessons: [],
  lessonsInAll: 0,
  ...change,
});

test('time never runs backwards for a walk, and what does not walk stays', () => {
  const estimator = new Estimator();
  const walking = errorOf(estimator, { driftPerSqrtDay: 0.001, walkedToMs: 10 * msPerDay });
  walkTo(estimator, walking, 4 * msPerDay);
  expect([walking.walkedToMs, estimator.variance(walking.place)]).toEqual([10 * msPerDay, 0.0001]);
  const still = errorOf(estimator);
  walkTo(estimator, still, 400 * msPerDay);
  expect(estimator.variance(still.place)).toBe(0.0001);
});

test('an entry is a lesson if it takes two parts in a hundred off the variance; the youngest sixty are listed', () => {
  const estimator = new Estimator();
  const error = errorOf(estimator);
  const read = (entry: string, u: number) => {
    const before = variancesOf(estimator, [error]);
    estimator.read({ places: [error.place], value: 0, u });
    noteLessons(estimator, before, entry);
  };
  // Of a variance P a reading of noise R leaves P R / (P + R): with R = 60 P that is 1.6 % less.
  read('too weak', Math.sqrt(60 * 0.0001));
  expect([error.lessons, error.lessonsInAll]).toEqual([[], 0]);
  read('strong', 0.01);
  read('strong', 0.01);
  expect([error.lessons, error.lessonsInAll]).toEqual([['strong'], 1]);
  for (let k = 0; k < 80; k += 1) {
    estimator.widen(error.place, 0.0001);
    read(`entry ${k}`, 0.01);
  }
  expect(error.lessonsInAll).toBe(81);
  expect(error.lessons).toHaveLength(60);
  expect([error.lessons[0], error.lessons.at(-1)]).toEqual(['entry 20', 'entry 79']);
});

test('starting anew: nothing that was learned holds, and nothing is shared any more', () => {
  const estimator = new Estimator();
  const store = estimator.add(0, 0);
  const error = errorOf(estimator, { lessons: ['a'], lessonsInAll: 9 });
  estimator.move({ from: -1, to: store, calibration: error.place, massKg: 20, uKg: 0.1 });
  estimator.read({ places: [store], value: 20.4, u: 0.01 });
  const held = [estimator.mean(store), estimator.variance(store)];
  startAnew(estimator, error, { assumedU: 0.03, ms: 5 * msPerDay });
  expect(error).toMatchObject({ assumedU: 0.03, walkedToMs: 5 * msPerDay, lessons: [], lessonsInAll: 0 });
  expect(estimator.mean(error.place)).toBe(0);
  expect(estimator.variance(error.place)).toBeCloseTo(0.0009, 15);
  expect(estimator.covariance(store, error.place)).toBe(0);
  expect([estimator.mean(store), estimator.variance(store)]).toEqual(held);
});
