// Steps of differential equations: closed forms, the order of the method, crossings, and what is refused.
import { expect, test } from 'vitest';
import { cos, sin } from './circle.ts';
import { type Crossing, DormandPrince, type Slopes, type StepRules } from './dormand-prince.ts';
import { exp } from './exponential.ts';
import { log } from './logarithm.ts';

const decay: Slopes = (_t, y, slope) => {
  slope[0] = -(y[0] as number);
};
const turn: Slopes = (_t, y, slope) => {
  slope[0] = y[1] as number;
  slope[1] = -(y[0] as number);
};

function carried(of: Slopes, start: readonly number[], to: number, rules?: StepRules) {
  const y = new Float64Array(start);
  const run = new DormandPrince(start.length, of, rules).run(y, { from: 0, to });
  return { y, run };
}

test('decay and rotation agree with their closed forms within the error allowed', () => {
  expect(carried(decay, [1], 5).y[0]).toBeCloseTo(exp(-5), 11);
  const { y, run } = carried(turn, [0, 1], 20);
  expect(y[0]).toBeCloseTo(sin(20), 8);
  expect(y[1]).toBeCloseTo(cos(20), 8);
  expect(run).toMatchObject({ t: 20, stoppedBy: 'end' });
});

test('a tenth of the error allowed costs a fraction more: the order is five', () => {
  const errors = [1e-6, 1e-9].map((relativeError) => {
    const { y, run } = carried(turn, [0, 1], 20, { relativeError, absoluteError: relativeError });
    return { error: Math.abs((y[0] as number) - sin(20)), steps: run.steps };
  });
  const [rough, fine] = errors as [{ error: number; steps: number }, { error: number; steps: number }];
  expect(fine.error).toBeLessThan(rough.error / 100);
  // A thousandth of the error at order five: 1000^(1/5) is 4.
  expect(fine.steps / rough.steps).toBeGreaterThan(3);
  expect(fine.steps / rough.steps).toBeLessThan(5);
});

test('a polynomial of the fourth degree is exact in one step', () => {
  const { y } = carried(
    (t, _y, slope) => {
      slope[0] = 5 * t * t * t * t;
    },
    [0],
    3,
    { firstStep: 3 },
  );
  expect(y[0]).toBeCloseTo(243, 10);
});

test('stops where a crossing lies', () => {
  const y = new Float64Array([1]);
  const half: Crossing = (_t, state) => (state[0] as number) - 0.5;
  const run = new DormandPrince(1, decay).run(y, { from: 0, to: Number.POSITIVE_INFINITY }, half);
  expect(run.stoppedBy).toBe('crossing');
  expect(run.t).toBeCloseTo(log(2), 10);
  expect(y[0]).toBeCloseTo(0.5, 14);
});

test('a crossing at the start stops at once, one beyond the end does not', () => {
  const solver = new DormandPrince(1, decay);
  expect(solver.run(new Float64Array([1]), { from: 0, to: 1 }, () => 0)).toMatchObject({ t: 0, steps: 0 });
  const run = solver.run(new Float64Array([1]), { from: 0, to: 0.1 }, (_t, y) => (y[0] as number) - 0.5);
  expect(run).toMatchObject({ t: 0.1, stoppedBy: 'end' });
});

test('a tank that empties through a hole: the time of the closed form', () => {
  // h' = -k √h from 0.8 is empty at 2 √0.8 / k.
  const y = new Float64Array([0.8]);
  const drain: Slopes = (_t, state, slope) => {
    slope[0] = -0.01 * Math.sqrt(Math.max(0, state[0] as number));
  };
  const low: Crossing = (_t, state) => (state[0] as number) - 0.2;
  const run = new DormandPrince(1, drain).run(y, { from: 0, to: Number.POSITIVE_INFINITY }, low);
  expect(run.t).toBeCloseTo((2 * (Math.sqrt(0.8) - Math.sqrt(0.2))) / 0.01, 7);
});

test('from where to where nothing changes', () => {
  expect(carried(decay, [1], 0).y[0]).toBe(1);
  expect(carried((_t, _y, slope) => slope.fill(0), [7, 8], 1e6).y).toEqual(new Float64Array([7, 8]));
});

test('a jolt is met by shorter steps, not stepped over', () => {
  const jolt: Slopes = (t, _y, slope) => {
    slope[0] = t > 0.5 ? 1000 : 1;
  };
  const { y, run } = carried(jolt, [0], 1);
  expect(y[0]).toBeCloseTo(500.5, 6);
  expect(run.refused).toBeGreaterThan(0);
});

test('the same bits every time, also with an integrator used before', () => {
  const solver = new DormandPrince(2, turn);
  const first = new Float64Array([0, 1]);
  const second = new Float64Array([0, 1]);
  solver.run(first, { from: 0, to: 7 });
  solver.run(second, { from: 0, to: 7 });
  expect(second).toEqual(first);
});

test('no number, no end, no room, too many steps: refused', () => {
  const none: Slopes = (t, _y, slope) => {
    slope[0] = t > 0.5 ? Number.NaN : 1;
  };
  expect(() => carried(none, [0], 1)).toThrow(RangeError);
  expect(() => carried(() => undefined, [Number.NaN], 1)).toThrow(RangeError);
  expect(() => carried(decay, [1], Number.POSITIVE_INFINITY)).toThrow(RangeError);
  expect(() => carried(decay, [1], -1)).toThrow(RangeError);
  expect(() => carried(decay, [1], Number.NaN)).toThrow(RangeError);
  expect(() => carried(turn, [0, 1], 1e4, { mostSteps: 10 })).toThrow(/more than 10 steps/);
  expect(() => new DormandPrince(0, decay)).toThrow(RangeError);
  expect(() => new DormandPrince(1, decay, { relativeError: 0, absoluteError: 0 })).toThrow(RangeError);
  expect(() =>
    new DormandPrince(1, decay).run(new Float64Array([1]), { from: 0, to: 1 }, () => Number.NaN),
  ).toThrow(RangeError);
});
