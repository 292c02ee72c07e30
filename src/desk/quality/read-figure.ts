// Reads a figure of a result as it was typed: `0.03mg/L`, `<0.05 mg/L`, `140`, `3 mg/L as N`; nothing is guessed.
import type { Body } from '../../book/index.ts';
import { parseNumber } from '../../ground/units/index.ts';
import {
  basisUnlessSaid,
  fitTogether,
  LIMIT_BASES,
  LIMIT_UNITS,
  UNITS_OF_LIMITS,
} from '../../outpost/index.ts';
import { type Answer, no, yes } from '../answer.ts';
import { deskFinding } from '../desk-finding.ts';
import { fitsUnit, type Parameter } from './parameters.ts';

export type ResultFigure = Body<'result'>['values'][number];

const squeezed = (text: string): string => text.toLowerCase().replace(/[µμ]/g, 'u').replace(/[\s°]/g, '');
const unitByName = new Map(LIMIT_UNITS.map((unit) => [squeezed(unit), unit]));
const basisByName = new Map(LIMIT_BASES.map((basis) => [squeezed(basis), basis]));

const FORM = /^\s*([<>])?\s*([-+\u2212]?\d(?:[\d.,]*\d)?(?:[eE][-+]?\d+)?)\s*(.*?)\s*$/s;
const BASIS = /(?:^|\s)((?:as|at|grown at)\s.*)$/i;

/** Of these everybody writes the bare number, and the outpost tells them in one unit. */
const BARE_KINDS: ReadonlySet<string> = new Set([
  'count',
  'acidity',
  'turbidity',
  'colour',
  'taste',
  'odour',
]);

/** @param own absent where the outpost neither measures the parameter nor has a limit for it */
export function readFigure(name: string, text: string, own: Parameter | undefined): Answer<ResultFigure> {
  const units = own === undefined ? LIMIT_UNITS : own.units;
  const refuse = (why: string, more: Readonly<Record<string, readonly string[] | number>> = {}) => {
    const data = { parameter: name.slice(0, 80), received: text.slice(0, 60), why, units, ...more };
    return no('bad input', deskFinding('figure-unread', data, { where: { field: name.slice(0, 80) } }));
  };
  const match = FORM.exec(text);
  if (match === null) return refuse('number');
  const [, sign, digits = '', rest = ''] = match;
  const number = parseNumber(digits, { where: { field: name } });
  if (!number.ok) return no('bad input', number.finding);
  if (number.value < 0) return refuse('negative');
  const saidBasis = BASIS.exec(rest)?.[1];
  const saidUnit = saidBasis === undefined ? rest : rest.slice(0, rest.length - saidBasis.length).trim();
  const unit = saidUnit === '' ? bareUnit(own) : unitByName.get(squeezed(saidUnit));
  if (unit === undefined) return refuse(saidUnit === '' ? 'unit missing' : 'unit unknown');
  if (!fitsUnit(own, unit)) return refuse('unit does not fit');
  const { most } = UNITS_OF_LIMITS.get(unit) ?? { most: 0 };
  if (number.value > most) return refuse('too large', { most });
  const basis = saidBasis === undefined ? basisUnlessSaid(name) : basisByName.get(squeezed(saidBasis));
  if (basis === undefined)
    return refuse(saidBasis === undefined ? 'basis missing' : 'basis unknown', { bases: basesOf(unit) });
  if (!fitTogether(unit, basis)) return refuse('basis does not fit', { bases: basesOf(unit) });
  return yes({
    parameter: name,
    value: number.value,
    unit,
    ...(sign === '<' && { below: true }),
    ...(sign === '>' && { above: true }),
    ...(basis !== basisUnlessSaid(name) && { basis }),
  });
}

function bareUnit(own: Parameter | undefined): string | undefined {
  const [unit] = own?.units ?? [];
  const kind = unit === undefined ? undefined : UNITS_OF_LIMITS.get(unit)?.kind;
  return kind !== undefined && BARE_KINDS.has(kind) ? unit : undefined;
}

function basesOf(unit: string): readonly string[] {
  return LIMIT_BASES.filter((basis) => fitTogether(unit, basis));
}
