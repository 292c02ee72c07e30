// Heating, mixing and boiling: inverses, limits, what is never reached and what is refused; published values are in tests/published.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { OutsideRange } from '../outside-range.ts';
import { boilingMargin, plainEnthalpy, waterEnthalpyAt } from './enthalpy.ts';
import {
  type Heater,
  heating,
  heatToWarmJ,
  standbyLossW,
  temperatureAfterC,
  type Warming,
} from './heating.ts';
import { mixedTemperatureC, thermalGrowth } from './mixed-temperature.ts';

const enthalpy = waterEnthalpyAt(101_325);
const asked: Warming & Heater = {
  massKg: 2,
  fromC: 20,
  toC: 80,
  enthalpy,
  vesselJPerK: 400,
  powerW: 750,
  efficiency: 0.85,
  lossWPerK: 1.5,
  aroundC: 22,
};
const celsius = fc.double({ min: 1, max: 95, noNaN: true });

describe('heat', () => {
  it('adds up over steps of the way', () => {
    fc.assert(
      fc.property(celsius, celsius, celsius, (a, b, c) => {
        const [fromC = 0, middleC = 0, toC = 0] = [a, b, c].sort((x, y) => x - y);
        const step = (from: number, to: number) => heatToWarmJ({ ...asked, fromC: from, toC: to });
        expect(step(fromC, middleC) + step(middleC, toC)).toBeCloseTo(step(fromC, toC), 5);
      }),
    );
  });

  it('a stroke of 25 mL from 20 to 75 °C takes 5.74 kJ, 11.5 s at 500 W', () => {
    const stroke = { ...asked, massKg: 0.025 * 0.9982, toC: 75, vesselJPerK: 0 };
    expect((heatToWarmJ(stroke) / 1000).toFixed(2)).toBe('5.74');
    const { timeS } = heating({ ...stroke, powerW: 500, efficiency: 1, lossWPerK: 0 });
    expect(timeS?.toFixed(1)).toBe('11.5');
  });

  it('two kilograms from 20 to 80 °C take 502 kJ and 13 minutes at 750 W, of which 85 % arrive', () => {
    const { heatJ, timeS, electricJ } = heating({ ...asked, vesselJPerK: 0, lossWPerK: 0 });
    expect((heatJ / 1000).toFixed(0)).toBe('502');
    expect(((timeS ?? 0) / 60).toFixed(0)).toBe('13');
    expect(electricJ).toBeCloseTo(heatJ / 0.85, 6);
  });

  it('refuses what is colder than the water, boils, or is no number', () => {
    for (const change of [{ toC: 19 }, { toC: 100.1 }, { fromC: -1 }, { toC: Number.NaN }, { massKg: -1 }])
      expect(() => heatToWarmJ({ ...asked, ...change })).toThrow(OutsideRange);
    expect(() => plainEnthalpy(0)).toThrow(OutsideRange);
    expect(() => waterEnthalpyAt(Number.NaN)).toThrow(OutsideRange);
  });
});

describe('time', () => {
  it('grows with loss and towards no loss becomes the plain one', () => {
    const time = (lossWPerK: number) => heating({ ...asked, lossWPerK }).timeS ?? Number.NaN;
    expect(time(0)).toBeCloseTo(heating(asked).heatJ / 637.5, 6);
    expect(time(1e-9) / time(0)).toBeCloseTo(1, 9);
    expect(time(1)).toBeLessThan(time(2));
  });

  it('the law of the vessel is at the wanted temperature when that time is over', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 5, noNaN: true }),
        fc.double({ min: 400, max: 3000, noNaN: true }),
        fc.double({ min: 30, max: 95, noNaN: true }),
        (lossWPerK, powerW, toC) => {
          const run = { ...asked, lossWPerK, powerW, toC };
          const { heatJ, timeS, highestC } = heating(run);
          fc.pre(timeS !== null);
          const capacityJPerK = heatJ / (toC - run.fromC);
          const vessel = { ...run, capacityJPerK, gainedW: powerW * run.efficiency, timeS: timeS ?? 0 };
          expect(temperatureAfterC(vessel)).toBeCloseTo(toC, 8);
          expect(highestC).toBeGreaterThan(toC);
        },
      ),
    );
  });

  it('says when the heater never gets there, and how far it would', () => {
    const weak = heating({ ...asked, powerW: 100, lossWPerK: 2 });
    expect(weak).toMatchObject({ timeS: null, electricJ: null, highestC: 64.5, standbyW: 116 });
    const exactly = heating({ ...asked, efficiency: 1, powerW: 116, lossWPerK: 2 });
    expect(exactly).toMatchObject({ timeS: null, highestC: 80 });
    expect(heating({ ...asked, toC: 20, powerW: 1 }).timeS).toBe(0);
  });

  it.each<Partial<Heater>>([
    { powerW: 0 },
    { efficiency: 0 },
    { efficiency: 85 },
    { lossWPerK: -1 },
    { aroundC: -91 },
    { aroundC: Number.NaN },
    { powerW: Number.NaN },
  ])('refuses %o', (change) => {
    expect(() => heating({ ...asked, ...change })).toThrow(OutsideRange);
  });
});

describe('a vessel by itself', () => {
  const hot = { capacityJPerK: 8360, gainedW: 0, lossWPerK: 2, fromC: 80, aroundC: 22, timeS: 0 };

  it('starts where it is, cools to its surroundings and never below them', () => {
    expect(temperatureAfterC(hot)).toBe(80);
    expect(temperatureAfterC({ ...hot, timeS: 1e9 })).toBe(22);
    const times = [0, 600, 3600, 20_000].map((timeS) => temperatureAfterC({ ...hot, timeS }));
    expect([...times].sort((a, b) => b - a)).toEqual(times);
  });

  it('two hours are an hour and another', () => {
    const first = temperatureAfterC({ ...hot, timeS: 3600 });
    const second = temperatureAfterC({ ...hot, fromC: first, timeS: 3600 });
    expect(temperatureAfterC({ ...hot, timeS: 7200 })).toBeCloseTo(second, 11);
  });

  it('without a loss it warms in a straight line, and holding it costs nothing', () => {
    const closed = { ...hot, lossWPerK: 0, gainedW: 836, timeS: 100 };
    expect(temperatureAfterC(closed)).toBeCloseTo(90, 12);
    expect(standbyLossW({ lossWPerK: 0, heldC: 80, aroundC: 22 })).toBe(0);
    expect(standbyLossW({ lossWPerK: 2, heldC: 5, aroundC: 22 })).toBe(-34);
    expect(() => standbyLossW({ lossWPerK: 2, heldC: Number.NaN, aroundC: 22 })).toThrow(OutsideRange);
    expect(() => temperatureAfterC({ ...hot, capacityJPerK: 0 })).toThrow(OutsideRange);
  });
});

describe('poured together', () => {
  const vessel = { heatCapacityJPerK: 0, temperatureC: 20 };
  const part = fc.record({ massKg: fc.double({ min: 0.01, max: 50, noNaN: true }), temperatureC: celsius });

  it('keeps the heat and lies between the two ends', () => {
    fc.assert(
      fc.property(fc.array(part, { minLength: 1, maxLength: 5 }), (parts) => {
        const mixed = mixedTemperatureC({ parts, enthalpy, vessel });
        const before = parts.reduce((sum, each) => sum + each.massKg * enthalpy(each.temperatureC), 0);
        const massKg = parts.reduce((sum, each) => sum + each.massKg, 0);
        expect(Math.abs(massKg * enthalpy(mixed) - before) / massKg).toBeLessThan(1e-5);
        const ends = parts.map(({ temperatureC }) => temperatureC);
        expect(mixed).toBeGreaterThanOrEqual(Math.min(...ends));
        expect(mixed).toBeLessThanOrEqual(Math.max(...ends));
      }),
    );
  });

  it('with one heat capacity it is the mean by mass', () => {
    const parts = [
      { massKg: 1, temperatureC: 80 },
      { massKg: 3, temperatureC: 20 },
    ];
    expect(mixedTemperatureC({ parts, enthalpy: plainEnthalpy(4180), vessel })).toBeCloseTo(35, 8);
    const cold = { heatCapacityJPerK: 4180, temperatureC: 10 };
    expect(mixedTemperatureC({ parts, enthalpy: plainEnthalpy(4180), vessel: cold })).toBeCloseTo(30, 8);
  });

  it('one water stays as it is; none is refused', () => {
    expect(mixedTemperatureC({ parts: [{ massKg: 2, temperatureC: 37 }], enthalpy, vessel })).toBe(37);
    expect(() => mixedTemperatureC({ parts: [], enthalpy, vessel })).toThrow(OutsideRange);
    const parts = [{ massKg: 1, temperatureC: 120 }];
    expect(() => mixedTemperatureC({ parts, enthalpy, vessel })).toThrow(OutsideRange);
  });
});

describe('boiling and growth', () => {
  it('water boils at 89.9 °C at 70 kPa and at 83.7 °C at 55 kPa', () => {
    const at = (pressurePa: number) => boilingMargin({ temperatureC: 80, pressurePa });
    expect(at(70e3).boilsAtC.toFixed(1)).toBe('89.9');
    expect(at(55e3).boilsAtC.toFixed(1)).toBe('83.7');
    expect(at(55e3).marginK).toBeCloseTo(3.7, 1);
    expect(at(45e3).marginK).toBeLessThan(0);
    for (const pressurePa of [600, Number.NaN]) expect(() => at(pressurePa)).toThrow(OutsideRange);
    expect(() => boilingMargin({ temperatureC: Number.NaN, pressurePa: 70e3 })).toThrow(RangeError);
  });

  it('water grows by 2.7 % from 20 to 80 °C, and shrinks from 0 to 4', () => {
    const growth = (fromC: number, toC: number) => thermalGrowth({ fromC, toC, pressurePa: 101_325 });
    expect((growth(20, 80) * 100).toFixed(1)).toBe('2.7');
    expect(growth(0, 4)).toBeLessThan(0);
    expect((1 + growth(20, 50)) * (1 + growth(50, 80))).toBeCloseTo(1 + growth(20, 80), 12);
    expect(() => growth(20, 101)).toThrow(OutsideRange);
  });
});
