// The order of writing is a total order, and counts digits as numbers.
import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { compareLineIds } from './order.ts';

test.each([
  ['E0002', 'E0010'],
  ['E999', 'E1000'],
  ['E9', 'E10'],
  ['A-9', 'A-10'],
  ['A10', 'B9'],
  ['E35', 'E035'],
  ['E1', 'E1a'],
  ['1', 'E1'],
  ['E9007199254740993', 'E9007199254740994'],
])('%s was written before %s', (a, b) => {
  expect(compareLineIds(a, b)).toBeLessThan(0);
  expect(compareLineIds(b, a)).toBeGreaterThan(0);
});

const id = fc.stringMatching(/^[A-Z0-9][a-z0-9._-]{0,6}$/);

test('antisymmetric, transitive, and 0 for the same id only', () => {
  fc.assert(
    fc.property(id, id, id, (a, b, c) => {
      expect(Math.sign(compareLineIds(a, b)) + Math.sign(compareLineIds(b, a))).toBe(0);
      expect(compareLineIds(a, b) === 0).toBe(a === b);
      if (compareLineIds(a, b) <= 0 && compareLineIds(b, c) <= 0) {
        expect(compareLineIds(a, c)).toBeLessThanOrEqual(0);
      }
    }),
    { numRuns: 3000 },
  );
});
