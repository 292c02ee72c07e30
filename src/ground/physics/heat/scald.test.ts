// Scald times against the table that they come from, and against a curve through the same data.
import { expect, it } from 'vitest';
import tables from '../../../../tests/published/physics-scald.json' with { type: 'json' };
import { OutsideRange } from '../outside-range.ts';
import { scaldCurveC, scaldTemperatureC, scaldTimeS } from './scald.ts';

const table = tables.find(({ subject }) => subject === 'scaldTemperature');
const rows = (table?.rows ?? []).map((row) => row.map(Number));

it.each(rows)('tests/published/physics-scald.json: %d s', (timeS = Number.NaN, temperatureC = Number.NaN) => {
  expect(Math.abs(scaldCurveC(timeS) - temperatureC)).toBeLessThanOrEqual(table?.tolerance.abs ?? 0);
  expect(scaldTemperatureC(timeS)).toBeCloseTo(temperatureC, 9);
  expect(scaldTimeS(temperatureC) / timeS).toBeCloseTo(1, 9);
});

it('has found the rows', () => {
  expect(rows).toHaveLength(7);
});

it('lies between the points on a line in ln t, is shorter the hotter, and both ways agree', () => {
  expect(scaldTimeS(53)).toBeCloseTo(Math.sqrt(252 * 30), 6);
  for (let temperatureC = 45.1; temperatureC < 59.9; temperatureC += 0.1) {
    expect(scaldTimeS(temperatureC)).toBeGreaterThan(scaldTimeS(temperatureC + 0.1));
    expect(scaldTemperatureC(scaldTimeS(temperatureC))).toBeCloseTo(temperatureC, 9);
    expect(Math.abs(scaldCurveC(scaldTimeS(temperatureC)) - temperatureC)).toBeLessThan(1.4);
  }
});

it('the examples of its functions', () => {
  expect(scaldTimeS(50).toFixed(0)).toBe('389');
  expect(scaldTemperatureC(60).toFixed(1)).toBe('53.7');
  expect(scaldCurveC(30).toFixed(1)).toBe('54.6');
});

it.each([44.9, 60.1, Number.NaN])('is not known at %d °C', (temperatureC) => {
  expect(() => scaldTimeS(temperatureC)).toThrow(OutsideRange);
});

it.each([4.9, 10_801, Number.NaN])('is not known for %d s', (timeS) => {
  expect(() => scaldTemperatureC(timeS)).toThrow(OutsideRange);
  expect(() => scaldCurveC(timeS)).toThrow(OutsideRange);
});
