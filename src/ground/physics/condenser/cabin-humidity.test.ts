// The humidity of a cabin and the expected condensate: exact step against small steps, kept mass, limits, sums of doubts.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type CabinHumidity, cabinHumidityAfter, exerciseSweatKg } from './cabin-humidity.ts';
import { condensateShortfall, expectedCondensate, shortfallSum } from './expected-condensate.ts';

/** 180 m³ at 22 °C; four people; a coil that meets 0.025 kg/s of air. */
const cabin: CabinHumidity = {
  dryGasKg: 212,
  humidityRatio: 0.0079,
  gainKgPerS: 7.2 / 86_400,
  coilFlowKgPerS: 0.025,
  coilRatio: 0.0058,
  leakKgPerS: 1e-5,
};

/** The same balance by many small steps. */
function bySteps(start: CabinHumidity, seconds: number, steps = 200_000) {
  let [ratio, collected, leaked] = [start.humidityRatio, 0, 0];
  const step = seconds / steps;
  for (let count = 0; count < steps; count += 1) {
    const met = start.coilFlowKgPerS * Math.max(0, ratio - start.coilRatio);
    const lost = start.leakKgPerS * ratio;
    ratio += (step * (start.gainKgPerS - met - lost)) / start.dryGasKg;
    collected += step * met;
    leaked += step * lost;
  }
  return { ratio, collected, leaked };
}

describe('the exact step', () => {
  it.each([
    ['a wet coil', cabin],
    ['a coil that falls dry', { ...cabin, gainKgPerS: 0, leakKgPerS: 0.02 }],
    ['a coil that gets wet', { ...cabin, humidityRatio: 0.004 }],
    ['a coil that gets wet, no leak', { ...cabin, humidityRatio: 0.004, leakKgPerS: 0 }],
    ['no coil at all', { ...cabin, coilFlowKgPerS: 0, leakKgPerS: 0 }],
  ])('agrees with small steps: %s', (_, start) => {
    const exact = cabinHumidityAfter(start, 86_400);
    const small = bySteps(start, 86_400);
    expect(Math.abs(exact.humidityRatio / small.ratio - 1)).toBeLessThan(3e-4);
    expect(exact.condensateKg).toBeCloseTo(small.collected, 3);
    expect(exact.leakedKg).toBeCloseTo(small.leaked, 3);
  });

  it('keeps the water: what came in is in the air, collected or leaked', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.001, max: 0.02, noNaN: true }),
        fc.double({ min: 0, max: 2e-4, noNaN: true }),
        fc.double({ min: 0, max: 0.1, noNaN: true }),
        fc.double({ min: 0, max: 0.01, noNaN: true }),
        fc.double({ min: 0, max: 2e5, noNaN: true }),
        (humidityRatio, gainKgPerS, coilFlowKgPerS, leakKgPerS, seconds) => {
          const start = { ...cabin, humidityRatio, gainKgPerS, coilFlowKgPerS, leakKgPerS };
          const end = cabinHumidityAfter(start, seconds);
          const left = cabin.dryGasKg * (humidityRatio - end.humidityRatio) + gainKgPerS * seconds;
          expect(Math.abs(left - end.condensateKg - end.leakedKg)).toBeLessThan(
            1e-9 * (1 + gainKgPerS * seconds),
          );
        },
      ),
    );
  });

  it('two halves are the whole', () => {
    for (const start of [
      cabin,
      { ...cabin, humidityRatio: 0.004 },
      { ...cabin, gainKgPerS: 0, leakKgPerS: 0.02 },
    ]) {
      const whole = cabinHumidityAfter(start, 7200);
      const half = cabinHumidityAfter(start, 3600);
      const rest = cabinHumidityAfter({ ...start, humidityRatio: half.humidityRatio }, 3600);
      expect(rest.humidityRatio).toBeCloseTo(whole.humidityRatio, 12);
      expect(half.condensateKg + rest.condensateKg).toBeCloseTo(whole.condensateKg, 10);
    }
  });

  it('comes to rest where what comes in goes out, within a few time constants', () => {
    const end = cabinHumidityAfter(cabin, 30 * 86_400);
    expect(end.humidityRatio).toBeCloseTo(end.restingRatio, 12);
    expect(end.timeConstantS).toBeCloseTo(212 / 0.02501, 6);
    expect(
      cabinHumidityAfter({ ...cabin, humidityRatio: end.restingRatio }, 86_400).condensateKg,
    ).toBeCloseTo(7.2 - 86_400 * 1e-5 * end.restingRatio, 9);
  });

  it('a condenser that fails shows at once in the humidity: the air is almost no buffer', () => {
    const hour = cabinHumidityAfter({ ...cabin, coilFlowKgPerS: 0, leakKgPerS: 0 }, 3600);
    expect(hour.humidityRatio - cabin.humidityRatio).toBeCloseTo(7.2 / 24 / 212, 12);
    expect(hour.restingRatio).toBe(Number.POSITIVE_INFINITY);
  });

  it('does nothing in no time', () => {
    expect(cabinHumidityAfter(cabin, 0)).toMatchObject({
      humidityRatio: 0.0079,
      condensateKg: 0,
      leakedKg: 0,
    });
  });

  it.each([
    [{ dryGasKg: 0 }, 1],
    [{ humidityRatio: -1 }, 1],
    [{ coilFlowKgPerS: Number.NaN }, 1],
    [{ gainKgPerS: Number.POSITIVE_INFINITY }, 1],
    [{}, -1],
    [{}, Number.NaN],
    [{ gainKgPerS: -1e-3 }, 1e5],
  ])('is refused with %j over %d s', (change, seconds) => {
    expect(() => cabinHumidityAfter({ ...cabin, ...change }, seconds)).toThrow(RangeError);
  });
});

describe('exercise', () => {
  it('an hour of hard work sweats about 0.4 kg; rest sweats nothing', () => {
    expect(exerciseSweatKg({ metabolicW: 500, efficiency: 0.2, dryLossW: 120, seconds: 3600 })).toBeCloseTo(
      0.417,
      3,
    );
    expect(exerciseSweatKg({ metabolicW: 100, efficiency: 0, dryLossW: 120, seconds: 3600 })).toBe(0);
  });

  it.each([
    { metabolicW: -1, efficiency: 0, dryLossW: 0, seconds: 1 },
    { metabolicW: 1, efficiency: 0.4, dryLossW: 0, seconds: 1 },
    { metabolicW: 1, efficiency: 0, dryLossW: Number.NaN, seconds: 1 },
  ])('is refused with %j', (exercise) => {
    expect(() => exerciseSweatKg(exercise)).toThrow(RangeError);
  });
});

describe('expectation and shortfall', () => {
  it('parts add up, doubts in quadrature', () => {
    const expected = expectedCondensate([
      { name: 'people', kg: 6.8, u: 0.3 },
      { name: 'air', kg: -0.1, u: 0.4 },
    ]);
    expect(expected.kg).toBeCloseTo(6.7, 12);
    expect(expected.u).toBeCloseTo(0.5, 12);
    expect(expectedCondensate([])).toMatchObject({ kg: 0, u: 0 });
  });

  it('nothing is missing where 0 lies within the ±', () => {
    expect(condensateShortfall({ kg: 6.8, u: 0.3 }, { kg: 6.4, u: 0.05 }).holdsZero).toBe(true);
    expect(condensateShortfall({ kg: 6.8, u: 0.3 }, { kg: 5.1, u: 0.05 }).holdsZero).toBe(false);
    expect(condensateShortfall({ kg: 6, u: 0.3 }, { kg: 7, u: 0.4 })).toMatchObject({
      kg: -1,
      u: 0.5,
      u95: 1,
    });
  });

  it('what is shared adds up in full', () => {
    const days = [1.7, 3.4].map((kg) => ({ kg, u: 0.5, sharedU: 0.3 }));
    expect(shortfallSum(days).u).toBeCloseTo(Math.sqrt(2 * 0.16 + 0.36), 12);
    expect(shortfallSum(days).kg).toBeCloseTo(5.1, 12);
    expect(shortfallSum([]).u).toBe(0);
  });

  it.each([
    () => expectedCondensate([{ name: 'people', kg: Number.NaN, u: 0 }]),
    () => expectedCondensate([{ name: 'people', kg: 1, u: -1 }]),
    () => condensateShortfall({ kg: 1, u: -1 }, { kg: 1, u: 0 }),
    () => condensateShortfall({ kg: Number.NaN, u: 1 }, { kg: 1, u: 0 }),
    () => shortfallSum([{ kg: 1, u: 0.1, sharedU: 0.2 }]),
    () => shortfallSum([{ kg: Number.NaN, u: 0.1, sharedU: 0 }]),
  ])('figures that are none are refused (%#)', (run) => {
    expect(run).toThrow(RangeError);
  });
});
