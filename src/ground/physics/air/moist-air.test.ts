// Moist air: inverses, limits, order of the temperatures, the effect of the gas, ranges; published values are in tests/published.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { OutsideRange } from '../outside-range.ts';
import { airState, boilingPointC } from './air-state.ts';
import { type CabinAir, cabinAir, enhancementFactor, handbookAir } from './cabin-air.ts';
import { DRY_AIR, oxygenNitrogen } from './dry-gas.ts';
import { hylandWexlerPa } from './hyland-wexler.ts';
import {
  dewPointC,
  humidityRatio,
  humidityRatioOfVapour,
  moistEnthalpyJPerKg,
  moistVolumeM3PerKg,
  relativeHumidity,
  saturatedVapourPa,
  temperatureOfEnthalpyC,
  vapourOfHumidityRatio,
  vapourPressurePa,
} from './moist-air.ts';
import { frostPointK, iceVapourPressurePa } from './saturation-over-ice.ts';
import { standardPressurePa } from './standard-pressure.ts';
import { vapourDensityKgPerM3 } from './vapour-density.ts';
import { vapourSaturationC, vapourSaturationPa } from './vapour-saturation.ts';
import { wallDew } from './wall-dew.ts';
import { dewPointOfRatioC, humidityRatioOfWetBulb, wetBulbC } from './wet-bulb.ts';

const pressurePa = fc.double({ min: 50_000, max: 110_000, noNaN: true });
const share = fc.double({ min: 0.05, max: 1, noNaN: true });
const anyAir = fc
  .tuple(pressurePa, fc.option(fc.double({ min: 0.15, max: 0.6, noNaN: true })), fc.boolean(), fc.boolean())
  .map(([pressure, oxygen, enhanced, asHandbook]) =>
    asHandbook
      ? handbookAir(pressure)
      : cabinAir({ pressurePa: pressure, enhanced, ...(oxygen !== null && { oxygenShare: oxygen }) }),
  );

describe('saturation', () => {
  it('rises always, through the ice point too, and is whole there', () => {
    for (let t = -49; t < 100; t += 0.25)
      expect(vapourSaturationPa(t + 0.25)).toBeGreaterThan(vapourSaturationPa(t));
    expect(vapourSaturationPa(0.00999) / vapourSaturationPa(0.01001)).toBeCloseTo(1, 5);
    expect(vapourSaturationPa(0.01)).toBeCloseTo(611.657, 2);
  });

  it('and its temperature are each other’s inverse', () => {
    fc.assert(
      fc.property(fc.double({ min: -49.9, max: 100, noNaN: true }), (t) => {
        expect(vapourSaturationC(vapourSaturationPa(t))).toBeCloseTo(t, 8);
      }),
    );
    for (const K of [223.2, 230, 250, 273.1]) expect(frostPointK(iceVapourPressurePa(K))).toBeCloseTo(K, 9);
  });

  it('lies within 0.03 % of Hyland and Wexler over ice and over water', () => {
    for (let t = -20; t <= 100; t += 1)
      expect(Math.abs(hylandWexlerPa(t) / vapourSaturationPa(t) - 1)).toBeLessThan(3e-4);
  });

  it('over ice at 230 K is that of the release', () => {
    expect(iceVapourPressurePa(230)).toBeCloseTo(8.94735, 5);
  });
});

describe('moist air of any cabin', () => {
  it('vapour, humidity ratio and relative humidity come back', () => {
    fc.assert(
      fc.property(anyAir, fc.double({ min: -19.9, max: 59.9, noNaN: true }), share, (air, t, rh) => {
        const vapour = vapourPressurePa(air, t, rh);
        const ratio = humidityRatioOfVapour(air, vapour);
        expect(vapourOfHumidityRatio(air, ratio) / vapour).toBeCloseTo(1, 12);
        expect(relativeHumidity(air, t, ratio)).toBeCloseTo(rh, 12);
        expect(temperatureOfEnthalpyC(air, moistEnthalpyJPerKg(air, t, ratio), ratio)).toBeCloseTo(t, 9);
      }),
    );
  });

  it('the dew point is where its own vapour saturates', () => {
    fc.assert(
      fc.property(anyAir, fc.double({ min: -10, max: 60, noNaN: true }), share, (air, t, rh) => {
        const vapour = vapourPressurePa(air, t, rh);
        const dew = dewPointC(air, vapour);
        // The handbook's line has a step of 0.005 % where ice turns to water.
        if (dew >= -20) expect(Math.abs(saturatedVapourPa(air, dew) / vapour - 1)).toBeLessThan(1e-4);
        if (dew > 0.1) expect(saturatedVapourPa(air, dew) / vapour).toBeCloseTo(1, 9);
      }),
    );
  });

  it('dew point ≤ wet bulb ≤ temperature, and all three meet in saturated air', () => {
    fc.assert(
      fc.property(anyAir, fc.double({ min: 5, max: 60, noNaN: true }), share, (air, t, rh) => {
        const ratio = humidityRatio(air, t, rh);
        const wet = wetBulbC(air, t, ratio);
        expect(wet).toBeLessThanOrEqual(t + 1e-9);
        expect(wet).toBeGreaterThan(dewPointOfRatioC(air, ratio) - 0.02);
        expect(humidityRatioOfWetBulb(air, { dryC: t, wetC: wet })).toBeCloseTo(ratio, 9);
        expect(wetBulbC(air, t, humidityRatio(air, t, 1))).toBeCloseTo(t, 6);
      }),
    );
  });

  it('thinner air carries more water to the kilogram, and needs more room', () => {
    const [thin, dense] = [cabinAir({ pressurePa: 70_000 }), cabinAir({ pressurePa: 101_325 })];
    expect(humidityRatio(thin, 22, 0.5) / humidityRatio(dense, 22, 0.5)).toBeCloseTo(1.45, 1);
    expect(moistVolumeM3PerKg(thin, 22, 0.008) / moistVolumeM3PerKg(dense, 22, 0.008)).toBeCloseTo(
      101_325 / 70_000,
      9,
    );
  });

  it('the enhancement factor can be switched off, and matters by half a per cent', () => {
    const on = humidityRatio(cabinAir({ pressurePa: 101_325 }), 25, 1);
    const off = humidityRatio(cabinAir({ pressurePa: 101_325, enhanced: false }), 25, 1);
    expect(on / off - 1).toBeGreaterThan(0.004);
    expect(on / off - 1).toBeLessThan(0.005);
    expect(enhancementFactor(101_325)).toBeCloseTo(1.0042, 4);
  });
});

describe('the dry gas', () => {
  it('with a third of oxygen is heavier than air, and carries less water to the kilogram', () => {
    const rich = oxygenNitrogen(0.34);
    expect(rich.molarMassKgPerMol).toBeCloseTo(0.02937, 5);
    expect(rich.vapourRatio).toBeCloseTo(0.6134, 4);
    expect(DRY_AIR.vapourRatio).toBeCloseTo(0.621945, 6);
    expect(DRY_AIR.gasConstantJPerKgK).toBeCloseTo(287.042, 2);
  });

  it('has the heat capacities of its parts at the ends', () => {
    expect(oxygenNitrogen(1).heatCapacityJPerKgK).toBeCloseTo(918.1, 1);
    expect(oxygenNitrogen(0).heatCapacityJPerKgK).toBeCloseTo(1039.6, 1);
  });

  it.each([-0.01, 1.01, Number.NaN])('has no oxygen share of %d', (oxygenShare) => {
    expect(() => oxygenNitrogen(oxygenShare)).toThrow(OutsideRange);
  });
});

describe('one state of the air', () => {
  it('carries in a cubic metre what the account reckons with, but for the enhancement', () => {
    const state = airState(cabinAir({ pressurePa: 101_200, enhanced: false }), {
      temperatureC: 22,
      relativeHumidity: 0.48,
    });
    expect(
      state.vapourKgPerM3 / vapourDensityKgPerM3({ relativeHumidity: 0.48, temperatureC: 22 }),
    ).toBeCloseTo(1, 4);
  });

  it.each([
    [0.45, 9.5],
    [0.5, 11.1],
    [0.62, 14.4],
  ])('at 22 °C and %d the dew point is %d °C', (relativeHumidity, dewC) => {
    // Our own arithmetic with another vapour formula, three digits.
    expect(
      airState(cabinAir({ pressurePa: 101_325 }), { temperatureC: 22, relativeHumidity }).dewPointC,
    ).toBeCloseTo(dewC, 1);
  });

  it('very cold air has no wet bulb that is known here', () => {
    const air = cabinAir({ pressurePa: 101_325 });
    expect(airState(air, { temperatureC: -18, relativeHumidity: 0.5 }).wetBulbC).toBeNull();
    expect(airState(air, { temperatureC: 0, relativeHumidity: 0.5 }).wetBulbC).toBeLessThan(0);
  });

  it('water boils colder in thin air', () => {
    expect(boilingPointC(70_000)).toBeCloseTo(89.9, 1);
    expect(boilingPointC(55_000)).toBeCloseTo(83.7, 1);
  });
});

describe('a wall', () => {
  it.each([
    [9, 'sweats'],
    [10.55, 'sweats'],
    [10.7, 'near'],
    [11.5, 'near'],
    [11.7, 'dry'],
  ] as const)('at %d °C beside a dew point of 11.1 °C %s', (wallC, verdict) => {
    expect(wallDew({ wallC, dewPointC: 11.1 })).toMatchObject({ verdict, marginK: 0.5 });
  });

  it.each([
    [Number.NaN, 0.5],
    [10, -1],
    [10, Number.NaN],
  ])('at %d °C with a margin of %d has no verdict', (wallC, marginK) => {
    expect(() => wallDew({ wallC, dewPointC: 11.1, marginK })).toThrow(RangeError);
  });
});

describe('ranges', () => {
  const air: CabinAir = cabinAir({ pressurePa: 101_325 });
  it.each([
    ['too cold', () => humidityRatio(air, -20.1, 0.5)],
    ['too hot', () => humidityRatio(air, 60.1, 0.5)],
    ['no temperature', () => humidityRatio(air, Number.NaN, 0.5)],
    ['above saturation', () => humidityRatio(air, 22, 1.01)],
    ['no humidity', () => humidityRatio(air, 22, Number.NaN)],
    ['below nothing', () => vapourOfHumidityRatio(air, -1e-9)],
    ['vapour alone', () => humidityRatioOfVapour(air, 101_325)],
    ['vacuum', () => cabinAir({ pressurePa: 49_999 })],
    ['no pressure', () => cabinAir({ pressurePa: Number.NaN })],
    ['too deep', () => handbookAir(110_001)],
    ['bone dry has no dew point', () => dewPointC(air, 0)],
    ['a wet bulb above the dry one', () => humidityRatioOfWetBulb(air, { dryC: 20, wetC: 20.1 })],
    ['a wet bulb below that of dry air', () => humidityRatioOfWetBulb(air, { dryC: 40, wetC: 5 })],
    ['more than saturated', () => wetBulbC(air, 20, 0.02)],
    ['no enthalpy', () => temperatureOfEnthalpyC(air, Number.NaN, 0.01)],
    ['ice above its triple point', () => iceVapourPressurePa(273.17)],
    ['frost of no pressure', () => frostPointK(3.9)],
    ['the handbook beyond itself', () => hylandWexlerPa(200.1)],
    ['above the air', () => standardPressurePa(11_001)],
  ])('%s is refused', (_, run) => {
    expect(run).toThrow(OutsideRange);
  });
});
