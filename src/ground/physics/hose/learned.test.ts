// What is learned of a hose, the band that it gives, the limit that is printed, the remainder, and the verdict on a flow.
import { describe, expect, it } from 'vitest';
import { seededChance } from '../../maths/index.ts';
import { flowVerdict } from './flow-verdict.ts';
import { HOSE_PRIOR, type HoseRun, hoseCoefficient } from './hose-coefficient.ts';
import { limitSeconds, pushBand } from './limit-times.ts';
import { neverPushedOut } from './remainder.ts';

const run = (factor: number): HoseRun => ({ predictedSeconds: 950, takenSeconds: 950 * factor });

describe('the coefficient of a hose', () => {
  it('is 1 before the first run, with the doubt of the prior', () => {
    const hose = hoseCoefficient([]);
    expect(hose).toMatchObject({ factor: 1, runs: 0 });
    expect(hose.u).toBeCloseTo(HOSE_PRIOR.factorU, 12);
  });

  it('comes close to what the runs say, and its band narrows with every run', () => {
    let width = Number.POSITIVE_INFINITY;
    let u = Number.POSITIVE_INFINITY;
    const runs: HoseRun[] = [];
    for (let count = 0; count < 12; count += 1) {
      const hose = hoseCoefficient(runs);
      const now = hose.nextRun.highFactor / hose.nextRun.lowFactor;
      expect(now).toBeLessThan(width);
      expect(hose.u).toBeLessThan(u);
      [width, u] = [now, hose.u];
      runs.push(run(count % 2 === 0 ? 1.07 : 1.09));
    }
    expect(hoseCoefficient(runs).factor).toBeCloseTo(1.08, 2);
  });

  it('does not depend on the order of the runs, and turns round with the ratio', () => {
    const runs = [1.02, 1.1, 0.97].map(run);
    const hose = hoseCoefficient(runs);
    const backwards = hoseCoefficient([...runs].reverse());
    expect(backwards.factor).toBeCloseTo(hose.factor, 14);
    const turned = hoseCoefficient(
      runs.map(({ predictedSeconds, takenSeconds }) => ({
        predictedSeconds: takenSeconds,
        takenSeconds: predictedSeconds,
      })),
    );
    expect(turned.factor * hose.factor).toBeCloseTo(1, 12);
  });

  it('believes a scatter that it sees', () => {
    const calm = hoseCoefficient([1.0, 1.01, 0.99, 1.0].map(run));
    const wild = hoseCoefficient([1.0, 1.3, 0.8, 1.1].map(run));
    expect(wild.nextRunU).toBeGreaterThan(3 * calm.nextRunU);
    expect(wild.u).toBeGreaterThan(3 * calm.u);
  });

  it('its band holds the next run in 95 of 100 histories, after few runs and after many', () => {
    const chance = seededChance({ seed: 2147 });
    for (const count of [0, 1, 2, 5, 15]) {
      let held = 0;
      const histories = 3000;
      for (let history = 0; history < histories; history += 1) {
        const truth = HOSE_PRIOR.factorU * chance.normal();
        // The scatter of a hose is itself drawn as the prior has it: s² = ν s₀² / χ².
        let squares = 0;
        for (let at = 0; at < HOSE_PRIOR.runUDegrees; at += 1) squares += chance.normal() ** 2;
        const scatter = HOSE_PRIOR.runU * Math.sqrt(HOSE_PRIOR.runUDegrees / squares);
        const draw = () => run(Math.exp(truth + scatter * chance.normal()));
        const { nextRun } = hoseCoefficient(Array.from({ length: count }, draw));
        const next = draw().takenSeconds / 950;
        if (next >= nextRun.lowFactor && next <= nextRun.highFactor) held += 1;
      }
      expect(held / histories, `${count} runs`).toBeGreaterThan(0.935);
      expect(held / histories, `${count} runs`).toBeLessThan(0.97);
    }
  });

  it.each([
    [0, 950],
    [950, 0],
    [Number.NaN, 950],
    [950, Number.POSITIVE_INFINITY],
  ])('refuses %d s predicted and %d s taken', (predictedSeconds, takenSeconds) => {
    expect(() => hoseCoefficient([{ predictedSeconds, takenSeconds }])).toThrow(RangeError);
  });
});

describe('the band of a push and its limit', () => {
  const hose = hoseCoefficient([1.04, 1.05, 1.06].map(run));

  it('lies about what is predicted times the factor, wider with a doubtful volume', () => {
    const sure = pushBand({ predictedSeconds: 950, volumeUShare: 0 }, hose);
    const doubtful = pushBand({ predictedSeconds: 950, volumeUShare: 0.05 }, hose);
    expect(sure.seconds).toBeCloseTo(950 * hose.factor, 9);
    expect(sure.earlySeconds).toBeCloseTo(950 * hose.nextRun.lowFactor, 9);
    expect(sure.lateSeconds).toBeCloseTo(950 * hose.nextRun.highFactor, 9);
    expect(doubtful.earlySeconds).toBeLessThan(sure.earlySeconds);
    expect(doubtful.lateSeconds).toBeGreaterThan(sure.lateSeconds);
    expect(doubtful.seconds).toBe(sure.seconds);
  });

  it('is early where more would do harm, late where less would leave water behind', () => {
    const band = pushBand({ predictedSeconds: 950, volumeUShare: 0.02 }, hose);
    expect(limitSeconds(band, 'over-fill')).toBe(band.earlySeconds);
    expect(limitSeconds(band, 'over-pressure')).toBe(band.earlySeconds);
    expect(limitSeconds(band, 'left behind')).toBe(band.lateSeconds);
    expect(band.earlySeconds).toBeLessThan(band.seconds);
    expect(band.lateSeconds).toBeGreaterThan(band.seconds);
  });

  it('refuses a time or a doubt that is none', () => {
    expect(() => pushBand({ predictedSeconds: -1, volumeUShare: 0 }, hose)).toThrow(RangeError);
    expect(() => pushBand({ predictedSeconds: 1, volumeUShare: Number.NaN }, hose)).toThrow(RangeError);
  });
});

describe('what is never pushed out', () => {
  const push = { waterM3: 0.2, remainderM3: 0.003, remainderUM3: 0.001, lineM3: 0.0003, reachableM3: 0.024 };

  it('is the remainder, the line, and what is beyond the gas', () => {
    expect(neverPushedOut(push)).toEqual({
      inStoreM3: 0.003,
      inLineM3: 0.0003,
      unreachedM3: 0.2 - 0.003 - 0.024,
      totalM3: 0.003 + 0.0003 + (0.2 - 0.003 - 0.024),
      uM3: 0.001,
    });
    const regulated = neverPushedOut({ ...push, reachableM3: Number.POSITIVE_INFINITY });
    expect(regulated.unreachedM3).toBe(0);
  });

  it('is never more than there is', () => {
    for (const waterM3 of [0, 0.001, 0.0031, 0.01]) {
      const left = neverPushedOut({ ...push, waterM3, reachableM3: Number.POSITIVE_INFINITY });
      expect(left.totalM3).toBeLessThanOrEqual(waterM3);
    }
  });

  it.each(['waterM3', 'remainderM3', 'remainderUM3', 'lineM3', 'reachableM3'])(
    'refuses a %s below 0',
    (name) => {
      expect(() => neverPushedOut({ ...push, [name]: -1e-9 })).toThrow(RangeError);
      expect(() => neverPushedOut({ ...push, [name]: Number.NaN })).toThrow(RangeError);
    },
  );
});

it.each([
  [0, 'kink or clogged coupling'],
  [0.69, 'kink or clogged coupling'],
  [0.71, 'as predicted'],
  [1.19, 'as predicted'],
  [1.21, 'gas in the line'],
])('a flow of %d of what was predicted: %s', (share, verdict) => {
  expect(flowVerdict({ seenM3PerS: share * 2e-5, predictedM3PerS: 2e-5 })).toBe(verdict);
});

it.each([
  [-1, 1],
  [1, 0],
  [Number.NaN, 1],
])('a flow of %d against %d says nothing', (seenM3PerS, predictedM3PerS) => {
  expect(() => flowVerdict({ seenM3PerS, predictedM3PerS })).toThrow(RangeError);
});
