// The ± of a reckoning: by hand for formulas whose slopes are known, at the end of a range, and for what has none.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { OutsideRange } from '../../ground/physics/index.ts';
import type { Reckoned } from './calculator.ts';
import { doubtsOf } from './doubt.ts';
import { type Input, Inputs } from './inputs.ts';

const input = (name: string, value: number, u: number | null): Input => ({
  name,
  value,
  u,
  unit: '',
  by: 'typed',
  from: '',
  entries: [],
});

const answers =
  (formula: (inputs: Inputs) => number) =>
  (inputs: Inputs): Reckoned => ({ results: [{ name: 'x', value: formula(inputs), unit: '' }], sayings: [] });

function doubtOf(inputs: Inputs, formula: (inputs: Inputs) => number) {
  const run = answers(formula);
  const [doubt] = doubtsOf(inputs, run, run(inputs).results);
  if (doubt === undefined) throw new Error('one result has one doubt');
  return doubt;
}

describe('the doubt of a result', () => {
  it('is the root of squares for a sum, whatever the values', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -1e3, max: 1e3, noNaN: true }),
        fc.double({ min: 0.01, max: 10, noNaN: true }),
        fc.double({ min: 0.01, max: 10, noNaN: true }),
        (value, a, b) => {
          const inputs = new Inputs([input('a', value, a), input('b', 2 * value, b)]);
          const { u } = doubtOf(inputs, (given) => given.number('a') - 3 * given.number('b'));
          expect(u).toBeCloseTo(Math.sqrt(a * a + 9 * b * b), 9);
        },
      ),
    );
  });

  it('of a product is that of the relative parts', () => {
    const inputs = new Inputs([input('a', 20, 0.2), input('b', 5, 0.1)]);
    const { u, parts } = doubtOf(inputs, (given) => given.number('a') * given.number('b'));
    expect(u).toBeCloseTo(100 * Math.sqrt(0.01 ** 2 + 0.02 ** 2), 12);
    expect(parts.map(({ index }) => index)).toEqual([0, 1]);
    expect(parts[1]?.part).toBeCloseTo(2, 12);
  });

  it('is none where no input has one, and where none bears on it', () => {
    expect(doubtOf(new Inputs([input('a', 1, null)]), (given) => given.number('a')).u).toBeNull();
    expect(doubtOf(new Inputs([input('a', 1, 0.1)]), () => 7).u).toBeNull();
  });

  it('takes the one side that there is at the end of a range', () => {
    const inputs = new Inputs([input('a', 10, 2)]);
    const { u } = doubtOf(inputs, (given) => {
      const a = given.number('a');
      if (a > 11)
        throw new OutsideRange({ quantity: 'a', value: a, unit: '', low: 0, high: 11, source: 'gum' });
      return 3 * a;
    });
    expect(u).toBeCloseTo(6, 12);
  });

  it('passes on what is no range', () => {
    const inputs = new Inputs([input('a', 10, 2)]);
    const fails = (given: Inputs): number => {
      if (given.number('a') !== 10) throw new TypeError('a fault of the code');
      return 1;
    };
    expect(() => doubtOf(inputs, fails)).toThrow(TypeError);
  });
});
