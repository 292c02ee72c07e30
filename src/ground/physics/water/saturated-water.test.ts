// Saturated water and viscosity: relations, agreement of the two saturation lines, ranges.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { OutsideRange } from '../outside-range.ts';
import {
  latentHeatJPerKg,
  saturatedAuxiliaryJPerKg,
  saturatedPressurePa,
  saturatedSlopePaPerK,
  saturatedSteamDensityKgPerM3,
  saturatedSteamEnthalpyJPerKg,
  saturatedWaterDensityKgPerM3,
  saturatedWaterEnthalpyJPerKg,
} from './saturated-water.ts';
import { saturationPressurePa, saturationTemperatureK } from './saturation.ts';
import { ambientViscosityPaS, liquidViscosityPaS, viscosityPaS } from './viscosity.ts';

const onLine = {
  latentHeatJPerKg,
  saturatedAuxiliaryJPerKg,
  saturatedPressurePa,
  saturatedSlopePaPerK,
  saturatedSteamDensityKgPerM3,
  saturatedSteamEnthalpyJPerKg,
  saturatedWaterDensityKgPerM3,
  saturatedWaterEnthalpyJPerKg,
};

describe('the line on which water boils', () => {
  it('pressure and temperature are each other’s inverse', () => {
    fc.assert(
      fc.property(fc.double({ min: 273.16, max: 647, noNaN: true }), (T) => {
        expect(Math.abs(saturationTemperatureK(saturationPressurePa(T)) / T - 1)).toBeLessThan(2e-11);
      }),
    );
  });

  it('rises always, and its two equations agree to 0.03 %', () => {
    for (let T = 273.16; T < 640; T += 2.5) {
      expect(saturationPressurePa(T + 2.5)).toBeGreaterThan(saturationPressurePa(T));
      expect(Math.abs(saturatedPressurePa(T) / saturationPressurePa(T) - 1)).toBeLessThan(3e-4);
    }
  });

  it('its slope is the slope of its pressure', () => {
    for (let T = 280; T < 640; T += 5) {
      const slope = (saturatedPressurePa(T + 0.01) - saturatedPressurePa(T - 0.01)) / 0.02;
      expect(slope / saturatedSlopePaPerK(T)).toBeCloseTo(1, 6);
    }
  });

  it('the latent heat is the difference of the enthalpies, falls always, and is 0 at the critical point', () => {
    for (let T = 273.16; T < 646; T += 4) {
      const difference = saturatedSteamEnthalpyJPerKg(T) - saturatedWaterEnthalpyJPerKg(T);
      expect(latentHeatJPerKg(T) / difference).toBeCloseTo(1, 9);
      expect(latentHeatJPerKg(T + 1)).toBeLessThan(latentHeatJPerKg(T));
    }
    expect(Math.abs(latentHeatJPerKg(647.096))).toBeLessThan(1e-6);
    expect(saturatedWaterDensityKgPerM3(647.096)).toBe(322);
    expect(saturatedSteamDensityKgPerM3(647.096)).toBe(322);
  });

  it.each(Object.entries(onLine))('%s is refused off the line', (_, of) => {
    for (const T of [273.15, 647.1, Number.NaN]) expect(() => of(T)).toThrow(OutsideRange);
  });

  it.each([611, 22.07e6, Number.NaN])('no boiling temperature at %d Pa', (pressurePa) => {
    expect(() => saturationTemperatureK(pressurePa)).toThrow(OutsideRange);
  });
});

describe('viscosity', () => {
  it('of the liquid falls as it warms, and its two equations agree to 0.2 % at 0.1 MPa', () => {
    for (let T = 273.16; T < 372; T += 1) {
      expect(liquidViscosityPaS(T + 0.5, 1e5)).toBeLessThan(liquidViscosityPaS(T, 1e5));
      expect(Math.abs(ambientViscosityPaS(T) / liquidViscosityPaS(T, 1e5) - 1)).toBeLessThan(2e-3);
    }
  });

  it('of thin steam depends on temperature alone', () => {
    expect(viscosityPaS(400, 0)).toBeGreaterThan(viscosityPaS(350, 0));
    expect(viscosityPaS(400, 1e-9) / viscosityPaS(400, 0)).toBeCloseTo(1, 9);
  });

  it.each([
    [273.14, 1000],
    [1173.2, 1],
    [300, -1],
    [300, 1200.1],
    [Number.NaN, 1000],
    [300, Number.NaN],
  ])('is not known at %d K and %d kg/m³', (T, density) => {
    expect(() => viscosityPaS(T, density)).toThrow(OutsideRange);
  });

  it.each([253.1, 383.2, Number.NaN])('its short form is not known at %d K', (T) => {
    expect(() => ambientViscosityPaS(T)).toThrow(OutsideRange);
  });
});
