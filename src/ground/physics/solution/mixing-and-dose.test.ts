// Mixing, washing out and dosing: mass is kept, inverses, the maximum of the outpost, the slip of ten, and what is refused.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { OutsideRange } from '../outside-range.ts';
import { resultOfStock, saltForTarget, slipOfTen, stockForTarget, waterToDiluteM3 } from './dose.ts';
import { mixedSolution, volumesToWashOut, washedOutKgPerM3 } from './mixing.ts';

const share = fc.double({ min: 1e-9, max: 1, noNaN: true });
const solution = fc.record({
  volumeM3: fc.double({ min: 0.001, max: 0.4, noNaN: true }),
  concentrationKgPerM3: fc.double({ min: 1e-9, max: 1, noNaN: true }),
});

describe('mixing', () => {
  it('keeps what is dissolved, lies between its parts, and does not mind their order', () => {
    fc.assert(
      fc.property(fc.array(solution, { minLength: 1, maxLength: 6 }), (parts) => {
        const mixed = mixedSolution(parts);
        const each = parts.map(({ concentrationKgPerM3 }) => concentrationKgPerM3);
        expect(mixed.concentrationKgPerM3 * mixed.volumeM3).toBeCloseTo(mixed.massKg, 12);
        expect(mixed.concentrationKgPerM3).toBeGreaterThanOrEqual(Math.min(...each) * (1 - 1e-14));
        expect(mixed.concentrationKgPerM3).toBeLessThanOrEqual(Math.max(...each) * (1 + 1e-14));
        const back = mixedSolution([...parts].reverse());
        expect(back.concentrationKgPerM3).toBeCloseTo(mixed.concentrationKgPerM3, 13);
      }),
    );
  });

  it.each([
    [[]],
    [[{ volumeM3: 0, concentrationKgPerM3: 1 }]],
    [[{ volumeM3: 1, concentrationKgPerM3: -1 }]],
    [[{ volumeM3: Number.NaN, concentrationKgPerM3: 1 }]],
  ])('refuses %j', (parts) => {
    expect(() => mixedSolution(parts)).toThrow(OutsideRange);
  });
});

describe('washing out', () => {
  it('goes from what stood there to what flows in, and volumes lead back', () => {
    fc.assert(
      fc.property(share, share, fc.double({ min: 0, max: 12, noNaN: true }), (at, flow, volumesThrough) => {
        fc.pre(Math.abs(at - flow) > 1e-3);
        const washout = { atFirstKgPerM3: at, inflowKgPerM3: flow };
        const left = washedOutKgPerM3({ ...washout, volumesThrough });
        expect(left).toBeGreaterThanOrEqual(Math.min(at, flow) - 1e-15);
        expect(left).toBeLessThanOrEqual(Math.max(at, flow) + 1e-15);
        expect(volumesToWashOut({ ...washout, wantedKgPerM3: left })).toBeCloseTo(volumesThrough, 5);
      }),
    );
  });

  it('nothing through, nothing changed; the inflow itself is never reached', () => {
    const washout = { atFirstKgPerM3: 0.2, inflowKgPerM3: 0.05 };
    expect(washedOutKgPerM3({ ...washout, volumesThrough: 0 })).toBe(0.2);
    expect(volumesToWashOut({ ...washout, wantedKgPerM3: 0.2 })).toBe(0);
    for (const wantedKgPerM3 of [0.05, 0.04, 0.21, Number.NaN])
      expect(() => volumesToWashOut({ ...washout, wantedKgPerM3 })).toThrow(OutsideRange);
  });
});

describe('a dose of stock solution', () => {
  it('brings about what was wanted, whatever the water and the stock', () => {
    fc.assert(
      fc.property(solution, share, fc.double({ min: 2, max: 1000, noNaN: true }), (water, more, times) => {
        const wantedKgPerM3 = water.concentrationKgPerM3 + 0.01 + more;
        const asked = { water, wantedKgPerM3, stockKgPerM3: wantedKgPerM3 * times, greatestKgPerM3: null };
        const dose = stockForTarget(asked);
        expect(dose.resultKgPerM3 / wantedKgPerM3).toBeCloseTo(1, 12);
        expect(dose.volumeAfterM3).toBeCloseTo(water.volumeM3 + dose.stockVolumeM3, 15);
        expect(dose.verdict).toBe('no-maximum');
      }),
    );
  });

  const water = { volumeM3: 0.0205, concentrationKgPerM3: 3e-5 };
  const asked = { water, wantedKgPerM3: 2e-4, stockKgPerM3: 0.35, greatestKgPerM3: 5e-4 };

  it('tells what comes of it, and the outpost has the last word', () => {
    const dose = stockForTarget(asked);
    expect((dose.stockVolumeM3 * 1e6).toFixed(2)).toBe('9.96');
    expect(dose.verdict).toBe('within');
    expect(stockForTarget({ ...asked, greatestKgPerM3: 1.9e-4 }).verdict).toBe('above-maximum');
    const tenTimes = resultOfStock({ ...asked, stockVolumeM3: 10 * dose.stockVolumeM3 });
    expect((tenTimes.resultKgPerM3 * 1000).toFixed(2)).toBe('1.72');
    expect(tenTimes.verdict).toBe('above-maximum');
  });

  it.each([
    { wantedKgPerM3: 2e-5 },
    { wantedKgPerM3: 0.35 },
    { wantedKgPerM3: 0.36 },
    { stockKgPerM3: -1 },
    { wantedKgPerM3: Number.NaN },
    { greatestKgPerM3: Number.NaN },
    { water: { volumeM3: -1, concentrationKgPerM3: 0 } },
  ])('refuses %j', (change) => {
    expect(() => stockForTarget({ ...asked, ...change })).toThrow(OutsideRange);
  });
});

describe('a dose of powder, and thinner water', () => {
  const water = { volumeM3: 0.2, concentrationKgPerM3: 0.01 };

  it('half of the purity takes twice the powder', () => {
    const dose = (purity: number) =>
      saltForTarget({ water, wantedKgPerM3: 0.05, purity, greatestKgPerM3: 0.06 });
    expect(dose(1)).toEqual({
      doseMassKg: expect.closeTo(0.008, 12),
      resultKgPerM3: 0.05,
      greatestKgPerM3: 0.06,
      verdict: 'within',
    });
    expect(dose(0.5).doseMassKg).toBeCloseTo(2 * dose(1).doseMassKg, 12);
    for (const purity of [0, 1.01, Number.NaN]) expect(() => dose(purity)).toThrow(OutsideRange);
    const asked = { water, wantedKgPerM3: 0.005, purity: 1, greatestKgPerM3: null };
    expect(() => saltForTarget(asked)).toThrow(OutsideRange);
  });

  it('thinner water mixes to what was wanted', () => {
    fc.assert(
      fc.property(share, share, (thin, way) => {
        const thinnerKgPerM3 = thin * 0.5;
        const full = { volumeM3: 0.1, concentrationKgPerM3: 1 };
        const wantedKgPerM3 = thinnerKgPerM3 + (0.01 + 0.99 * way) * (1 - thinnerKgPerM3);
        const volumeM3 = waterToDiluteM3({ water: full, wantedKgPerM3, thinnerKgPerM3 });
        const mixed = mixedSolution([full, { volumeM3, concentrationKgPerM3: thinnerKgPerM3 }]);
        expect(mixed.concentrationKgPerM3).toBeCloseTo(wantedKgPerM3, 12);
      }),
    );
  });

  it('water that is no thinner helps nothing', () => {
    for (const wantedKgPerM3 of [0.005, 0.004, 0.011])
      expect(() => waterToDiluteM3({ water, wantedKgPerM3, thinnerKgPerM3: 0.005 })).toThrow(OutsideRange);
  });
});

describe('the slip of ten', () => {
  it.each([
    [8.5, 85, 1],
    [8.5, 0.85, -1],
    [10, 95, 1],
    [10, 10_000, 3],
    [10, 0.012, -3],
    [10, 10, null],
    [10, 11.9, null],
    [10, 30, null],
    [10, 3, null],
    [10, 60, null],
  ])('%d needed and %d given: %j', (needed, given, power) => {
    expect(slipOfTen({ needed, given })).toBe(power);
  });

  it.each([0, -1, Number.NaN])('refuses a dose of %d', (needed) => {
    expect(() => slipOfTen({ needed, given: 1 })).toThrow(OutsideRange);
    expect(() => slipOfTen({ needed: 1, given: needed })).toThrow(OutsideRange);
  });
});
