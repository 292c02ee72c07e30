// Amounts of the book are whole milligrams, or they are not made.
import { expect, it } from 'vitest';
import { milligrams } from './figure.ts';

it('makes whole milligrams', () => {
  expect(milligrams(200_000)).toBe(200_000);
  expect(milligrams(-5)).toBe(-5);
  expect(Object.is(milligrams(-0), 0)).toBe(true);
});

it.each([0.5, Number.NaN, Number.POSITIVE_INFINITY, 2 ** 53])('throws at %d', (value) => {
  expect(() => milligrams(value)).toThrow(RangeError);
});
