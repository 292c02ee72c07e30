// The plot holds the whole store, every best value, and the ends of a reading's ± as far as they say something.
import { describe, expect, test } from 'vitest';
import { oneStore } from '../../../tests/papers/sample-sheets.ts';
import { plotRange } from './plot-range.ts';

const { gauging } = oneStore;
const estimate = told(gauging.estimates[0]);
const reading = told(gauging.readings[0]);

function told<T>(value: T | undefined): T {
  if (value === undefined) throw new Error('the sample store was told of');
  return value;
}

function withReading(value: number, u95: number | null) {
  return plotRange({
    ...gauging,
    capacityL: 20,
    estimates: [],
    readings: [{ ...reading, read: { ...reading.read, value, u95 } } as typeof reading],
  });
}

describe('the range of the plot', () => {
  test('is from empty to a little above full where nothing is beyond', () => {
    expect(plotRange({ ...gauging, capacityL: 20, estimates: [], readings: [] })).toEqual([0, 20.8]);
    expect(withReading(12, 3)).toEqual([0, 20.8]);
  });

  test('reaches the end of the ± of a reading, up to three tenths above full', () => {
    expect(withReading(20, 5)).toEqual([0, 1.04 * 25]);
    expect(withReading(20, 50)).toEqual([0, 1.04 * 26]);
  });

  test('reaches every best value, however far beyond a wall', () => {
    expect(withReading(30, null)).toEqual([0, 1.04 * 30]);
    expect(withReading(-2, 1)).toEqual([-2, 20.8]);
    const believed = { ...estimate, volume: { ...estimate.volume, value: 23, u95: 40 } } as typeof estimate;
    expect(plotRange({ ...gauging, capacityL: 20, estimates: [believed], readings: [] })).toEqual([
      0,
      1.04 * 23,
    ]);
  });
});
