// Figures and times of the invented sheets: litres and kilograms at one density.
import type { Because, SheetFigure } from '../../src/papers/index.ts';

const DENSITY = 0.9978;
export const at = (day: number, hour: number, minute = 0): number => Date.UTC(2147, 2, day, hour, minute);
export const because: Because = {
  entries: ['0f000000-0000-7000-8000-000000000001'],
  method: 'stock-sum',
  inputs: [{ name: 'density', value: 997.8, unit: 'kg/m3' }],
};
export const volume = (value: number, u95: number | null): SheetFigure => ({
  value,
  u95,
  unit: 'L',
  because,
});
export const mass = (value: number, u95: number | null): SheetFigure => ({
  value: value * DENSITY,
  u95: u95 === null ? null : u95 * DENSITY,
  unit: 'kg',
  because,
});
