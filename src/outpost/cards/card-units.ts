// Table of the units that a card may tell values in, with what each measures and its factor to the base unit of the SI.
import { type QuantityType, quantityType } from './formula/quantity-type.ts';

interface UnitLine {
  readonly type: QuantityType;
  /** What one of it is in the SI. */
  readonly si: number;
  /** What is added before the factor: only °C has it. */
  readonly shift?: number;
}

const VOLUME = quantityType({ m: 3 });
const MASS = quantityType({ kg: 1 });
const LENGTH = quantityType({ m: 1 });
const PRESSURE = quantityType({ kg: 1, m: -1, s: -2 });
const WARMTH = quantityType({ K: 1 });
const TIME = quantityType({ s: 1 });
const FLOW = quantityType({ m: 3, s: -1 });
const CONCENTRATION = quantityType({ kg: 1, m: -3 });
const PLAIN = quantityType({});

/** "abs" and "over cabin" stand in the unit: a pressure without its zero is half a pressure. A bare kPa is a difference. */
const LINES = {
  L: { si: 1e-3, type: VOLUME },
  mL: { si: 1e-6, type: VOLUME },
  m3: { si: 1, type: VOLUME },
  kg: { si: 1, type: MASS },
  g: { si: 1e-3, type: MASS },
  m: { si: 1, type: LENGTH },
  mm: { si: 1e-3, type: LENGTH },
  um: { si: 1e-6, type: LENGTH },
  'kPa abs': { si: 1e3, type: { ...PRESSURE, point: true } },
  'kPa over cabin': { si: 1e3, type: PRESSURE },
  kPa: { si: 1e3, type: PRESSURE },
  '°C': { si: 1, shift: 273.15, type: { ...WARMTH, point: true } },
  K: { si: 1, type: WARMTH },
  s: { si: 1, type: TIME },
  min: { si: 60, type: TIME },
  h: { si: 3600, type: TIME },
  d: { si: 86_400, type: TIME },
  'L/min': { si: 1e-3 / 60, type: FLOW },
  'm3/h': { si: 1 / 3600, type: FLOW },
  'mg/L': { si: 1e-3, type: CONCENTRATION },
  'µg/L': { si: 1e-6, type: CONCENTRATION },
  'kg/m3': { si: 1, type: CONCENTRATION },
  'µS/cm': { si: 1e-4, type: quantityType({ S: 1, m: -1 }) },
  'CFU/mL': { si: 1e6, type: quantityType({ cfu: 1, m: -3 }) },
  strokes: { si: 1, type: quantityType({ n: 1 }) },
  'mL/stroke': { si: 1e-6, type: quantityType({ m: 3, n: -1 }) },
  W: { si: 1, type: quantityType({ kg: 1, m: 2, s: -3 }) },
  'W/K': { si: 1, type: quantityType({ kg: 1, m: 2, s: -3, K: -1 }) },
  '%': { si: 0.01, type: PLAIN },
  plain: { si: 1, type: PLAIN },
} as const satisfies Readonly<Record<string, UnitLine>>;

export type CardUnit = keyof typeof LINES;

export const CARD_UNITS = Object.keys(LINES) as [CardUnit, ...CardUnit[]];

/** Longest first, so that `mg/L` is never read as mg and a division. `plain` is written by no sign. */
export const UNITS_IN_FORMULAS: readonly CardUnit[] = CARD_UNITS.filter((name) => name !== 'plain').sort(
  (a, b) => b.length - a.length,
);

const lineOf = (unit: CardUnit): UnitLine => LINES[unit];

export function typeOfUnit(unit: CardUnit): QuantityType {
  return lineOf(unit).type;
}

/** @example toSi(20, '°C') // 293.15 */
export function toSi(value: number, unit: CardUnit): number {
  const { si, shift = 0 } = lineOf(unit);
  return (value + shift) * si;
}

export function fromSi(si: number, unit: CardUnit): number {
  return si / lineOf(unit).si - (lineOf(unit).shift ?? 0);
}

/** A doubt or a difference: the zero of a scale does not bear on it. */
export function spanToSi(span: number, unit: CardUnit): number {
  return span * lineOf(unit).si;
}

export function spanFromSi(si: number, unit: CardUnit): number {
  return si / lineOf(unit).si;
}
