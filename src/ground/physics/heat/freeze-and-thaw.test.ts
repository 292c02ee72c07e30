// Freezing and thawing: heat is kept, states follow one another, what never happens and what is refused.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { OutsideRange } from '../outside-range.ts';
import { freeze, thaw } from './freeze-and-thaw.ts';
import {
  type ColdWater,
  coldWaterAfter,
  enthalpyJPerKg,
  freezingGrowth,
  iceDensityKgPerM3,
  iceEnthalpyJPerKg,
} from './ice.ts';

const cold: fc.Arbitrary<ColdWater> = fc.oneof(
  fc.record({
    massKg: fc.constant(20),
    temperatureC: fc.double({ min: -35, max: -0.001, noNaN: true }),
    iceShare: fc.constant(1),
  }),
  fc.record({
    massKg: fc.constant(20),
    temperatureC: fc.constant(0),
    iceShare: fc.double({ min: 0, max: 1, noNaN: true }),
  }),
  fc.record({
    massKg: fc.constant(20),
    temperatureC: fc.double({ min: 0.001, max: 28, noNaN: true }),
    iceShare: fc.constant(0),
  }),
);

describe('the state after so much heat', () => {
  it('carries exactly that heat, from any state to any other', () => {
    fc.assert(
      fc.property(cold, cold, (from, to) => {
        const heatJ = (enthalpyJPerKg(to) - enthalpyJPerKg(from)) * 20;
        const after = coldWaterAfter(from, heatJ);
        expect(after.temperatureC).toBeCloseTo(to.temperatureC, 8);
        expect(after.iceShare).toBeCloseTo(to.iceShare, 8);
        expect(after.iceKg + after.liquidKg).toBeCloseTo(20, 12);
      }),
    );
  });

  it('half of the melting heat leaves half to draw, and takes less room', () => {
    const ice = { massKg: 20, temperatureC: 0, iceShare: 1 };
    const whole = coldWaterAfter(ice, 0);
    const half = coldWaterAfter(ice, 10 * 333_427);
    expect(half).toMatchObject({
      temperatureC: 0,
      liquidKg: expect.closeTo(10, 9),
      iceShare: expect.closeTo(0.5, 9),
    });
    expect(half.volumeM3).toBeLessThan(whole.volumeM3);
    expect(coldWaterAfter(ice, 20 * 333_427).volumeM3 * (1 + freezingGrowth())).toBeCloseTo(
      whole.volumeM3,
      12,
    );
    expect((whole.volumeM3 * 1000).toFixed(1)).toBe('21.8');
  });

  it('nothing melts before the ice is at 0 °C', () => {
    const after = coldWaterAfter({ massKg: 1, temperatureC: -20, iceShare: 1 }, 30_000);
    expect(after).toMatchObject({ liquidKg: 0, iceShare: 1 });
    expect(after.temperatureC).toBeGreaterThan(-20);
    expect(after.temperatureC).toBeLessThan(0);
  });

  it.each<[ColdWater, number]>([
    [{ massKg: 1, temperatureC: -5, iceShare: 0.5 }, 0],
    [{ massKg: 1, temperatureC: 5, iceShare: 0.1 }, 0],
    [{ massKg: 0, temperatureC: 0, iceShare: 1 }, 0],
    [{ massKg: 1, temperatureC: 0, iceShare: 1.1 }, 0],
    [{ massKg: 1, temperatureC: -41, iceShare: 1 }, 0],
    [{ massKg: 1, temperatureC: 0, iceShare: 0 }, 2e5],
    [{ massKg: 1, temperatureC: 0, iceShare: 1 }, -2e5],
    [{ massKg: 1, temperatureC: 0, iceShare: 1 }, Number.NaN],
  ])('refuses %j with %d J', (water, heatJ) => {
    expect(() => coldWaterAfter(water, heatJ)).toThrow(OutsideRange);
  });
});

describe('ice', () => {
  it('gets denser and holds less heat as it gets colder', () => {
    for (let temperatureC = -40; temperatureC < 0; temperatureC += 1) {
      expect(iceEnthalpyJPerKg(temperatureC)).toBeLessThan(iceEnthalpyJPerKg(temperatureC + 1));
      expect(iceDensityKgPerM3(temperatureC)).toBeGreaterThan(iceDensityKgPerM3(temperatureC + 1));
    }
    expect(Math.abs(iceEnthalpyJPerKg(0))).toBe(0);
    expect((freezingGrowth() * 100).toFixed(1)).toBe('9.1');
    for (const temperatureC of [0.1, -40.1, Number.NaN]) {
      expect(() => iceEnthalpyJPerKg(temperatureC)).toThrow(OutsideRange);
      expect(() => iceDensityKgPerM3(temperatureC)).toThrow(OutsideRange);
    }
  });
});

describe('thawing', () => {
  const asked = {
    ice: { massKg: 20, temperatureC: -10, iceShare: 1 },
    toC: 5,
    powerW: 500,
    efficiency: 0.9,
    lossWPerK: 0,
    aroundC: -20,
  };

  it('without loss is m (c ΔT + 334 kJ/kg) / P', () => {
    const { meltedAfterS, warmAfterS, meltJ } = thaw(asked);
    expect(Math.abs(meltJ / 20 - 334e3)).toBeLessThan(1000);
    expect((meltedAfterS ?? 0) / ((20 * (2060 * 10 + 334e3)) / 450)).toBeCloseTo(1, 2);
    expect(warmAfterS ?? 0).toBeGreaterThan(meltedAfterS ?? 0);
  });

  it('its heat is that of the states', () => {
    const { warmIceJ, meltJ, warmWaterJ } = thaw(asked);
    const after = coldWaterAfter(asked.ice, warmIceJ + meltJ + warmWaterJ);
    expect(after.temperatureC).toBeCloseTo(5, 9);
    expect(coldWaterAfter(asked.ice, warmIceJ + meltJ).iceShare).toBeCloseTo(0, 9);
  });

  it('takes longer with loss, and never ends where loss eats the power', () => {
    const slow = thaw({ ...asked, lossWPerK: 5 });
    expect(slow.meltedAfterS ?? 0).toBeGreaterThan(thaw(asked).meltedAfterS ?? 0);
    expect(thaw({ ...asked, lossWPerK: 22.5 }).meltedAfterS).toBeNull();
    expect(thaw({ ...asked, lossWPerK: 20 })).toMatchObject({
      meltedAfterS: expect.any(Number),
      warmAfterS: null,
    });
  });

  it('what is liquid and warm already takes no time', () => {
    const warm = { ...asked, ice: { massKg: 20, temperatureC: 8, iceShare: 0 } };
    expect(thaw(warm)).toMatchObject({
      warmIceJ: 0,
      meltJ: 0,
      warmWaterJ: 0,
      meltedAfterS: 0,
      warmAfterS: 0,
    });
  });

  it.each([{ toC: 31 }, { powerW: 0 }, { efficiency: 0 }, { lossWPerK: -1 }, { aroundC: Number.NaN }])(
    'refuses %o',
    (change) => {
      expect(() => thaw({ ...asked, ...change })).toThrow(OutsideRange);
    },
  );
});

describe('freezing', () => {
  const asked = { massKg: 20, fromC: 5, vesselJPerK: 500, lossWPerK: 2, aroundC: -20 };

  it('first cools, then freezes with the heat that leaves at 0 °C', () => {
    const found = freeze(asked);
    expect(found?.freezingW).toBe(40);
    const freezingS = (found?.frozenAfterS ?? 0) - (found?.atFreezingAfterS ?? 0);
    expect(freezingS).toBeCloseTo((20 * 333_427) / 40, 5);
    expect(freeze({ ...asked, fromC: 0 })?.atFreezingAfterS).toBe(0);
  });

  it('sooner in greater cold and at greater loss; never where it is not below 0 °C', () => {
    const frozenAfter = (change: Partial<typeof asked>) =>
      freeze({ ...asked, ...change })?.frozenAfterS ?? Number.NaN;
    expect(frozenAfter({ aroundC: -30 })).toBeLessThan(frozenAfter({}));
    expect(frozenAfter({ lossWPerK: 3 })).toBeLessThan(frozenAfter({}));
    expect(freeze({ ...asked, aroundC: 0 })).toBeNull();
    expect(freeze({ ...asked, aroundC: 12 })).toBeNull();
  });

  it.each([
    { massKg: 0 },
    { fromC: -1 },
    { fromC: 31 },
    { lossWPerK: 0 },
    { vesselJPerK: -1 },
    { aroundC: Number.NaN },
  ])('refuses %o', (change) => {
    expect(() => freeze({ ...asked, ...change })).toThrow(OutsideRange);
  });
});
