// Condensers: cells against closed forms and against a single step, bypass factors, fits; published values are in tests/published.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { seededChance } from '../../maths/index.ts';
import { cabinAir } from '../air/cabin-air.ts';
import { humidityRatio, moistEnthalpyJPerKg } from '../air/moist-air.ts';
import { OutsideRange } from '../outside-range.ts';
import { apparatusDewPointC, bypassAtFlow, bypassCoil, bypassFactor } from './bypass.ts';
import { fitBypass } from './bypass-fit.ts';
import type { Coil } from './coil.ts';
import { counterflowEffectiveness, effectiveSurfaceCoil } from './effective-surface.ts';
import { segmentedCoil } from './segmented-coil.ts';

const air = cabinAir({ pressurePa: 101_200 });
const airOf = (temperatureC: number, share: number) => ({
  temperatureC,
  humidityRatio: humidityRatio(air, temperatureC, share),
});
const coil: Coil = {
  air,
  airIn: airOf(22, 0.48),
  airFlowKgPerS: 0.04,
  coolantInC: 4,
  coolantFlowKgPerS: 0.08,
  outerWPerK: 90,
  innerWPerK: 160,
};

describe('a coil by cells', () => {
  it('that stays dry gives no water and the heat of the closed form', () => {
    const dry = { ...coil, coolantInC: 14 };
    const cells = segmentedCoil(dry);
    const step = effectiveSurfaceCoil(dry);
    expect(cells.condensateKgPerS).toBe(0);
    expect(cells.wetShare).toBe(0);
    expect(step.isWet).toBe(false);
    expect(cells.heatW / step.heatW).toBeCloseTo(1, 5);
    expect(cells.airOut.temperatureC).toBeCloseTo(step.airOut.temperatureC, 4);
  });

  it('keeps heat and water: what the air loses, the coolant gains', () => {
    const out = segmentedCoil(coil);
    const gained = coil.coolantFlowKgPerS * 4186 * (out.coolantOutC - coil.coolantInC);
    expect(gained / out.heatW).toBeCloseTo(1, 7);
    const enthalpy = (side: typeof coil.airIn) =>
      moistEnthalpyJPerKg(air, side.temperatureC, side.humidityRatio);
    expect((coil.airFlowKgPerS * (enthalpy(coil.airIn) - enthalpy(out.airOut))) / out.heatW).toBeCloseTo(
      1,
      9,
    );
    expect(out.condensateKgPerS).toBeCloseTo(
      coil.airFlowKgPerS * (coil.airIn.humidityRatio - out.airOut.humidityRatio),
      12,
    );
    expect(out.airOut.humidityRatio).toBeLessThanOrEqual(humidityRatio(air, out.airOut.temperatureC, 1));
  });

  it('comes to the same with ever more cells, the error falling with their square', () => {
    const at = (cells: number) => segmentedCoil(coil, { cells }).condensateKgPerS;
    const best = at(2000);
    expect(Math.abs(at(50) / best - 1)).toBeLessThan(2e-3);
    expect(Math.abs(at(200) / best - 1)).toBeLessThan(2e-4);
  });

  it('is partly dry in between, and gives more water the colder the coolant and the wetter the air', () => {
    const shares = [14, 11, 9, 6, 3].map((coolantInC) => segmentedCoil({ ...coil, coolantInC }));
    expect(shares[0]?.wetShare).toBe(0);
    expect(shares.some(({ wetShare }) => wetShare > 0.05 && wetShare < 0.95)).toBe(true);
    for (let at = 1; at < shares.length; at += 1)
      expect(shares[at]?.condensateKgPerS ?? 0).toBeGreaterThanOrEqual(shares[at - 1]?.condensateKgPerS ?? 0);
    const wetter = segmentedCoil({ ...coil, airIn: airOf(22, 0.56) });
    expect(wetter.condensateKgPerS).toBeGreaterThan(segmentedCoil(coil).condensateKgPerS);
  });

  it.each([
    [{ airFlowKgPerS: 0 }, {}],
    [{ outerWPerK: Number.NaN }, {}],
    [{ coolantInC: 22 }, {}],
    [{ airIn: { temperatureC: 22, humidityRatio: 0.03 } }, {}],
    [{}, { cells: 5 }],
    [{}, { cells: 2.5 }],
  ])('is refused with %j %j', (change, options) => {
    expect(() => segmentedCoil({ ...coil, ...change }, options)).toThrow(RangeError);
  });

  it('names the range of moist air when it leaves it', () => {
    expect(() => segmentedCoil({ ...coil, airIn: { temperatureC: 61, humidityRatio: 0.01 } })).toThrow(
      OutsideRange,
    );
  });
});

describe('a coil in one step', () => {
  it('gives within 3 % of the water of the cells where the whole coil is wet, at any cabin pressure', () => {
    const chance = seededChance({ seed: 41 });
    let looked = 0;
    for (let round = 0; round < 60; round += 1) {
      const within = (low: number, high: number) => low + (high - low) * chance.uniform();
      const gas = cabinAir({ pressurePa: within(55_000, 105_000) });
      const temperatureC = within(20, 28);
      const tried: Coil = {
        air: gas,
        airIn: { temperatureC, humidityRatio: humidityRatio(gas, temperatureC, within(0.45, 0.7)) },
        airFlowKgPerS: within(0.03, 0.1),
        coolantInC: within(3, 7),
        coolantFlowKgPerS: within(0.08, 0.3),
        outerWPerK: within(60, 200),
        innerWPerK: within(150, 800),
      };
      const cells = segmentedCoil(tried);
      if (cells.wetShare < 1) continue;
      looked += 1;
      const step = effectiveSurfaceCoil(tried);
      expect(Math.abs(step.condensateKgPerS / cells.condensateKgPerS - 1)).toBeLessThan(0.03);
      expect(Math.abs(step.heatW / cells.heatW - 1)).toBeLessThan(0.015);
    }
    expect(looked).toBeGreaterThan(20);
  });

  it('effectiveness lies between 0 and 1, grows with the units, and is whole where the flows are alike', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 50, noNaN: true }),
        fc.double({ min: 0, max: 3, noNaN: true }),
        (transferUnits, capacityRatio) => {
          const e = counterflowEffectiveness({ transferUnits, capacityRatio });
          expect(e).toBeGreaterThanOrEqual(0);
          expect(e).toBeLessThanOrEqual(1);
          expect(
            counterflowEffectiveness({ transferUnits: transferUnits + 0.1, capacityRatio }),
          ).toBeGreaterThanOrEqual(e);
        },
      ),
    );
    const near = (capacityRatio: number) => counterflowEffectiveness({ transferUnits: 3, capacityRatio });
    expect(near(1)).toBe(0.75);
    expect(near(1 - 1e-9)).toBeCloseTo(0.75, 8);
    expect(near(1 + 1e-9)).toBeCloseTo(0.75, 8);
    expect(counterflowEffectiveness({ transferUnits: 1e5, capacityRatio: 2 })).toBe(0.5);
    expect(() => near(Number.NaN)).toThrow(RangeError);
    expect(() => near(-1)).toThrow(RangeError);
  });
});

describe('the bypass factor', () => {
  it('of a coil comes back from what it did, by ratio and by enthalpy', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.02, max: 0.9, noNaN: true }), (bypass) => {
        const { airOut } = bypassCoil({ air, airIn: coil.airIn, airFlowKgPerS: 0.04, coilC: 6, bypass });
        const ratios = {
          in: coil.airIn.humidityRatio,
          out: airOut.humidityRatio,
          coil: humidityRatio(air, 6, 1),
        };
        expect(bypassFactor(ratios)).toBeCloseTo(bypass, 9);
        expect(apparatusDewPointC(air, { in: coil.airIn, out: airOut })).toBeCloseTo(6, 5);
      }),
    );
  });

  it('at another flow goes with the power of the flows, there and back', () => {
    const doubled = bypassAtFlow({ bypass: 0.2, fromKgPerS: 0.05, toKgPerS: 0.1 });
    expect(doubled).toBeCloseTo(Math.sqrt(0.2), 12);
    expect(bypassAtFlow({ bypass: doubled, fromKgPerS: 0.1, toKgPerS: 0.05 })).toBeCloseTo(0.2, 12);
    expect(bypassAtFlow({ bypass: 0, fromKgPerS: 1, toKgPerS: 2 })).toBe(0);
  });

  it('takes no water above the dew point', () => {
    const out = bypassCoil({ air, airIn: coil.airIn, airFlowKgPerS: 0.04, coilC: 15, bypass: 0.2 });
    expect(out.condensateKgPerS).toBe(0);
    expect(out.heatW).toBeGreaterThan(0);
  });

  it.each([
    () => bypassFactor({ in: 10, out: 11, coil: 5 }),
    () => bypassFactor({ in: 10, out: 4, coil: 5 }),
    () => bypassAtFlow({ bypass: 0.2, fromKgPerS: 0, toKgPerS: 1 }),
    () => bypassAtFlow({ bypass: 1.2, fromKgPerS: 1, toKgPerS: 1 }),
    () => apparatusDewPointC(air, { in: coil.airIn, out: { temperatureC: 15, humidityRatio: 0.009 } }),
    () => bypassCoil({ air, airIn: coil.airIn, airFlowKgPerS: Number.NaN, coilC: 6, bypass: 0.2 }),
  ])('is refused where there is none (%#)', (run) => {
    expect(run).toThrow(RangeError);
  });
});

describe('a bypass factor fitted to readings', () => {
  const reading = (bypass: number, flow: number, u = 1) => {
    const own = bypassAtFlow({ bypass, fromKgPerS: 0.04, toKgPerS: flow });
    const { condensateKgPerS } = bypassCoil({
      air,
      airIn: coil.airIn,
      airFlowKgPerS: flow,
      coilC: 6,
      bypass: own,
    });
    return {
      air,
      temperatureC: { value: 22, u: 0.25 * u },
      relativeHumidity: { value: 0.48, u: 0.015 * u },
      coilC: { value: 6, u: 0.3 * u },
      airFlowKgPerS: { value: flow, u: 0.002 * u },
      condensateKgPerS: { value: condensateKgPerS, u: 0.02 * condensateKgPerS * u },
    };
  };

  it('finds the factor that made them, whatever the flow of each', () => {
    const fit = fitBypass([reading(0.2, 0.03), reading(0.2, 0.04), reading(0.2, 0.06)], 0.04);
    expect(fit.bypass).toBeCloseTo(0.2, 9);
    expect(fit.chiSquare).toBeLessThan(1e-12);
  });

  it('knows it better from four readings than from one, by the root of four', () => {
    const one = fitBypass([reading(0.3, 0.04)], 0.04);
    const four = fitBypass(
      [1, 2, 3, 4].map(() => reading(0.3, 0.04)),
      0.04,
    );
    expect(one.u / four.u).toBeCloseTo(2, 9);
    expect(one.u).toBeGreaterThan(0.03);
  });

  it('widens its doubt where readings scatter more than they say', () => {
    const apart = fitBypass([reading(0.2, 0.04, 0.01), reading(0.3, 0.04, 0.01)], 0.04);
    expect(apart.chiSquare).toBeGreaterThan(100);
    expect(apart.u).toBeGreaterThan(0.04);
  });

  it('has the doubt that a thousand draws show', () => {
    const chance = seededChance({ seed: 7 });
    const truth = reading(0.25, 0.04, 0.3);
    const drawn: number[] = [];
    for (let draw = 0; draw < 1000; draw += 1) {
      const shaken = Object.fromEntries(
        (['temperatureC', 'relativeHumidity', 'coilC', 'airFlowKgPerS', 'condensateKgPerS'] as const).map(
          (name) => [name, { value: truth[name].value + truth[name].u * chance.normal(), u: truth[name].u }],
        ),
      ) as unknown as Omit<typeof truth, 'air'>;
      drawn.push(fitBypass([{ air, ...shaken }], 0.04).transferUnits);
    }
    const mean = drawn.reduce((sum, value) => sum + value, 0) / drawn.length;
    const spread = Math.sqrt(drawn.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (drawn.length - 1));
    expect(spread / fitBypass([truth], 0.04).transferUnitsU).toBeGreaterThan(0.9);
    expect(spread / fitBypass([truth], 0.04).transferUnitsU).toBeLessThan(1.15);
  });

  it.each([
    () => fitBypass([], 0.04),
    () => fitBypass([reading(0.2, 0.04)], 0),
    () => fitBypass([{ ...reading(0.2, 0.04), condensateKgPerS: { value: 1, u: 0.1 } }], 0.04),
    () => fitBypass([{ ...reading(0.2, 0.04), condensateKgPerS: { value: 0, u: 0.1 } }], 0.04),
    () => fitBypass([reading(0.2, 0.04, 0)], 0.04),
    () => fitBypass([reading(0.2, 0.04, -1)], 0.04),
  ])('is refused where there is none (%#)', (run) => {
    expect(run).toThrow(RangeError);
  });
});
