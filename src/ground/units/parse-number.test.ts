// What the number parser takes and what it refuses.
import { describe, expect, it } from 'vitest';
import { parseNumber } from './parse-number.ts';

const thin = '\u2009';
const narrow = '\u202F';
const noBreak = '\u00A0';

function read(text: string, decimal?: 'point' | 'comma' | 'either'): number | string {
  const result = parseNumber(text, decimal === undefined ? {} : { decimal });
  return result.ok ? result.value : result.finding.code;
}

describe('numbers that have one reading', () => {
  it.each([
    ['21.4', 21.4],
    ['7,5', 7.5],
    ['8', 8],
    ['0', 0],
    ['-0', 0],
    ['+3', 3],
    ['-3', -3],
    ['\u22123,5', -3.5],
    [' 12 ', 12],
    ['0,250', 0.25],
    ['00,250', 0.25],
    ['1.234', 1.234],
    ['21.400', 21.4],
    ['1234,567', 1234.567],
    ['1,23', 1.23],
    ['1,2345', 1.2345],
    ['1 234.5', 1234.5],
    ['1 234,567', 1234.567],
    [`1${thin}234${thin}567`, 1234567],
    [`12${narrow}345`, 12345],
    [`12${noBreak}345,5`, 12345.5],
    ['1e3', 1000],
    ['2.5e-3', 0.0025],
    ['12345678901234568', 12345678901234568],
    ['0.00000000000000000001', 1e-20],
  ])('%j is %d', (text, value) => {
    expect(read(text)).toBe(value);
  });
});

describe('texts that are refused', () => {
  it.each([
    ['', 'number-missing'],
    ['   ', 'number-missing'],
    ['-', 'number-unreadable'],
    ['--5', 'number-unreadable'],
    ['+-5', 'number-unreadable'],
    ['5.', 'number-unreadable'],
    ['.5', 'number-unreadable'],
    ['5 L', 'number-unreadable'],
    ['12a', 'number-unreadable'],
    ['NaN', 'number-unreadable'],
    ['Infinity', 'number-unreadable'],
    ['0x10', 'number-unreadable'],
    ['1_000', 'number-unreadable'],
    ["1'234", 'number-unreadable'],
    ['1e+3', 'number-unreadable'],
    ['1E3', 'number-unreadable'],
    ['1e', 'number-unreadable'],
    ['1e3.5', 'number-unreadable'],
    ['1  234', 'number-unreadable'],
    ['12 34', 'number-unreadable'],
    ['1234 567', 'number-unreadable'],
    ['\u0661\u0662', 'number-unreadable'],
    ['5\n6', 'number-unreadable'],
    ['1e400', 'number-too-large'],
    ['1e-400', 'number-too-small'],
    ['123456789012345678', 'number-too-many-digits'],
    ['0.1234567890123456789', 'number-too-many-digits'],
    ['1'.repeat(65), 'input-too-long'],
    [' '.repeat(65), 'input-too-long'],
    ['9'.repeat(20_000_000), 'input-too-long'],
  ])('case %#', (text, code) => {
    expect(read(text)).toBe(code);
  });

  it.each([
    ['1,234', ['1.234', '1234']],
    ['-1,234', ['-1.234', '-1234']],
    ['999,000', ['999.000', '999000']],
    ['1.234,5', ['1.2345', '1234.5']],
    ['1,234.5', ['1.2345', '1234.5']],
    ['1,234,567', ['1.234567', '1234567']],
    ['1.234.567', ['1.234567', '1234567']],
    ['1,234e3', ['1.234e3', '1234e3']],
  ])('%j is ambiguous, with both readings named', (text, readings) => {
    const result = parseNumber(text);
    expect(result.ok).toBe(false);
    if (result.ok) return;
    expect(result.finding.code).toBe('number-ambiguous');
    expect(result.finding.data['readings']).toEqual(readings);
  });
});

describe('a field with one decimal sign', () => {
  it('takes only that sign', () => {
    expect(read('7,5', 'point')).toBe('number-separator');
    expect(read('7.5', 'comma')).toBe('number-separator');
    expect(read('7.5', 'point')).toBe(7.5);
    expect(read('7,5', 'comma')).toBe(7.5);
  });

  it('gives a comma before three digits one reading where the comma is the decimal sign', () => {
    expect(read('1,234', 'comma')).toBe(1.234);
    expect(read('1,234', 'point')).toBe('number-separator');
  });
});

it('quotes no more than a line of a long text and carries the place', () => {
  const result = parseNumber('x'.repeat(60), { where: { file: 'a.csv', line: 3 } });
  if (result.ok) throw new Error('a text without digits was taken');
  expect(String(result.finding.data['received']).length).toBeLessThanOrEqual(43);
  expect(result.finding.where).toEqual({ file: 'a.csv', line: 3 });
  expect(result.finding.severity).toBe('error');
});
