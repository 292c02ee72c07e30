// Figures that only a caution may use: stored energy, stress in walls, shut-in water.
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { storedEnergyJ } from './stored-energy.ts';
import { trappedWaterRisePa } from './trapped-water.ts';
import { thickWallHoopPa, thinWallStress } from './wall-stress.ts';

it('210 L at 152 kPa hold 8.7 kJ, and nothing at the pressure around', () => {
  expect(storedEnergyJ({ pressurePa: 152e3, aroundPa: 101_325, gasM3: 0.21 }) / 1000).toBeCloseTo(8.73, 2);
  expect(storedEnergyJ({ pressurePa: 101_325, aroundPa: 101_325, gasM3: 0.21 })).toBe(0);
});

it('stored energy grows with pressure and volume', () => {
  fc.assert(
    fc.property(fc.double({ min: 1.01e5, max: 1e7, noNaN: true }), (pressurePa) => {
      const gas = { pressurePa, aroundPa: 1e5, gasM3: 0.1 };
      expect(storedEnergyJ({ ...gas, pressurePa: pressurePa * 1.1 })).toBeGreaterThan(storedEnergyJ(gas));
      expect(storedEnergyJ({ ...gas, gasM3: 0.2 })).toBeCloseTo(2 * storedEnergyJ(gas), 5);
    }),
  );
});

it('a sphere carries half of what a cylinder does around, and as much as it does along', () => {
  const { hoopPa, axialPa, spherePa } = thinWallStress({ gaugePa: 1e5, radiusM: 0.2, wallM: 0.002 });
  expect(hoopPa).toBeCloseTo(1e7, 6);
  expect(axialPa).toBe(hoopPa / 2);
  expect(spherePa).toBe(axialPa);
});

it('the thin form with the mean radius is close to the thick one, and closer the thinner the wall', () => {
  fc.assert(
    fc.property(fc.double({ min: 0.001, max: 0.12, noNaN: true }), (share) => {
      const thick = thickWallHoopPa({ gaugePa: 1, innerM: 1, outerM: 1 + share });
      const thin = thinWallStress({ gaugePa: 1, radiusM: 1 + share / 2, wallM: share }).hoopPa;
      expect(thin).toBeLessThan(thick);
      expect(thick / thin - 1).toBeLessThan(share * share);
    }),
  );
});

it('shut-in water rises by more than half a megapascal for each kelvin, in proportion', () => {
  expect(trappedWaterRisePa(1) / 1e6).toBeCloseTo(0.578, 3);
  expect(trappedWaterRisePa(3)).toBeCloseTo(3 * trappedWaterRisePa(1), 6);
  expect(trappedWaterRisePa(0)).toBe(0);
});

const gas = { pressurePa: 2e5, aroundPa: 1e5, gasM3: 0.1 };
const wall = { gaugePa: 1, radiusM: 1, wallM: 0.01 };

it.each<[string, () => unknown]>([
  ['gas below what is around', () => storedEnergyJ({ ...gas, pressurePa: 5e4 })],
  ['a vacuum around, in which the formula has no end', () => storedEnergyJ({ ...gas, aroundPa: 0 })],
  ['gas without a number', () => storedEnergyJ({ ...gas, gasM3: Number.NaN })],
  ['a wall thicker than an eighth of the radius', () => thinWallStress({ ...wall, wallM: 0.126 })],
  ['no wall', () => thinWallStress({ ...wall, wallM: 0 })],
  ['no radius', () => thinWallStress({ ...wall, radiusM: 0 })],
  ['a pressure from outside', () => thinWallStress({ ...wall, gaugePa: -1 })],
  ['radii turned round', () => thickWallHoopPa({ gaugePa: 1, innerM: 1.1, outerM: 1 })],
  ['radii without a number', () => thickWallHoopPa({ gaugePa: 1, innerM: Number.NaN, outerM: 1 })],
  ['water that cools', () => trappedWaterRisePa(-1)],
  ['water that warms out of the range', () => trappedWaterRisePa(11)],
  ['water without a number', () => trappedWaterRisePa(Number.NaN)],
])('%s is refused', (_name, work) => {
  expect(work).toThrow(RangeError);
});
