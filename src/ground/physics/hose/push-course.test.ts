// Pushes whose pressure changes: closed forms, limits, both bounds of a blow-down, and what is refused.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { blowDown, quadraticBlowDownSeconds } from './blow-down.ts';
import { drivingPa, type Push, pushedAfter, pushTime, reachableM3 } from './push-course.ts';
import { regulatedPush } from './regulated-push.ts';

const water = { densityKgPerM3: 1000, viscosityPaS: 1e-3 };
/** K of Q = K √Δp for a coupling alone: Kv / (3600 √1e5). */
const flowPerRootPa = 0.5 / 3600 / Math.sqrt(1e5);
const coupling = { lengthM: 0, boreM: 0.01, roughnessM: 0, minorLoss: 0, couplingsKv: [0.5] };
const hose = { lengthM: 6, boreM: 0.008, roughnessM: 1.5e-6, minorLoss: 3, couplingsKv: [0.6, 0.6] };
const cabinPa = 101_325;
const gas = { kind: 'blow-down', pressurePa: 150e3, gasM3: 0.05, exponent: 1 } as const;

const seconds = (push: Push, volumeM3: number): number => {
  const outcome = pushTime(push, volumeM3);
  if (!outcome.arrives) throw new Error(`only ${outcome.reachableM3} m³ are within reach`);
  return outcome.seconds;
};

describe('closed forms', () => {
  it('a constant pressure takes as long as the regulated push', () => {
    const push: Push = {
      line: hose,
      water,
      source: { kind: 'regulated', pressurePa: cabinPa + 5e4 },
      againstPa: cabinPa,
    };
    const plain = regulatedPush({ line: hose, water, drivingPa: 5e4, volumeM3: 0.02 }).seconds;
    expect(seconds(push, 0.02) / plain).toBeCloseTo(1, 10);
    expect(reachableM3(push)).toBe(Number.POSITIVE_INFINITY);
  });

  it('a bag that stretches: t = 2/(K s) (√p₀ − √(p₀ − s V)), after its slack', () => {
    const push: Push = {
      line: coupling,
      water,
      source: { kind: 'regulated', pressurePa: cabinPa + 5e4 },
      againstPa: cabinPa,
      risePaPerM3: 1e6,
      slackM3: 0.01,
    };
    const slack = 0.01 / (flowPerRootPa * Math.sqrt(5e4));
    const stretching = (2 / (flowPerRootPa * 1e6)) * (Math.sqrt(5e4) - Math.sqrt(5e4 - 1e6 * 0.03));
    expect(seconds(push, 0.04)).toBeCloseTo(slack + stretching, 5);
    expect(reachableM3(push)).toBeCloseTo(0.06, 12);
  });

  it('gas at constant temperature through a coupling alone', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1.05, max: 4, noNaN: true }),
        fc.double({ min: 0.01, max: 0.99, noNaN: true }),
        (over, share) => {
          const push: Push = {
            line: coupling,
            water,
            source: { ...gas, pressurePa: over * cabinPa },
            againstPa: cabinPa,
          };
          const volumeM3 = share * reachableM3(push);
          const closed = quadraticBlowDownSeconds(
            { pressurePa: over * cabinPa, gasM3: 0.05, againstPa: cabinPa, flowPerRootPa },
            0.05 + volumeM3,
          );
          expect(Math.abs(seconds(push, volumeM3) / closed - 1)).toBeLessThan(1e-8);
        },
      ),
      { numRuns: 60, seed: 61 },
    );
  });

  it('time and volume are the inverse of each other, through a hose with every regime on the way', () => {
    const push: Push = { line: hose, water, source: gas, againstPa: cabinPa };
    for (const volumeM3 of [0.001, 0.01, 0.02, 0.0238])
      expect(pushedAfter(push, seconds(push, volumeM3)) / volumeM3).toBeCloseTo(1, 7);
    expect(pushedAfter(push, 0)).toBe(0);
    expect(pushTime(push, 0)).toMatchObject({ arrives: true, seconds: 0 });
  });
});

describe('what is within reach', () => {
  const push: Push = { line: hose, water, source: gas, againstPa: cabinPa };

  it('is where the pressures are in balance, by gas, by bag or by both', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 1.4, noNaN: true }),
        fc.double({ min: 0, max: 5e6, noNaN: true }),
        fc.double({ min: 0, max: 0.01, noNaN: true }),
        (exponent, risePaPerM3, slackM3) => {
          const any: Push = { ...push, source: { ...gas, exponent }, risePaPerM3, slackM3 };
          const limitM3 = reachableM3(any);
          expect(Math.abs(drivingPa(any, limitM3))).toBeLessThan(1e-6);
          expect(drivingPa(any, limitM3 * 0.999)).toBeGreaterThan(0);
        },
      ),
      { seed: 62 },
    );
  });

  it('a volume beyond it does not arrive, and the answer says how much does', () => {
    expect(pushTime(push, 0.03)).toEqual({ arrives: false, reachableM3: reachableM3(push) });
    expect(reachableM3(push)).toBeCloseTo((0.05 * 150e3) / cabinPa - 0.05, 12);
    expect(pushTime(push, reachableM3(push)).arrives).toBe(false);
  });

  it('is nothing if the gas does not press at all', () => {
    const slack = { ...push, againstPa: 160e3 };
    expect(reachableM3(slack)).toBe(0);
    expect(pushTime(slack, 0.001)).toEqual({ arrives: false, reachableM3: 0 });
  });
});

it('a blow-down lies between slow and sudden: the sudden one is later and ends sooner', () => {
  const push = { line: hose, water, againstPa: cabinPa, gas: { pressurePa: 150e3, gasM3: 0.05 } };
  const near = blowDown(push, 0.01);
  if (!near.slow.arrives || !near.sudden.arrives) throw new Error('both arrive');
  expect(near.sudden.seconds).toBeGreaterThan(near.slow.seconds);
  expect(near.sudden.endDrivingPa).toBeLessThan(near.slow.endDrivingPa);
  const far = blowDown(push, 0.02);
  expect(far.slow.arrives).toBe(true);
  expect(far.sudden.arrives).toBe(false);
  // Between the bounds time only grows with the exponent.
  let before = 0;
  for (const exponent of [1, 1.1, 1.2, 1.3, 1.4]) {
    const time = seconds({ line: hose, water, againstPa: cabinPa, source: { ...gas, exponent } }, 0.01);
    expect(time).toBeGreaterThan(before);
    before = time;
  }
});

it.each<[string, () => unknown]>([
  ['gas without a pressure', () => reachableM3({ ...base(), source: { ...gas, pressurePa: 0 } })],
  ['gas without a volume', () => pushTime({ ...base(), source: { ...gas, gasM3: Number.NaN } }, 0.01)],
  ['an exponent below 1', () => pushTime({ ...base(), source: { ...gas, exponent: 0.9 } }, 0.01)],
  ['an exponent above 1.4', () => pushTime({ ...base(), source: { ...gas, exponent: 1.5 } }, 0.01)],
  ['a bag that shrinks', () => pushTime({ ...base(), risePaPerM3: -1 }, 0.01)],
  ['a slack below 0', () => drivingPa({ ...base(), slackM3: -1 }, 0.01)],
  ['no pressure at the other end', () => drivingPa({ ...base(), againstPa: 0 }, 0)],
  ['a volume below 0', () => pushTime(base(), -1)],
  ['a volume without a number', () => drivingPa(base(), Number.NaN)],
  ['a time below 0', () => pushedAfter(base(), -1)],
  ['a time without a number', () => pushedAfter(base(), Number.NaN)],
  ['a push that does not press', () => pushedAfter({ ...base(), againstPa: 2e5 }, 1)],
  [
    'a line that holds nothing back',
    () => pushTime({ ...base(), line: { ...coupling, couplingsKv: [] } }, 0.01),
  ],
  ['a closed form beyond the balance', () => quadraticBlowDownSeconds(closed(), 0.1)],
  ['a closed form before the start', () => quadraticBlowDownSeconds(closed(), 0.04)],
  ['a closed form without a flow', () => quadraticBlowDownSeconds({ ...closed(), flowPerRootPa: 0 }, 0.06)],
])('%s is refused', (_name, run) => {
  expect(run).toThrow(RangeError);
});

function base(): Push {
  return { line: hose, water, source: gas, againstPa: cabinPa };
}

function closed() {
  return { pressurePa: 150e3, gasM3: 0.05, againstPa: cabinPa, flowPerRootPa };
}
