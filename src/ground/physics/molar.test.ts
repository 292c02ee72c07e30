// Molar masses from formulas: the substances of the water trade, and what is no formula.
import { expect, it } from 'vitest';
import { atomsOf, molarMassKgPerMol } from './molar.ts';

it.each([
  ['H2O', 0.018015],
  ['O2', 0.031998],
  ['H2', 0.002016],
  ['CaCO3', 0.100086],
  ['Ag', 0.1078682],
  ['C2H6O', 0.046069],
])('a mole of %s weighs %d kg', (formula, massKg) => {
  expect(molarMassKgPerMol(formula)).toBeCloseTo(massKg, 9);
});

it('counts an element that stands twice, and counts of two digits', () => {
  expect([...atomsOf('CH3COOH')]).toEqual([
    ['C', 2],
    ['H', 4],
    ['O', 2],
  ]);
  expect(atomsOf('C12H22O11').get('H')).toBe(22);
});

it('splits water into its parts without losing any', () => {
  expect(2 * molarMassKgPerMol('H2O')).toBeCloseTo(molarMassKgPerMol('O2') + 2 * molarMassKgPerMol('H2'), 15);
});

it.each(['', 'h2o', 'H2 O', 'Ca(OH)2', 'H02', 'Xx', 'NO3-', 'C1000', '2H'])('refuses "%s"', (formula) => {
  expect(() => molarMassKgPerMol(formula)).toThrow(RangeError);
});
