// Gas that pushes: what it takes of the cabin and does to it, and what a compressor needs; published values are in tests/published.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type CabinPush, cabinChange } from './cabin-pressure.ts';
import { compressionWork, compressorRun, outletTemperatureK, twoStageWork } from './compressor.ts';
import { freeAir } from './free-air.ts';
import { expandedPa, expandedVolumeM3 } from './gas-expansion.ts';

const HALF_OVER = { tankPa: 151_987.5, cabinPa: 101_325, waterM3: 0.2 };

describe('free air', () => {
  it('200 L at half an atmosphere over the cabin take 300 L', () => {
    expect(freeAir(HALF_OVER).totalM3).toBeCloseTo(0.3, 12);
  });

  it('gas that has to be brought up to pressure first counts as well', () => {
    const air = freeAir({ ...HALF_OVER, ullageM3: 0.02 });
    expect(air.forUllageM3).toBeCloseTo(0.01, 12);
    expect(air.totalM3).toBeCloseTo(0.31, 12);
  });

  it('is the water itself if the tank is at cabin pressure', () => {
    expect(freeAir({ ...HALF_OVER, tankPa: 101_325 }).totalM3).toBe(0.2);
  });
});

describe('the pressure of the cabin', () => {
  const push: CabinPush = { ...HALF_OVER, cabinM3: 180, receiver: 'shell inside', gasFrom: 'cabin' };

  it('dips by 0.056 kPa with containers inside, and is back once the tank is vented', () => {
    const change = cabinChange(push);
    expect(change.whilePushingPa / 1000).toBeCloseTo(-0.0563, 4);
    expect(change.afterVentingPa).toBe(0);
    expect(change.allGasBackPa / 1000).toBeCloseTo(0.1126, 4);
  });

  it('dips by 0.169 kPa with the receiver outside, and stays 0.113 kPa low after venting', () => {
    const change = cabinChange({ ...push, receiver: 'outside' });
    expect(change.whilePushingPa / 1000).toBeCloseTo(-0.1689, 4);
    expect(change.afterVentingPa / 1000).toBeCloseTo(-0.1125, 4);
    expect(change.allGasBackPa).toBe(0);
  });

  it('rises by 0.113 kPa while a vehicle pushes with gas of its own', () => {
    expect(cabinChange({ ...push, gasFrom: 'vehicle' }).whilePushingPa / 1000).toBeCloseTo(0.1126, 4);
    expect(cabinChange({ ...push, gasFrom: 'vehicle', receiver: 'outside' }).whilePushingPa).toBe(0);
  });

  const anyPush = fc
    .record({
      cabinPa: fc.double({ min: 5e4, max: 1.1e5, noNaN: true }),
      over: fc.double({ min: 0, max: 2e5, noNaN: true }),
      waterM3: fc.double({ min: 0.001, max: 0.4, noNaN: true }),
      cabinM3: fc.double({ min: 5, max: 1000, noNaN: true }),
    })
    .map(({ over, ...rest }) => ({ ...rest, tankPa: rest.cabinPa + over }));

  it('follows the closed form of each case', () => {
    fc.assert(
      fc.property(anyPush, (any) => {
        const { cabinPa: p, tankPa: pt, waterM3: v, cabinM3: cabin } = any;
        const of = (receiver: CabinPush['receiver'], gasFrom: CabinPush['gasFrom'] = 'cabin') =>
          cabinChange({ ...any, receiver, gasFrom });
        const near = (value: number, wanted: number) => expect(Math.abs(value - wanted)).toBeLessThan(1e-7);
        near(of('shell inside').whilePushingPa, (-(pt - p) * v) / cabin);
        near(of('bag inside').whilePushingPa, (-(pt - p) * v) / (cabin - v));
        near(of('outside').whilePushingPa, (-pt * v) / cabin);
        for (const inside of ['shell inside', 'bag inside'] as const) near(of(inside).afterVentingPa, 0);
        near(of('outside').afterVentingPa, (-p * v) / (cabin + v));
        near(of('shell inside').allGasBackPa, (p * v) / cabin);
        near(of('bag inside').allGasBackPa, (p * v) / (cabin - v));
        near(of('shell inside', 'vehicle').whilePushingPa, (p * v) / cabin);
        near(of('bag inside', 'vehicle').whilePushingPa, (p * v) / (cabin - v));
      }),
      { seed: 71 },
    );
  });

  it('moves nothing when water is only moved inside the hull at the cabin pressure', () => {
    const change = cabinChange({ ...push, tankPa: push.cabinPa });
    expect(change.whilePushingPa).toBe(0);
    expect(change.afterVentingPa).toBe(0);
  });
});

describe('a closed gas that grows', () => {
  it('pressure and volume are the inverse of each other, and 1.4 falls steeper than 1', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 1.4, noNaN: true }),
        fc.double({ min: 1.01, max: 10, noNaN: true }),
        (exponent, growth) => {
          const gas = { pressurePa: 3e5, gasM3: 0.05, exponent };
          const pressurePa = expandedPa(gas, 0.05 * growth);
          expect(expandedVolumeM3(gas, pressurePa) / (0.05 * growth)).toBeCloseTo(1, 12);
          expect(pressurePa).toBeLessThanOrEqual(3e5 / growth + 1e-6);
        },
      ),
      { seed: 72 },
    );
  });
});

describe('a compressor', () => {
  it('needs 12.3 kJ at the least for 300 L of air at half an atmosphere over', () => {
    const run = compressorRun({
      freeAirM3: 0.3,
      freeFlowM3PerS: 5e-4,
      inletPa: 101_325,
      outletPa: 151_987.5,
      exponent: 1.3,
      inletK: 295.15,
      efficiency: 0.4,
    });
    expect(run.isothermalJ).toBeCloseTo(12_325.1, 1);
    expect(run.seconds).toBeCloseTo(600, 9);
    expect(run.workJ).toBeGreaterThan(run.isothermalJ);
    expect(run.drawnJ).toBeCloseTo(run.workJ / 0.4, 9);
    expect(run.meanPowerW).toBeCloseTo(run.drawnJ / 600, 9);
    expect(run.outletK).toBeCloseTo(295.15 * 1.5 ** (0.3 / 1.3), 9);
  });

  it('needs more the steeper the exponent, less in two stages, and nothing for no rise', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 1.6, noNaN: true }),
        fc.double({ min: 1.1, max: 12, noNaN: true }),
        (exponent, ratio) => {
          const gas = { inletPa: 1e5, outletPa: ratio * 1e5, exponent };
          expect(compressionWork({ ...gas, exponent: exponent + 0.05 })).toBeGreaterThan(
            compressionWork(gas),
          );
          expect(twoStageWork(gas)).toBeLessThanOrEqual(compressionWork(gas) * (1 + 1e-14));
          expect(outletTemperatureK(gas, 300)).toBeGreaterThanOrEqual(300);
        },
      ),
      { seed: 73 },
    );
    expect(compressionWork({ inletPa: 1e5, outletPa: 1e5, exponent: 1.3 })).toBe(0);
  });

  it('goes over into constant temperature without a step', () => {
    const gas = { inletPa: 1e5, outletPa: 9e5 };
    const still = compressionWork({ ...gas, exponent: 1 });
    expect(compressionWork({ ...gas, exponent: 1 + 1e-12 }) / still).toBeCloseTo(1, 11);
    expect(still).toBeCloseTo(Math.log(9), 14);
  });
});

const run = {
  freeAirM3: 0.3,
  freeFlowM3PerS: 1e-4,
  inletPa: 1e5,
  outletPa: 2e5,
  exponent: 1.3,
  inletK: 295,
  efficiency: 0.5,
};
const cabin: CabinPush = { ...HALF_OVER, cabinM3: 180, receiver: 'outside', gasFrom: 'cabin' };

it.each<[string, () => unknown]>([
  ['a tank below the cabin', () => freeAir({ ...HALF_OVER, tankPa: 1e5 })],
  ['water below 0', () => freeAir({ ...HALF_OVER, waterM3: -1 })],
  ['gas below 0', () => freeAir({ ...HALF_OVER, ullageM3: -1 })],
  ['a cabin without pressure', () => cabinChange({ ...cabin, cabinPa: 0 })],
  ['a tank without a number', () => cabinChange({ ...cabin, tankPa: Number.NaN })],
  ['a cabin smaller than the water', () => cabinChange({ ...cabin, cabinM3: 0.1 })],
  ['gas without a volume', () => expandedPa({ pressurePa: 1e5, gasM3: 0, exponent: 1 }, 1)],
  ['no volume to grow to', () => expandedPa({ pressurePa: 1e5, gasM3: 1, exponent: 1 }, 0)],
  ['an exponent below 1', () => expandedVolumeM3({ pressurePa: 1e5, gasM3: 1, exponent: 0.9 }, 5e4)],
  [
    'an exponent without a number',
    () => expandedVolumeM3({ pressurePa: 1e5, gasM3: 1, exponent: Number.NaN }, 5e4),
  ],
  ['a compressor that lets down', () => compressionWork({ inletPa: 2e5, outletPa: 1e5, exponent: 1.3 })],
  ['an exponent above 5/3', () => compressionWork({ inletPa: 1e5, outletPa: 2e5, exponent: 1.7 })],
  ['an inlet at 0 K', () => outletTemperatureK({ inletPa: 1e5, outletPa: 2e5, exponent: 1.3 }, 0)],
  ['two stages without a pressure', () => twoStageWork({ inletPa: -1, outletPa: 2e5, exponent: 1.3 })],
  ['no air', () => compressorRun({ ...run, freeAirM3: 0 })],
  ['no flow of air', () => compressorRun({ ...run, freeFlowM3PerS: 0 })],
  ['an efficiency of 0', () => compressorRun({ ...run, efficiency: 0 })],
  ['an efficiency above 1', () => compressorRun({ ...run, efficiency: 1.01 })],
])('%s is refused', (_name, work) => {
  expect(work).toThrow(RangeError);
});
