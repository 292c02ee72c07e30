// Reads an amount with its unit and, where given, its ± (95 %): `200mL`, `21.4kg+-0.05`, `7,5 L`.
import { convertDifference } from './convert.ts';
import type { Figure } from './figure.ts';
import type { Where } from './finding.ts';
import { nearest } from './nearest.ts';
import { parseNumber } from './parse-number.ts';
import { quoted, type Read, refuse } from './quantity-finding.ts';
import { type Dimension, findUnit, type Unit, unitNamed, unitNamesOf } from './unit-table.ts';

export interface QuantityRule {
  /** The kind that the field measures; give this or `units`. */
  readonly dimension?: Dimension;
  /** The names of the units that the field takes. */
  readonly units?: readonly string[];
  /** What a bare number means; without it a bare number is refused. */
  readonly defaultUnit?: string;
  readonly decimal?: 'point' | 'comma' | 'either';
  /** Whether less than zero is taken; by default only for temperatures and pressures. */
  readonly mayBeNegative?: boolean;
  readonly where?: Where;
}

const longestInput = 64;
const doubtMark = /\u00B1|\+\/-|\+-|\+\/\u2212|\+\u2212/;
const unitStart = /[A-Za-z\u00B0\u00B5\u03BC\u2103\u2109%]/;
const exponent = /\de-?\d/;

/**
 * Reads a quantity. The figure's unit is the table's ASCII name of the unit typed; nothing is converted but a ± that was
 * typed in another unit than its value.
 * @example parseQuantity('21.4kg+-0.05', { dimension: 'mass' }) // { ok: true, quantity: { value: 21.4, u95: 0.05, unit: 'kg' } }
 */
export function parseQuantity(text: string, rule: QuantityRule): Read<'quantity', Figure> {
  const where = rule.where ?? {};
  if (text.length > longestInput) {
    return refuse('input-too-long', where, {
      received: quoted(text),
      length: text.length,
      longest: longestInput,
    });
  }
  const mark = doubtMark.exec(text);
  const valuePart = split(mark === null ? text : text.slice(0, mark.index));
  const doubtPart = mark === null ? null : split(text.slice(mark.index + mark[0].length));
  const value = parseNumber(valuePart.number, numberRule(rule));
  if (!value.ok) return unreadableWhole(text, valuePart, value, where);
  // In `21.4 ± 0.05 kg` the one unit belongs to both numbers.
  const unit = readUnit(valuePart.unit || (doubtPart?.unit ?? ''), text, rule);
  if (!unit.ok) return unit;
  if (value.value < 0 && !mayBeNegative(rule, unit.unit)) {
    return refuse('amount-negative', where, { received: text.trim(), unit: unit.unit.name });
  }
  if (doubtPart === null)
    return { ok: true, quantity: { value: value.value, u95: null, unit: unit.unit.name } };
  const u95 = readDoubt(doubtPart, unit.unit, text, rule);
  return u95.ok ? { ok: true, quantity: { value: value.value, u95: u95.value, unit: unit.unit.name } } : u95;
}

interface Split {
  readonly number: string;
  readonly unit: string;
}

/** The unit begins at the first letter or sign that is not the `e` of an exponent. */
function split(text: string): Split {
  const power = exponent.exec(text);
  const from = power !== null && power.index + 1 === text.search(unitStart) ? power.index + 2 : 0;
  const start = text.slice(from).search(unitStart);
  if (start < 0) return { number: text, unit: '' };
  return { number: text.slice(0, from + start), unit: text.slice(from + start).trim() };
}

/** A text such as `NaN` or `many` has no number in it at all: quote it whole. */
function unreadableWhole(
  text: string,
  part: Split,
  refused: Read<'value', number>,
  where: Where,
): Read<'quantity', Figure> {
  if (part.number.trim() === '' && part.unit !== '')
    return refuse('number-unreadable', where, { received: quoted(text.trim()) });
  return refused as Read<'quantity', Figure>;
}

function numberRule(rule: QuantityRule): { decimal: 'point' | 'comma' | 'either'; where: Where } {
  return { decimal: rule.decimal ?? 'either', where: rule.where ?? {} };
}

function mayBeNegative(rule: QuantityRule, unit: Unit): boolean {
  return rule.mayBeNegative ?? (unit.dimension === 'temperature' || unit.dimension === 'pressure');
}

function allowedUnits(rule: QuantityRule): readonly string[] {
  const units = rule.units ?? (rule.dimension === undefined ? undefined : unitNamesOf(rule.dimension));
  if (units === undefined) throw new RangeError('a field for a quantity names its dimension or its units');
  return units;
}

function readUnit(name: string, text: string, rule: QuantityRule): Read<'unit', Unit> {
  const where = rule.where ?? {};
  const allowed = allowedUnits(rule);
  const received = text.trim();
  if (name === '') {
    if (rule.defaultUnit !== undefined) return { ok: true, unit: unitNamed(rule.defaultUnit) };
    return refuse('unit-missing', where, { received, allowed });
  }
  // A capital M is the prefix mega: nobody means a million litres, but nobody else may decide that.
  if (/^ML(\/|$)/.test(name))
    return refuse('unit-two-readings', where, {
      received,
      unit: name,
      nearest: [name.replace('ML', 'mL')],
      allowed,
    });
  const unit = findUnit(name);
  if (unit === undefined) {
    return refuse('unit-unknown', where, {
      received,
      unit: quoted(name),
      nearest: nearest(name, allowed),
      allowed,
    });
  }
  if (!allowed.includes(unit.name)) {
    return refuse('unit-of-other-kind', where, { received, unit: unit.name, kind: unit.dimension, allowed });
  }
  return { ok: true, unit };
}

function readDoubt(part: Split, valueUnit: Unit, text: string, rule: QuantityRule): Read<'value', number> {
  const where = rule.where ?? {};
  const typed = parseNumber(part.number, numberRule(rule));
  if (!typed.ok) return typed;
  if (!(typed.value > 0)) return refuse('doubt-not-positive', where, { received: text.trim() });
  if (part.unit === '') return typed;
  const unit = readUnit(part.unit, text, rule);
  if (!unit.ok) return unit;
  if (unit.unit.dimension !== valueUnit.dimension) {
    return refuse('unit-of-other-kind', where, {
      received: text.trim(),
      unit: unit.unit.name,
      kind: unit.unit.dimension,
      allowed: unitNamesOf(valueUnit.dimension),
    });
  }
  return { ok: true, value: convertDifference(typed.value, unit.unit.name, valueUnit.name) };
}
