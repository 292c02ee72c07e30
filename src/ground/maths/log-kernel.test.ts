// The logarithm in plain numbers has the bits of the one in pairs.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { logHigh, logLeft } from './log-kernel.ts';
import { logOfPair } from './logarithm.ts';

test('both parts are those of the form in pairs, over the whole range and close to 1', () => {
  let looked = 0;
  const isSame = (x: number): boolean => {
    looked += 1;
    const pair = logOfPair({ hi: x, lo: 0 });
    const high = logHigh(x);
    return Object.is(high, pair.hi) && Object.is(logLeft(), pair.lo);
  };
  const anywhere = fc.double({ min: 2.2250738585072014e-308, max: 1.7976931348623157e308, noNaN: true });
  fc.assert(fc.property(anywhere, isSame), { numRuns: 5000, seed: 31 });
  fc.assert(fc.property(fc.double({ min: 0.5, max: 2, noNaN: true }), isSame), { numRuns: 5000, seed: 32 });
  expect(looked).toBe(10_000);
});
