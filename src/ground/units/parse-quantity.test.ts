// Amounts with units and ±, as they are typed.
import { describe, expect, it } from 'vitest';
import { parseQuantity, type QuantityRule } from './parse-quantity.ts';

const volume: QuantityRule = { dimension: 'volume' };
const mass: QuantityRule = { dimension: 'mass' };

describe('what is taken', () => {
  it.each<[string, QuantityRule, number, number | null, string]>([
    ['8', { dimension: 'count', defaultUnit: 'strokes' }, 8, null, 'strokes'],
    ['8 strokes', { dimension: 'count' }, 8, null, 'strokes'],
    ['1 stroke', { dimension: 'count' }, 1, null, 'strokes'],
    ['200mL', volume, 200, null, 'mL'],
    ['200 mL', volume, 200, null, 'mL'],
    ['200 ml', volume, 200, null, 'mL'],
    ['200\u00A0mL', volume, 200, null, 'mL'],
    ['3l', volume, 3, null, 'L'],
    ['7,5 L', volume, 7.5, null, 'L'],
    ['0.2 m³', volume, 0.2, null, 'm3'],
    ['21.4kg+-0.05', mass, 21.4, 0.05, 'kg'],
    ['21.4\u00B10.05 kg', mass, 21.4, 0.05, 'kg'],
    ['21.4 kg ± 0.05 kg', mass, 21.4, 0.05, 'kg'],
    ['21.4 +/- 0.05 kg', mass, 21.4, 0.05, 'kg'],
    ['21,4kg+-50g', mass, 21.4, 0.05, 'kg'],
    ['21.4+-0.05', { ...mass, defaultUnit: 'kg' }, 21.4, 0.05, 'kg'],
    ['0.5bar', { dimension: 'pressure' }, 0.5, null, 'bar'],
    ['-0.5 kPa', { dimension: 'pressure' }, -0.5, null, 'kPa'],
    ['-3 degC', { dimension: 'temperature' }, -3, null, 'degC'],
    ['\u221240 °F', { dimension: 'temperature' }, -40, null, 'degF'],
    ['20 degC +- 1 K', { dimension: 'temperature' }, 20, 1, 'degC'],
    ['142uS/cm', { dimension: 'conductivity' }, 142, null, 'uS/cm'],
    ['142 \u00B5S/cm', { dimension: 'conductivity' }, 142, null, 'uS/cm'],
    ['142 \u03BCS/cm', { dimension: 'conductivity' }, 142, null, 'uS/cm'],
    ['250 µg/l', { dimension: 'concentration' }, 250, null, 'ug/L'],
    ['1e3 mL', volume, 1000, null, 'mL'],
    ['1e-3m3', volume, 0.001, null, 'm3'],
    ['12 345 mg', mass, 12345, null, 'mg'],
    ['48.5%', { dimension: 'fraction' }, 48.5, null, '%'],
    ['0.58 L/min', { dimension: 'flow' }, 0.58, null, 'L/min'],
    ['5 L', { units: ['L', 'kg'] }, 5, null, 'L'],
    ['0 L', volume, 0, null, 'L'],
  ])('%j', (text, rule, value, u95, unit) => {
    expect(parseQuantity(text, rule)).toEqual({ ok: true, quantity: { value, u95, unit } });
  });
});

describe('what is refused', () => {
  it.each<[string, QuantityRule, string]>([
    ['8', volume, 'unit-missing'],
    ['', volume, 'number-missing'],
    ['L', volume, 'number-unreadable'],
    ['NaN', volume, 'number-unreadable'],
    ['NaN L', volume, 'number-unreadable'],
    ['Infinity L', volume, 'number-unreadable'],
    ['1e400 L', volume, 'number-too-large'],
    ['1,234 L', volume, 'number-ambiguous'],
    ['200 ML', volume, 'unit-two-readings'],
    ['2 litters', volume, 'unit-unknown'],
    ['5 L 3', volume, 'unit-unknown'],
    ['0x10', volume, 'unit-unknown'],
    ['5 kPa', volume, 'unit-of-other-kind'],
    ['5 mL', { units: ['L', 'kg'] }, 'unit-of-other-kind'],
    ['-5 L', volume, 'amount-negative'],
    ['-1 stroke', { dimension: 'count' }, 'amount-negative'],
    ['5+-0 L', volume, 'doubt-not-positive'],
    ['5+--1 L', volume, 'doubt-not-positive'],
    ['5 L +- ', volume, 'number-missing'],
    ['5 L +- 1 +- 2', volume, 'number-unreadable'],
    ['5 L +- 2 kPa', volume, 'unit-of-other-kind'],
    ['5 L +- 2 %', volume, 'unit-of-other-kind'],
    [`${' '.repeat(70)}5 L`, volume, 'input-too-long'],
  ])('%j', (text, rule, code) => {
    const read = parseQuantity(text, rule);
    expect(read.ok ? read.quantity : read.finding.code).toBe(code);
  });

  it('names the nearest units and the units allowed', () => {
    const read = parseQuantity('5 KG', mass);
    if (read.ok) throw new Error('a unit of the wrong case was taken');
    expect(read.finding.data['nearest']).toContain('kg');
    expect(read.finding.data['allowed']).toEqual(['mg', 'g', 'kg', 'lb']);
  });

  it('takes a negative amount where the field says so', () => {
    expect(parseQuantity('-5 L', { ...volume, mayBeNegative: true })).toEqual({
      ok: true,
      quantity: { value: -5, u95: null, unit: 'L' },
    });
  });
});

it('demands a rule that names what the field takes', () => {
  expect(() => parseQuantity('5 L', {})).toThrow(RangeError);
});
