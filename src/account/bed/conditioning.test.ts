// Figures of one sample against one another: what must be seen, and what must not.
import { describe, expect, test } from 'vitest';
import { contradictions, type SampleFigure } from './conditioning.ts';

const figures = (told: Readonly<Record<string, number>>): SampleFigure[] =>
  Object.entries(told).map(([parameter, value]) => ({
    parameter,
    value,
    unit: parameter === 'conductivity' ? 'µS/cm' : 'mg/L',
    below: false,
  }));
const found = (told: Readonly<Record<string, number>>) => contradictions(figures(told));

describe('conductivity against ions', () => {
  // 0.998 mmol/L of calcium chloride: about 251 µS/cm by the same law that physics tests against CRC values.
  const salt = { calcium: 40, chloride: 70.8 };

  test('a whole analysis that fits says nothing', () => {
    expect(found({ ...salt, conductivity: 255 })).toEqual([]);
  });

  test.each([120, 400])('a meter that shows %d contradicts it, either way', (conductivity) => {
    const [one] = found({ ...salt, conductivity });
    expect(one?.of).toBe('conductivity');
    expect(one?.isWhole).toBe(true);
    expect(one?.expected).toBeGreaterThan(245);
    expect(one?.expected).toBeLessThan(262);
    expect(Math.sign(one?.inU ?? 0)).toBe(Math.sign(conductivity - 250));
  });

  test('half an analysis is a lower end: more is no contradiction, less is one', () => {
    expect(found({ calcium: 40, conductivity: 900 })).toEqual([]);
    expect(found({ calcium: 40, conductivity: 60 })[0]?.isWhole).toBe(false);
  });

  test('silver alone hardly conducts, and a trace of it contradicts nothing', () => {
    expect(found({ silver: 0.03, conductivity: 212 })).toEqual([]);
  });

  test('hardness stands in for calcium where that is not told', () => {
    expect(found({ hardness: 200, conductivity: 50 })[0]?.of).toBe('conductivity');
    expect(found({ hardness: 200, conductivity: 380 })).toEqual([]);
  });

  test('what is below a detection limit, or stronger than the law of dilute water, says nothing', () => {
    const below = figures({ calcium: 40, conductivity: 60 }).map((one) => ({
      ...one,
      below: one.parameter === 'calcium',
    }));
    expect(contradictions(below)).toEqual([]);
    expect(found({ sodium: 12_000, conductivity: 60 })).toEqual([]);
  });
});

describe('hardness against calcium and magnesium', () => {
  test('2.497 Ca + 4.118 Mg fits', () => {
    expect(found({ calcium: 40, magnesium: 5, hardness: 120.5 })).toEqual([]);
  });

  test('half of it does not', () => {
    const [one] = found({ calcium: 40, magnesium: 5, hardness: 60 });
    expect(one?.of).toBe('hardness');
    expect(one?.expected).toBeCloseTo(120.5, 1);
  });
});
