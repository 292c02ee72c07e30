// Rounding by GUM 7.2.6 and printing in one piece.
import { describe, expect, it } from 'vitest';
import {
  formatFigure,
  formatRange,
  roundAtPlace,
  roundCoverDays,
  roundFigure,
  roundInTwoDigits,
  roundToDigits,
} from './format-figure.ts';

/** Value, u95, and both as they must be printed. */
const cases: readonly (readonly [number, number | null, string, string | null])[] = [
  [194.2, 6.2, '194', '6'],
  [21.437, 0.41, '21.4', '0.4'],
  [1.93, 1.27, '1.9', '1.3'],
  [0.2712, 0.187, '0.27', '0.19'],
  [5, 0.0996, '5.00', '0.10'],
  [5, 0.949, '5.0', '0.9'],
  [5, 0.951, '5.0', '1.0'],
  [123.4, 19.96, '123', '20'],
  [123.4, 29.96, '123', '30'],
  [12345, 999.5, '12300', '1000'],
  [0, 0.5, '0.0', '0.5'],
  [-0.04, 0.5, '0.0', '0.5'],
  [-0.06, 0.5, '-0.1', '0.5'],
  [-21.437, 0.41, '-21.4', '0.4'],
  [-0, 3, '0', '3'],
  [0.25, 0.3, '0.2', '0.3'],
  [0.35, 0.3, '0.4', '0.3'],
  [2.5, 4, '2', '4'],
  [3.5, 4, '4', '4'],
  [-2.5, 4, '-2', '4'],
  [1.005, 0.13, '1.00', '0.13'],
  [1.015, 0.13, '1.02', '0.13'],
  [7, 0.35, '7.0', '0.4'],
  [7, 0.45, '7.0', '0.4'],
  [7, 0.125, '7.00', '0.12'],
  [10.05762, 0.027, '10.058', '0.027'],
  [1_234_567_890_123, 45_000_000, '1234570000000', '40000000'],
  [1.5e21, 2e19, '1500000000000000000000', '20000000000000000000'],
  [3e-7, 1.2e-8, '0.000000300', '0.000000012'],
  [12, 0, '12', '0'],
  [20.3, 0, '20.3', '0'],
  [20.3, null, '20.3', null],
  [1 / 3, null, '0.333333', null],
  [1234567.8, null, '1234568', null],
  [0, null, '0', null],
  [0.4, 500, '0', '500'],
];

describe('rounding', () => {
  it.each(cases)('%d and ± %d', (value, u95, valueText, u95Text) => {
    const rounded = roundFigure({ value, u95 });
    expect([rounded.value, rounded.u95]).toEqual([valueText, u95Text]);
  });

  it('has the thirty cases that were promised', () => {
    expect(cases.length).toBeGreaterThanOrEqual(30);
  });

  it('never prints minus zero and never rounds twice', () => {
    for (const [value, u95] of cases) expect(roundFigure({ value, u95 }).value).not.toMatch(/^-0(\.0*)?$/);
    // In two steps 0.4451 would go to 0.445, then 0.44 or 0.45, then 0.4 or 0.5.
    expect(roundFigure({ value: 0.4451, u95: 0.3 }).value).toBe('0.4');
    expect(roundFigure({ value: 0.4499999999, u95: 0.3 }).value).toBe('0.4');
    expect(roundFigure({ value: 0.4500000001, u95: 0.3 }).value).toBe('0.5');
  });

  it.each([Number.NaN, Number.POSITIVE_INFINITY])('throws at %d', (bad) => {
    expect(() => roundFigure({ value: bad, u95: 1 })).toThrow(RangeError);
    expect(() => roundFigure({ value: 1, u95: bad })).toThrow(RangeError);
    expect(() => roundFigure({ value: bad, u95: null })).toThrow(RangeError);
  });

  it('throws at a negative ±', () => {
    expect(() => roundFigure({ value: 1, u95: -1 })).toThrow(RangeError);
  });
});

describe('printing', () => {
  it('is ASCII in plain style', () => {
    expect(formatFigure({ value: 194.2, u95: 6.2, unit: 'L' }, { style: 'plain' })).toBe('194 +/- 6 L');
    expect(formatFigure({ value: 0.2712, u95: 0.187, unit: 'L/d' }, { style: 'plain' })).toBe(
      '0.27 +/- 0.19 L/d',
    );
    expect(formatFigure({ value: -12345, u95: 30, unit: 'uS/cm' }, { style: 'plain' })).toBe(
      '-12340 +/- 30 uS/cm',
    );
    expect(formatFigure({ value: 20.3, u95: null, unit: 'L' }, { style: 'plain' })).toBe(
      '20.3 L (+/- not known)',
    );
    expect(formatFigure({ value: 8, u95: 0, unit: 'strokes' }, { style: 'plain' })).toBe('8 +/- 0 strokes');
  });

  it('has the true signs and no space that breaks on screen', () => {
    const shown = formatFigure({ value: -12345.6, u95: 0.41, unit: 'uS/cm' }, { style: 'screen' });
    expect(shown).toBe('\u221212\u202F345.6\u00A0\u00B1\u00A00.4\u00A0\u00B5S/cm');
    expect(formatFigure({ value: 1234, u95: 3, unit: 'L' }, { style: 'screen' })).toBe(
      '1234\u00A0±\u00A03\u00A0L',
    );
    expect(formatFigure({ value: 1234567, u95: null, unit: 'mg' }, { style: 'screen' })).not.toContain(' ');
  });
});

describe('a range', () => {
  it('prints the middle and both bounds to one place', () => {
    expect(formatRange({ middle: 46.2, low: 30.4, high: 61.3, unit: 'days' }, { style: 'plain' })).toBe(
      '46 days (30 to 61)',
    );
    expect(formatRange({ middle: 4.62, low: 3.04, high: 9.13, unit: 'L' }, { style: 'plain' })).toBe(
      '4.6 L (3.0 to 9.1)',
    );
    expect(formatRange({ middle: 5, low: 5, high: 5, unit: 'd' }, { style: 'plain' })).toBe('5 d (5 to 5)');
    expect(formatRange({ middle: 46, low: 30, high: 61, unit: 'days' }, { style: 'screen' })).toBe(
      '46\u00A0days\u00A0(30\u00A0to\u00A061)',
    );
  });

  it('throws where it does not go up', () => {
    expect(() => formatRange({ middle: 3, low: 4, high: 5, unit: 'd' }, { style: 'plain' })).toThrow(
      RangeError,
    );
    expect(() => formatRange({ middle: Number.NaN, low: 4, high: 5, unit: 'd' }, { style: 'plain' })).toThrow(
      RangeError,
    );
  });
});

describe('days of cover', () => {
  it.each([
    [19.98, '19.9'],
    [20, '20'],
    [20.99, '20'],
    [30.7, '30'],
    [0.04, '0.0'],
    [0.3, '0.3'],
  ])('%d is rounded down to %s', (days, text) => {
    expect(roundCoverDays(days)).toBe(text);
  });
});

describe('a value at a place', () => {
  it.each([
    [41.0123, -1, '41.0'],
    [0.25, -1, '0.2'],
    [0.35, -1, '0.4'],
    [-0.04, -1, '0.0'],
    [1250, 2, '1200'],
    [7, 0, '7'],
  ])('%d at 10^%d is %s', (value, place, text) => {
    expect(roundAtPlace(value, place)).toBe(text);
  });

  it('throws where there is no number', () => {
    expect(() => roundAtPlace(Number.NaN, 0)).toThrow(RangeError);
  });
});

describe('two digits of the ±', () => {
  it.each([
    [173.5957, 3.168, '173.6', '3.2'],
    [341.72, 23.2, '342', '23'],
    [0.0271, 0.00949, '0.0271', '0.0095'],
    [-12.34, 96.4, '-12', '96'],
    [5, 0.096, '5.000', '0.096'],
  ])('%d ± %d', (value, u95, shown, doubt) => {
    expect(roundInTwoDigits({ value, u95 })).toMatchObject({ value: shown, u95: doubt });
  });

  it.each([0, -1, Number.NaN])('are none of %d', (u95) => {
    expect(() => roundInTwoDigits({ value: 1, u95 })).toThrow(RangeError);
  });
});

describe('so many digits of a value', () => {
  it.each([
    [318.4671, 4, '318.5'],
    [11478.6, 4, '11480'],
    [0.00551, 4, '0.00551'],
    [200, 4, '200'],
    [-0.16893, 2, '-0.17'],
    [0, 3, '0'],
  ])('%d in %d', (value, digits, shown) => {
    expect(roundToDigits(value, digits)).toBe(shown);
  });
});
