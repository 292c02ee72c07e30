// Gauging by blow-down, by displacement, by strokes and by swinging: inverses, limits, budgets and what is refused.
import { describe, expect, it } from 'vitest';
import type { Doubted } from '../../maths/index.ts';
import { OutsideRange } from '../outside-range.ts';
import { gaugeByBlowDown } from './blow-down-gauging.ts';
import { dissolvedShare, saturatedVapour, settlingTerm } from './gas-terms.ts';
import {
  frameMassKg,
  massBesideFrameKg,
  springStiffnessNPerM,
  swingingMassKg,
  swingPeriodS,
} from './oscillation.ts';
import { calibratedBalance, weighByOscillation } from './oscillation-weighing.ts';
import { volumeByStrokes } from './stroke-count.ts';
import { gaugeByDisplacement } from './volume-displacement.ts';

const sure = (value: number): Doubted => ({ value, u: 0 });

describe('blow-down', () => {
  const [gasM3, drawnM3] = [0.04, 0.005];
  const told = {
    ...{ tankM3: { value: 0.18, u: 0.001 }, drawnM3: { value: drawnM3, u: 5e-5 } },
    tankBeforePa: { value: 150e3, u: 50 },
    tankAfterPa: { value: (150e3 * gasM3) / (gasM3 + drawnM3), u: 50 },
    ...{ tankBeforeK: { value: 295, u: 0.1 }, tankAfterK: { value: 295, u: 0.1 } },
  };
  it('finds the gas that would fall so', () => {
    const gauged = gaugeByBlowDown(told);
    expect(gauged.gasM3.value).toBeCloseTo(gasM3, 12);
    expect(gauged.waterBeforeM3.value).toBeCloseTo(0.14, 12);
    expect(gauged.waterM3.value).toBeCloseTo(0.135, 12);
    expect(gauged.budget.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 12);
  });

  it('is better the more is drawn', () => {
    const uAt = (drawn: number): number =>
      gaugeByBlowDown({
        ...told,
        drawnM3: { value: drawn, u: 0.01 * drawn },
        tankAfterPa: { value: (150e3 * gasM3) / (gasM3 + drawn), u: 50 },
      }).gasM3.u;
    expect(uAt(0.01)).toBeLessThan(uAt(0.005));
    expect(uAt(0.005)).toBeLessThan(uAt(0.002));
  });

  it.each([
    { tankAfterPa: sure(150e3) },
    { tankAfterPa: sure(151e3) },
    { drawnM3: sure(0) },
    { tankBeforeK: sure(22) },
    { tankM3: sure(Number.NaN) },
  ])('refuses %o', (odd) => {
    expect(() => gaugeByBlowDown({ ...told, ...odd })).toThrow(OutsideRange);
  });
});

describe('displacement', () => {
  const told = {
    ...{ tankM3: sure(0.18), displacedM3: { value: 0.0005, u: 2e-6 }, beforePa: { value: 150e3, u: 10 } },
    afterPa: { value: (150e3 * 0.04) / (0.04 - 0.0005), u: 10 },
  };
  it('finds the gas that would be pressed so, once it has settled', () => {
    const gauged = gaugeByDisplacement({ ...told, exponent: 'settled' });
    expect(gauged.gasM3.value).toBeCloseTo(0.04, 12);
    expect(gauged.waterM3.value).toBeCloseTo(0.14, 12);
  });

  it('is k p ΔV/Δp for a small push', () => {
    const small = { ...told, displacedM3: sure(1e-6), afterPa: sure(150e3 + 5) };
    for (const k of [1, 1.2, 1.4]) {
      const gas = gaugeByDisplacement({ ...small, exponent: sure(k) }).gasM3.value;
      expect(gas / ((k * 150e3 * 1e-6) / 5)).toBeCloseTo(1, 4);
    }
  });

  it('is off by up to 40 % where the gas has not settled, and says so', () => {
    const early = gaugeByDisplacement({ ...told, exponent: 'not settled' });
    const warm = gaugeByDisplacement({ ...told, exponent: sure(1.4) });
    const settled = gaugeByDisplacement({ ...told, exponent: 'settled' });
    expect(warm.gasM3.value / settled.gasM3.value).toBeCloseTo(1.4, 2);
    expect(early.budget[0]!.of).toBe('settling');
    expect(early.budget[0]!.share).toBeGreaterThan(0.95);
    expect(2 * early.gasM3.u).toBeGreaterThan(early.gasM3.value - settled.gasM3.value);
  });

  it.each([
    { exponent: sure(0.9) },
    { exponent: sure(1.5) },
    { exponent: 'settled', afterPa: sure(150e3) },
    { exponent: 'settled', displacedM3: sure(0) },
    { exponent: 'settled', beforePa: sure(Number.NaN) },
  ] as const)('refuses %o', (odd) => {
    expect(() => gaugeByDisplacement({ ...told, ...odd })).toThrow(OutsideRange);
  });
});

describe('terms that no gauge reads', () => {
  it('vapour of water at 24 °C', () => {
    const { value, u } = saturatedVapour({ value: 297.15, u: 0.1 });
    expect(value).toBeCloseTo(2985.8, 0);
    expect(u).toBeCloseTo(17.9, 0);
  });

  it('dissolved: 0.74 of 11 litre-atmospheres in 170 L under 40 L at most', () => {
    const { value, u } = dissolvedShare({ gasM3: 0.04, waterM3: 0.17, bunsen: 0.017 });
    expect(2 * value).toBeCloseTo(0.0674, 4);
    expect(value + Math.sqrt(3) * u).toBeCloseTo(2 * value, 12);
    expect(dissolvedShare({ gasM3: 0.04, waterM3: 0, bunsen: 0.017 }).value).toBe(0);
  });

  it('settling: the whole warming at once, nothing in the end', () => {
    const from = { tankBeforePa: 101.28e3, tankAfterPa: 124.43e3, gasK: 295, timeConstantS: 300 };
    expect(2 * settlingTerm({ ...from, waitS: 0 }).value).toBeCloseTo(16.6, 1);
    expect(2 * settlingTerm({ ...from, waitS: 1200 }).value).toBeCloseTo(16.562 / 54.598, 4);
    expect(settlingTerm({ ...from, waitS: 1e6 }).value).toBe(0);
    // An empty vessel that is filled at once warms to k T.
    expect(2 * settlingTerm({ ...from, tankBeforePa: 1e-6, waitS: 0 }).value).toBeCloseTo(0.4 * 295, 3);
  });

  it('refuse what is no water, no wait, no gas', () => {
    expect(() => dissolvedShare({ gasM3: 0, waterM3: 0.1, bunsen: 0.017 })).toThrow(OutsideRange);
    expect(() => dissolvedShare({ gasM3: 0.1, waterM3: 0.1, bunsen: 17 })).toThrow(OutsideRange);
    const from = { tankBeforePa: 101e3, tankAfterPa: 100e3, gasK: 295, timeConstantS: 300, waitS: 0 };
    expect(() => settlingTerm(from)).toThrow(OutsideRange);
    expect(() => settlingTerm({ ...from, tankAfterPa: 120e3, waitS: -1 })).toThrow(OutsideRange);
    expect(() => settlingTerm({ ...from, tankAfterPa: 120e3, timeConstantS: Number.NaN })).toThrow(
      OutsideRange,
    );
  });
});

describe('strokes', () => {
  const told = { count: sure(800), strokeM3: 25e-6, calibration: { value: 0, u: 0.01 }, strokeScatter: 0.02 };
  it('800 of 25 mL: 20 L, the calibration makes nearly all of the doubt', () => {
    const { drawnM3, systematicUM3, randomUM3, budget } = volumeByStrokes(told);
    expect(drawnM3.value).toBeCloseTo(0.02, 15);
    expect(systematicUM3).toBeCloseTo(0.0002, 12);
    expect(randomUM3).toBeCloseTo(0.0000141421, 9);
    expect(budget[0]).toMatchObject({ of: 'calibration' });
    expect(budget[0]!.share).toBeGreaterThan(0.99);
  });

  it('a calibration grows with the count, the scatter with its root', () => {
    const four = volumeByStrokes({ ...told, count: sure(3200) });
    const one = volumeByStrokes(told);
    expect(four.systematicUM3 / one.systematicUM3).toBeCloseTo(4, 12);
    expect(four.randomUM3 / one.randomUM3).toBeCloseTo(2, 12);
  });

  it('a bias that is known is put right, a count in doubt counts', () => {
    expect(volumeByStrokes({ ...told, calibration: { value: -0.012, u: 0.004 } }).drawnM3.value).toBeCloseTo(
      0.01976,
      12,
    );
    const tallied = volumeByStrokes({ ...told, count: { value: 800, u: 10 } });
    expect(tallied.randomUM3).toBeCloseTo(Math.hypot(25e-6 * 10, 0.0000141421), 9);
    expect(volumeByStrokes({ ...told, count: sure(0) }).drawnM3.value).toBe(0);
  });

  it.each([{ count: sure(-1) }, { strokeM3: 0 }, { strokeScatter: -0.1 }, { strokeM3: Number.NaN }])(
    'refuses %o',
    (odd) => {
      expect(() => volumeByStrokes({ ...told, ...odd })).toThrow(OutsideRange);
    },
  );
});

describe('swinging', () => {
  it('22 kg on a chair of 12.5 kg, 606 N/m: 1.499 s, and half a millisecond is 23 g', () => {
    const periodS = swingPeriodS(34.5, 606);
    expect(periodS).toBeCloseTo(1.499, 3);
    const told = {
      periodS: { value: periodS, u: 0.0005 },
      stiffnessNPerM: sure(606),
      carriageKg: sure(12.5),
    };
    const { contentKg, budget } = weighByOscillation(told);
    expect(contentKg.value).toBeCloseTo(22, 10);
    expect(contentKg.u).toBeCloseTo(0.023, 3);
    expect(budget[0]!.of).toBe('period');
    // u(m)/m_whole = √((2 u_T/T)² + (u_k/k)²).
    const both = weighByOscillation({ ...told, stiffnessNPerM: { value: 606, u: 1 } }).contentKg.u;
    expect(both / 34.5).toBeCloseTo(Math.hypot((2 * 0.0005) / periodS, 1 / 606), 10);
  });

  it('mass, stiffness and period are each other’s inverse', () => {
    for (const mass of [0.5, 12.5, 34.5, 200]) {
      expect(swingingMassKg(606, swingPeriodS(mass, 606))).toBeCloseTo(mass, 10);
      expect(springStiffnessNPerM(mass, swingPeriodS(mass, 606))).toBeCloseTo(606, 9);
      const reducedKg = (mass * 2000) / (mass + 2000);
      expect(massBesideFrameKg({ reducedKg, frameKg: 2000 })).toBeCloseTo(mass, 9);
      expect(frameMassKg({ reducedKg, massKg: mass })).toBeCloseTo(2000, 6);
    }
  });

  it('a floating frame of great mass is as good as a fast one; a light one makes the content look small', () => {
    const told = { periodS: sure(1.499), stiffnessNPerM: sure(606), carriageKg: sure(12.5) };
    const fast = weighByOscillation(told).contentKg.value;
    expect(weighByOscillation({ ...told, frameKg: sure(1e9) }).contentKg.value).toBeCloseTo(fast, 5);
    expect(weighByOscillation({ ...told, frameKg: sure(2000) }).contentKg.value).toBeGreaterThan(fast + 0.5);
  });

  it('slosh is a part of the content, the tare comes off', () => {
    const told = {
      periodS: sure(1.499),
      stiffnessNPerM: sure(606),
      carriageKg: sure(12.5),
      tareKg: { value: 1.2, u: 0.02 },
    };
    const { contentKg, budget } = weighByOscillation({ ...told, slosh: { value: 0, u: 0.02 } });
    expect(contentKg.u).toBeCloseTo(Math.hypot(0.02, 0.02 * contentKg.value), 10);
    expect(budget[0]!.of).toBe('slosh');
  });

  it('a balance calibrated by two masses weighs the heavier one back, with the doubt of its own swing', () => {
    const heavier = {
      massKg: { value: 20, u: 0.005 },
      periodS: { value: swingPeriodS(32.5, 606), u: 0.0005 },
    };
    const lighter = { massKg: { value: 0, u: 0 }, periodS: { value: swingPeriodS(12.5, 606), u: 0.0005 } };
    const { stiffnessNPerM, carriageKg, correlations } = calibratedBalance({ lighter, heavier });
    expect(stiffnessNPerM.value).toBeCloseTo(606, 8);
    expect(carriageKg.value).toBeCloseTo(12.5, 9);
    expect(correlations[0].r).toBeGreaterThan(0.5);
    const told = { periodS: heavier.periodS, stiffnessNPerM, carriageKg };
    const together = weighByOscillation({ ...told, correlations });
    expect(together.contentKg.value).toBeCloseTo(20, 8);
    // Spring and carriage of one calibration take each other's error back.
    expect(together.contentKg.u).toBeLessThan(weighByOscillation(told).contentKg.u);
  });

  it('refuses what does not swing, and two masses that tell no spring', () => {
    const told = { periodS: sure(1.5), stiffnessNPerM: sure(606), carriageKg: sure(12.5) };
    expect(() => weighByOscillation({ ...told, periodS: sure(0) })).toThrow(OutsideRange);
    expect(() => weighByOscillation({ ...told, frameKg: sure(20) })).toThrow(OutsideRange);
    expect(() => swingPeriodS(Number.NaN, 606)).toThrow(OutsideRange);
    expect(() => springStiffnessNPerM(1, 0)).toThrow(OutsideRange);
    const swing = { massKg: sure(10), periodS: sure(1.5) };
    expect(() => calibratedBalance({ lighter: swing, heavier: swing })).toThrow(OutsideRange);
    const faster = { massKg: sure(20), periodS: sure(1.4) };
    expect(() => calibratedBalance({ lighter: swing, heavier: faster })).toThrow(OutsideRange);
  });
});
