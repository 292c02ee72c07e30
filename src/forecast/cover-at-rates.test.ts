// Days at the rates of policy: worked out by hand on Holm, and how they must stand to each other.
import { expect, test } from 'vitest';
import { HOLM } from '../../tests/journeys/holm.ts';
import { holm, holmOpening, litres, Told } from '../../tests/journeys/told.ts';
import { changed } from '../../tests/outpost/small-outpost.ts';
import { coverAtRates } from './cover-at-rates.ts';

test('Holm: two people at 2.7 and at 2 L, 38.5 L free, 150 L in the reserve with a floor of 100 L', () => {
  const [planning, survival] = coverAtRates(holm().position(), 'drinking') ?? [];
  // Free: 20 − 0.6 + 18 − 0.6 + 2 − 0.3 = 38.5 L.
  expect(planning).toMatchObject({ rate: 'planning', litresPerPersonDay: 2.7, people: 2 });
  expect(planning?.free.days).toBeCloseTo(38.5 / 5.4, 6);
  expect(planning?.toFloor.days).toBeCloseTo((38.5 + 50) / 5.4, 6);
  expect(survival?.free.days).toBeCloseTo(38.5 / 4, 6);
  expect(survival?.toFloor.days).toBeCloseTo((38.5 + 50) / 4, 6);
  // 4 L of the tank do not come out.
  expect(survival?.reserve.days).toBeCloseTo(146 / 4, 6);
});

test('the ± comes from the stock alone', () => {
  const [, survival] = coverAtRates(holm().position(), 'drinking') ?? [];
  const freeU = Math.sqrt(0.25 ** 2 + 0.25 ** 2 + 0.2 ** 2 + 0.2 ** 2 + 0.2 ** 2 + 0.1 ** 2);
  expect(survival?.free.uDays).toBeCloseTo(freeU / 4, 6);
  expect(survival?.reserve.uDays).toBeCloseTo(Math.sqrt(3 ** 2 + 0.5 ** 2) / 4, 6);
});

test('more people have fewer days, in proportion', () => {
  const told = new Told();
  told.tell('opening', holmOpening({ peopleAboard: 5 }));
  const [two] = coverAtRates(holm().position(), 'drinking') ?? [];
  const [five] = coverAtRates(told.position(), 'drinking') ?? [];
  expect(five?.free.days).toBeCloseTo(((two?.free.days ?? 0) * 2) / 5, 9);
});

test('a reserve below its floor adds nothing, and no days are below 0', () => {
  const told = holm();
  told.tell('movement', { from: 'R1', to: 'outside', amount: litres(149) });
  const [, survival] = coverAtRates(told.position(), 'drinking') ?? [];
  expect(survival?.toFloor.days).toBe(0);
  expect(survival?.reserve.days).toBe(0);
  expect(survival?.free.days).toBeGreaterThan(9);
});

test('they are told of the grade of the reserve only, and of nobody where nobody is', () => {
  expect(coverAtRates(holm().position(), 'technical')).toBeNull();
  const empty = new Told();
  empty.tell('opening', holmOpening({ peopleAboard: 0 }));
  expect(coverAtRates(empty.position(), 'drinking')).toBeNull();
});

test('the rates are those of the outpost file', () => {
  const told = new Told(changed('planningLPerPersonDay: 2.7', 'planningLPerPersonDay: 3.9', HOLM));
  told.tell('opening', holmOpening());
  const rates = coverAtRates(told.position(), 'drinking')?.map((each) => each.litresPerPersonDay);
  expect(rates).toEqual([3.9, 2]);
});
