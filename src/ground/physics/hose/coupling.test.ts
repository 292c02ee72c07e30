// Couplings: flow coefficients there and back, in series, choking, and what is refused.
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { OutsideRange } from '../outside-range.ts';
import { chokingDropPa, cvOfKv, kvForFlow, kvInSeries, kvOfCv, lossOfKv } from './coupling.ts';

const kv = fc.double({ min: 1e-3, max: 1e3, noNaN: true });

it('Kv and Cv there and back', () => {
  fc.assert(fc.property(kv, (value) => Math.abs(kvOfCv(cvOfKv(value)) / value - 1) < 1e-15));
});

it('in series the order does not count, equals divide by √n, one more always holds back', () => {
  fc.assert(
    fc.property(kv, kv, (one, other) => {
      expect(kvInSeries([one, other])).toBe(kvInSeries([other, one]));
      expect(kvInSeries([one, other])).toBeLessThan(Math.min(one, other));
      expect(kvInSeries([one, one, one, one])).toBeCloseTo(one / 2, 10);
    }),
  );
  expect(kvInSeries([])).toBe(Number.POSITIVE_INFINITY);
  expect(kvInSeries([0.7])).toBeCloseTo(0.7, 15);
});

it('the loss coefficient of a coupling takes the pressure that its Kv says', () => {
  fc.assert(
    fc.property(kv, fc.double({ min: 0.002, max: 0.05, noNaN: true }), (value, boreM) => {
      // At 1 bar and 1000 kg/m³ the flow is Kv itself.
      const velocity = value / 3600 / ((Math.PI * boreM * boreM) / 4);
      expect(lossOfKv(value, boreM) * 500 * velocity * velocity).toBeCloseTo(1e5, 5);
    }),
  );
  expect(lossOfKv(Number.POSITIVE_INFINITY, 0.01)).toBe(0);
});

it('the Kv for a flow: Kv itself at 1 bar, half of it at 4 bar, and more for denser water', () => {
  const flow = { flowM3PerS: 1 / 3600, dropPa: 1e5, densityKgPerM3: 1000 };
  expect(kvForFlow(flow)).toBeCloseTo(1, 15);
  expect(kvForFlow({ ...flow, dropPa: 4e5 })).toBeCloseTo(0.5, 15);
  expect(kvForFlow({ ...flow, densityKgPerM3: 1010 })).toBeGreaterThan(1);
});

it('warmer water chokes sooner; a push of an outpost is far from it', () => {
  const valve = { inletPa: 151_987.5, vapourPa: 3170, recovery: 0.9 };
  expect(chokingDropPa({ ...valve, vapourPa: 47_400 })).toBeLessThan(chokingDropPa(valve));
  expect(chokingDropPa(valve)).toBeGreaterThan(50_662.5);
});

it.each<[string, () => unknown]>([
  ['a Kv of 0', () => cvOfKv(0)],
  ['a Cv below 0', () => kvOfCv(-1)],
  ['a coupling without a number', () => kvInSeries([0.6, Number.NaN])],
  ['a flow of 0', () => kvForFlow({ flowM3PerS: 0, dropPa: 1, densityKgPerM3: 1000 })],
  ['no drop', () => kvForFlow({ flowM3PerS: 1, dropPa: 0, densityKgPerM3: 1000 })],
  ['vapour above the critical pressure', () => chokingDropPa({ inletPa: 1e5, vapourPa: 3e7, recovery: 0.9 })],
  ['a recovery above 1', () => chokingDropPa({ inletPa: 1e5, vapourPa: 3e3, recovery: 1.1 })],
])('%s is refused', (_name, run) => {
  expect(run).toThrow(OutsideRange);
});
