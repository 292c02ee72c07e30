// Gas injection: the gauging of Corrie's R2 on Day 56 and its budget, what each term does, and what is refused.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { coverageFactor, type Doubted } from '../../maths/index.ts';
import { OutsideRange } from '../outside-range.ts';
import { endPressurePa } from './charge.ts';
import { foreseenInjection } from './foreseen-injection.ts';
import {
  gasVolumeByInjectionM3,
  gaugeByInjection,
  type InjectionReadings,
  type InjectionTold,
  injectionByDraws,
} from './gas-injection.ts';

const kPa = (value: number, u: number): Doubted => ({ value: value * 1000, u: u * 1000 });
const celsius = (value: number, u: number): Doubted => ({ value: value + 273.15, u });
const litres = (m3: number): number => m3 * 1000;

/** The raw readings of R2 on Day 56, with the doubts of the outpost's gauges. */
const r2OnDay56: InjectionTold = {
  tankM3: { value: 0.18, u: 0.0009 },
  seatingM3: { value: 0, u: 0.0013 },
  bottleM3: { value: 0.01, u: 0.00002 },
  bottleBeforePa: kPa(600, 0.15),
  bottleAfterPa: kPa(585, 0.15),
  bottleBeforeK: celsius(22.1, 0.05),
  bottleAfterK: celsius(22, 0.05),
  tankBeforePa: kPa(101.28, 0.03),
  tankAfterPa: kPa(124.43, 0.03),
  tankBeforeK: celsius(21.8, 0.05),
  tankAfterK: celsius(21.9, 0.05),
  bottleGaugeGain: { value: 0, u: 0.001 },
  tankGaugeGain: { value: 0, u: 0.0005 },
  bottleThermometerK: { value: 0, u: 0.2 },
  tankThermometerK: { value: 0, u: 0.2 },
};

describe('R2 on Day 56', () => {
  const { waterM3, gasM3, budget } = gaugeByInjection(r2OnDay56);

  it('holds 173.6 L, u = 1.6', () => {
    expect(litres(waterM3.value)).toBeCloseTo(173.601, 3);
    expect(litres(waterM3.u).toFixed(1)).toBe('1.6');
    expect((litres(waterM3.u) * coverageFactor({ probability: 0.95 })).toFixed(1)).toBe('3.1');
  });

  it('is in doubt by the tank, and by little else', () => {
    expect(budget[0]!.of).toBe('tank');
    expect(budget[0]!.share).toBeGreaterThan(0.95);
    expect(budget.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 12);
    expect(litres(gasM3.value)).toBeCloseTo(6.399, 3);
    expect(gasM3.u).toBeLessThan(waterM3.u / 5);
  });

  it('is the same by bare readings', () => {
    const bare = Object.entries(r2OnDay56).flatMap(([name, told]) =>
      typeof told === 'string' ? [] : [[name, told.value]],
    );
    expect(gasVolumeByInjectionM3(Object.fromEntries(bare) as InjectionReadings)).toBe(gasM3.value);
  });

  it('is borne out by draws', () => {
    const { waterM3: drawn, borneOut } = injectionByDraws(r2OnDay56, { seed: 56, draws: 200_000 });
    expect(drawn.u / waterM3.u).toBeCloseTo(1, 2);
    expect(borneOut?.verdict).toBe('borne out');
  });
});

describe('near empty', () => {
  const emptying = { bottleM3: { value: 0.005, u: 0 }, tankM3: { value: 0.18, u: 0 } };
  const sensors = { bottlePa: 500, tankPa: 500, gasK: 0.5 };
  const at = { bottlePa: 400e3, tankPa: 101.3e3, gasK: 295, u: sensors };

  it('a 5 L bottle at 400 kPa knows 13 L, and the draws say that even this is told too straight', () => {
    const { waterM3, budget } = foreseenInjection({ ...emptying, ...at, ullageM3: 0.16 });
    expect(litres(waterM3.u)).toBeCloseTo(13.5, 1);
    expect(['pressure', 'temperature']).toContain(budget[0]!.of);
    const p2 = endPressurePa({ bottleM3: 0.005, bottlePa: 400e3, ullageM3: 0.16, tankPa: 101.3e3 });
    const gas = { value: 295, u: 0.5 };
    const told: InjectionTold = {
      ...emptying,
      ...{ bottleBeforePa: kPa(400, 0.5), bottleAfterPa: 'as the tank' },
      ...{ tankBeforePa: kPa(101.3, 0.5), tankAfterPa: { value: p2, u: 500 } },
      ...{ bottleBeforeK: gas, bottleAfterK: gas, tankBeforeK: gas, tankAfterK: gas },
    };
    expect(gaugeByInjection(told).waterM3.u).toBeCloseTo(waterM3.u, 12);
    const { borneOut, waterM3: drawn } = injectionByDraws(told, { seed: 7, draws: 200_000, digits: 2 });
    expect(borneOut?.verdict).toBe('not borne out');
    // Skew to the side of less water.
    expect(drawn.value - drawn.symmetric.low).toBeGreaterThan(drawn.symmetric.high - drawn.value);
  });

  it('is worse the more gas there is, and better the more is let in', () => {
    const uAt = (ullageM3: number, bottlePa: number): number =>
      foreseenInjection({ ...emptying, ...at, ullageM3, bottlePa }).waterM3.u;
    for (let gas = 0.02; gas < 0.17; gas += 0.01)
      expect(uAt(gas + 0.01, 400e3)).toBeGreaterThan(uAt(gas, 400e3));
    for (let kilo = 200; kilo < 900; kilo += 50)
      expect(uAt(0.1, (kilo + 50) * 1000)).toBeLessThan(uAt(0.1, kilo * 1000));
  });

  it('a part charge is foreseen with the bottle closed, and never below the tank', () => {
    const part = { ...emptying, ...at, ullageM3: 0.0064, bottleFallPa: 15e3 };
    expect(foreseenInjection(part).gasM3.value).toBeCloseTo(0.0064, 12);
    expect(() => foreseenInjection({ ...part, bottleFallPa: 299e3 })).toThrow(OutsideRange);
  });
});

/** Readings that an injection into so much gas would give. */
function readingsOf(gasM3: number, warmerK = 0): InjectionReadings {
  const [bottleM3, bottlePa, tankPa, gasK] = [0.01, 600e3, 101.3e3, 295];
  const endPa = endPressurePa({ bottleM3, bottlePa, ullageM3: gasM3, tankPa });
  return {
    ...{ bottleM3, bottleBeforePa: bottlePa, bottleAfterPa: endPa, bottleBeforeK: gasK, bottleAfterK: gasK },
    ...{ tankBeforePa: tankPa, tankAfterPa: endPa, tankBeforeK: gasK, tankAfterK: gasK + warmerK },
  };
}

describe('the gas', () => {
  it('is found back from the pressures that it would make', () => {
    let looked = 0;
    fc.assert(
      fc.property(fc.double({ min: 0.001, max: 0.4, noNaN: true }), (gasM3) => {
        expect(gasVolumeByInjectionM3(readingsOf(gasM3)) / gasM3).toBeCloseTo(1, 10);
        looked += 1;
      }),
    );
    expect(looked).toBe(100);
  });

  it('looks less where it is read too warm, and more where vapour is forgotten', () => {
    const true40 = gasVolumeByInjectionM3(readingsOf(0.04));
    // A thermometer that says cold while the gas is warm takes the heat for gas.
    expect(gasVolumeByInjectionM3(readingsOf(0.04, 3))).toBeGreaterThan(true40);
    expect(gasVolumeByInjectionM3(readingsOf(0.04, -3))).toBeLessThan(true40);
    // Vapour stays while both temperatures are one, so it cancels; where they differ it does not.
    expect(gasVolumeByInjectionM3({ ...readingsOf(0.04), vapourPa: 3000 })).toBeCloseTo(true40, 12);
    expect(gasVolumeByInjectionM3({ ...readingsOf(0.04, 3), vapourPa: 3000 })).not.toBeCloseTo(
      gasVolumeByInjectionM3(readingsOf(0.04, 3)),
      6,
    );
  });

  const dry: InjectionTold = { ...r2OnDay56, seatingM3: { value: 0, u: 0 } };
  const waterOf = (terms: Partial<InjectionTold>): number =>
    gaugeByInjection({ ...dry, ...terms }).waterM3.value;
  const plain = waterOf({});
  it.each<[string, Partial<InjectionTold>, number]>([
    [
      'gas that was lost makes the room look small: put right, there is less gas',
      { lostShare: { value: 0.07, u: 0 } },
      0.07 * 0.0063990246,
    ],
    [
      'a room that grows took some of the gas: put right, there was less of it',
      { complianceM3PerPa: { value: 1e-8, u: 0 } },
      Number.NaN,
    ],
    ['solids are no water', { solidsM3: { value: 0.002, u: 0 } }, -0.002],
    ['gas in the lines is none in the tank', { lineM3: { value: 0.0003, u: 0 } }, 0.0003],
    ['seating adds', { seatingM3: { value: 0.001, u: 0 } }, 0.001],
  ])('%s', (_what, terms, more) => {
    const change = waterOf(terms) - plain;
    if (Number.isNaN(more)) expect(change).toBeGreaterThan(0);
    else expect(change).toBeCloseTo(more, 9);
  });

  it('a room that grows is solved for: the balance closes', () => {
    const compliance = 2e-8;
    const { gasM3 } = gaugeByInjection({ ...dry, complianceM3PerPa: { value: compliance, u: 0 } });
    const [p1, p2] = [101.28e3, 124.43e3];
    const [t1, t2] = [21.8 + 273.15, 21.9 + 273.15];
    const gave = 0.01 * (600e3 / (22.1 + 273.15) - 585e3 / (22 + 273.15));
    const after = ((gasM3.value + compliance * (p2 - p1)) * p2) / t2;
    expect(after - (gasM3.value * p1) / t1).toBeCloseTo(gave, 9);
  });

  it('an error that both readings of a gauge share counts less than one that is new in each', () => {
    const none = (name: keyof InjectionTold): Doubted => ({ ...(r2OnDay56[name] as Doubted), u: 0 });
    const still = { tankBeforePa: none('tankBeforePa'), tankAfterPa: none('tankAfterPa') };
    const shared = gaugeByInjection({ ...r2OnDay56, ...still, tankGaugeOffsetPa: { value: 0, u: 100 } });
    const apart = gaugeByInjection({
      ...r2OnDay56,
      tankBeforePa: { ...still.tankBeforePa, u: 100 },
      tankAfterPa: { ...still.tankAfterPa, u: 100 },
    });
    expect(shared.gasM3.u).toBeLessThan(apart.gasM3.u);
  });
});

describe('refused', () => {
  const good = readingsOf(0.04);
  it.each<[string, Partial<Record<keyof InjectionReadings, number>>]>([
    ['a tank whose pressure did not rise', { tankAfterPa: good.tankBeforePa }],
    ['a bottle that gave nothing', { bottleAfterPa: good.bottleBeforePa }],
    ['a pressure of nothing', { tankBeforePa: 0 }],
    ['a pressure beyond an ideal gas', { bottleBeforePa: 6e6 }],
    ['a temperature in °C', { tankAfterK: 22 }],
    ['no bottle', { bottleM3: 0 }],
    ['NaN', { tankAfterK: Number.NaN }],
  ])('%s', (_what, odd) => {
    expect(() => gasVolumeByInjectionM3({ ...good, ...odd })).toThrow(OutsideRange);
  });

  it('vapour above the pressure of the gas, and a doubt below 0', () => {
    expect(() => gaugeByInjection({ ...r2OnDay56, vapourPa: { value: 102e3, u: 0 } })).toThrow(OutsideRange);
    expect(() => gaugeByInjection({ ...r2OnDay56, tankM3: { value: 0.18, u: -1 } })).toThrow(RangeError);
    expect(() => gaugeByInjection({ ...r2OnDay56, tankM3: { value: 0, u: 0.001 } })).toThrow(OutsideRange);
  });
});
