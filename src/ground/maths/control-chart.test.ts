// Control charts: the constant of the ranges, what a shift and a scale do, and which runs are signals and which are not.
import { describe, expect, it } from 'vitest';
import { seededChance } from './chance.ts';
import { individualsChart, RANGE_OF_TWO } from './individuals-chart.ts';
import { normalQuantile } from './normal-distribution.ts';
import { type ChartedValue, runSignals, SAME_SIDE, STEADY } from './run-rules.ts';

const limits = { centre: 10, low: 4, high: 16 };
const row = (values: readonly number[], more: Partial<ChartedValue> = {}): readonly ChartedValue[] =>
  values.map((value) => ({ value, censored: 'no', afterGap: false, ...more }));
const rulesOf = (values: readonly ChartedValue[]) =>
  runSignals(values, limits).map(({ rule, from, to, side }) => [rule, from, to, side]);

describe('limits of individuals', () => {
  it('rest on the mean range of two normal numbers, which is 2/√π', () => {
    const chance = seededChance({ seed: 4 });
    const draws = 200_000;
    let sum = 0;
    for (let draw = 0; draw < draws; draw += 1)
      sum += Math.abs(normalQuantile(chance.uniform()) - normalQuantile(chance.uniform()));
    // One standard deviation of this mean is 0.853 / √200000 = 0.0019.
    expect(Math.abs(sum / draws - 2 / Math.sqrt(Math.PI))).toBeLessThan(0.006);
    expect(Math.abs(RANGE_OF_TWO - 2 / Math.sqrt(Math.PI))).toBeLessThan(0.0005);
    expect((3 / RANGE_OF_TWO).toFixed(2)).toBe('2.66');
  });

  it('move and grow with the values', () => {
    const values = [3, 5, 4, 8, 6];
    const one = individualsChart([values]);
    const other = individualsChart([values.map((value) => 10 + 2 * value)]);
    expect(other?.centre).toBeCloseTo(10 + 2 * (one?.centre ?? 0), 12);
    expect(other?.sigma).toBeCloseTo(2 * (one?.sigma ?? 0), 12);
  });

  it('take no range over a gap', () => {
    const chart = individualsChart([
      [1, 2, 1],
      [100, 101],
    ]);
    expect(chart).toMatchObject({ meanRange: 1, ranges: 3, values: 5 });
  });

  it('are none without neighbours, and refuse what is no number', () => {
    expect(individualsChart([[1], [2]])).toBeNull();
    expect(individualsChart([])).toBeNull();
    expect(() => individualsChart([[1, Number.NaN]])).toThrow(RangeError);
  });
});

describe('run rules', () => {
  it('tell a value beyond the limits, on which side, and not one on the limit', () => {
    expect(rulesOf(row([10, 17, 10, 3, 16, 4]))).toEqual([
      ['beyond the limits', 1, 1, 'high'],
      ['beyond the limits', 3, 3, 'low'],
    ]);
  });

  it('tell eight on one side once, whole, and not seven', () => {
    const seven = row([11, 12, 11, 12, 11, 12, 11]);
    expect(rulesOf(seven)).toEqual([]);
    expect(rulesOf([...seven, ...row([13, 12, 9])])).toEqual([['on one side', 0, SAME_SIDE, 'high']]);
  });

  it('tell six rising, and six falling, and not five', () => {
    expect(rulesOf(row([7, 8, 9, 11, 12]))).toEqual([]);
    expect(rulesOf(row([7, 8, 9, 11, 12, 13, 12]))).toEqual([['rising', 0, STEADY - 1, null]]);
    expect(rulesOf(row([14, 13, 12, 9, 8, 7]))).toEqual([['falling', 0, 5, null]]);
    expect(rulesOf(row([7, 8, 9, 9, 12, 13]))).toEqual([]);
  });

  it('end at a gap', () => {
    const [first = [], second = []] = [row([7, 8, 9]), row([11, 12, 13])];
    const [head, ...rest] = second;
    expect(rulesOf([...first, { ...(head as ChartedValue), afterGap: true }, ...rest])).toEqual([]);
    const high = row([11, 12, 11, 12]);
    const [start, ...others] = high;
    expect(rulesOf([...high, { ...(start as ChartedValue), afterGap: true }, ...others])).toEqual([]);
  });

  it('take a censored value for no more than it is', () => {
    // Less than 20 may be anything; more than 20 is beyond; less than 3 is below.
    expect(rulesOf(row([20], { censored: 'below' }))).toEqual([]);
    expect(rulesOf(row([20], { censored: 'above' }))).toEqual([['beyond the limits', 0, 0, 'high']]);
    expect(rulesOf(row([3], { censored: 'below' }))).toEqual([['beyond the limits', 0, 0, 'low']]);
    expect(rulesOf(row([3], { censored: 'above' }))).toEqual([]);
    const eight = row([9, 9, 9, 9, 9, 9, 9, 9], { censored: 'below' });
    expect(rulesOf(eight)).toEqual([['on one side', 0, 7, 'low']]);
    expect(rulesOf(row([12, 12, 12, 12, 12, 12, 12, 12], { censored: 'below' }))).toEqual([]);
    expect(rulesOf(row([5, 6, 7, 8, 9, 9.5], { censored: 'below' }))).toEqual([]);
  });
});
