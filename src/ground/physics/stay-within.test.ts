// Ends of ranges: which belong to them, and that NaN and infinity belong to none.
import { expect, it } from 'vitest';
import { OPEN_END, OutsideRange } from './outside-range.ts';
import { stayAboveZero, stayAtLeastZero, stayShare, stayShareAboveZero, stayWithin } from './stay-within.ts';

const given = { quantity: 'length of the hose', unit: 'm', source: 'tanaka-2001' };
const looks = {
  within: (value: number) => stayWithin({ ...given, value, low: -1, high: 40 }),
  open: (value: number) => stayWithin({ ...given, value, low: 0, high: OPEN_END }),
  atLeastZero: (value: number) => stayAtLeastZero({ ...given, value }),
  aboveZero: (value: number) => stayAboveZero({ ...given, value }),
  share: (value: number) => stayShare({ ...given, value }),
  shareAboveZero: (value: number) => stayShareAboveZero({ ...given, value }),
};

it.each<[keyof typeof looks, number]>([
  ['within', -1],
  ['within', 40],
  ['open', 0],
  ['open', 1e300],
  ['atLeastZero', 0],
  ['aboveZero', 5e-324],
  ['share', 0],
  ['share', 1],
  ['shareAboveZero', 1],
])('%s lets %d through', (look, value) => {
  expect(() => looks[look](value)).not.toThrow();
});

it.each<[keyof typeof looks, number]>([
  ['within', -1.0000001],
  ['within', 40.0000001],
  ['within', Number.NaN],
  ['open', Number.POSITIVE_INFINITY],
  ['atLeastZero', -5e-324],
  ['atLeastZero', Number.NaN],
  ['aboveZero', 0],
  ['aboveZero', Number.POSITIVE_INFINITY],
  ['share', 1.0000001],
  ['share', -0.1],
  ['shareAboveZero', 0],
  ['shareAboveZero', Number.NaN],
])('%s refuses %d', (look, value) => {
  expect(() => looks[look](value)).toThrow(OutsideRange);
});
