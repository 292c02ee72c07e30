// Shown parts add up to the shown total, and none moves by a whole unit.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { doubtAtPlace, roundParts } from './round-parts.ts';

describe('parts of a sum', () => {
  it.each([
    [[10.4, 20.4, 30.4], 61.2, 0, ['11', '20', '30']],
    [[0.05, 0.05], 0.1, -1, ['0.1', '0.0']],
    [[1, 2, 3], 6, 0, ['1', '2', '3']],
    [[14, 13, 13], 40, 1, ['20', '10', '10']],
    [[-0.4, 10.4], 10, 0, ['0', '10']],
    [[], 0, 0, []],
  ])('%j that make %d at 10^%d are %j', (parts, total, place, texts) => {
    expect(roundParts(parts, { total, place })).toEqual(texts);
  });

  it('gives nothing where the parts do not make the total', () => {
    expect(roundParts([1, 2], { total: 5, place: 0 })).toBeNull();
    expect(roundParts([1, 2], { total: 1, place: 0 })).toBeNull();
  });

  it('throws where there is no number', () => {
    expect(() => roundParts([Number.NaN], { total: 1, place: 0 })).toThrow(RangeError);
  });

  it('adds up for any parts in milligrams, and stays within a unit of each', () => {
    const milligrams = fc.array(fc.integer({ min: -5_000_000, max: 400_000_000 }), {
      minLength: 1,
      maxLength: 12,
    });
    fc.assert(
      fc.property(milligrams, fc.integer({ min: -2, max: 1 }), (parts, place) => {
        const litres = parts.map((part) => part / 1_000_000);
        const total = parts.reduce((sum, part) => sum + part, 0) / 1_000_000;
        const texts = roundParts(litres, { total, place });
        expect(texts).not.toBeNull();
        const hundredths = (texts ?? []).map((text) => Math.round(Number(text) * 100));
        const unit = [1, 10, 100, 1000][place + 2] ?? 0;
        expect(Math.abs(hundredths.reduce((sum, each) => sum + each, 0) - total * 100)).toBeLessThanOrEqual(
          unit / 2 + 1e-6,
        );
        litres.forEach((each, k) => {
          expect(Math.abs((hundredths[k] ?? 0) - each * 100)).toBeLessThanOrEqual(unit + 1e-6);
        });
      }),
    );
  });
});

describe('a ± at the place of another figure', () => {
  it.each([
    [13.4, 0, '13'],
    [0.7, 0, '1'],
    [0.3, 0, '1'],
    [0, 0, '0'],
    [0.25, -1, '0.2'],
    [4, 1, '10'],
  ])('%d at 10^%d is %s', (u95, place, text) => {
    expect(doubtAtPlace(u95, place)).toBe(text);
  });

  it('throws where it is less than nothing or no number', () => {
    expect(() => doubtAtPlace(-1, 0)).toThrow(RangeError);
    expect(() => doubtAtPlace(Number.NaN, 0)).toThrow(RangeError);
  });
});
