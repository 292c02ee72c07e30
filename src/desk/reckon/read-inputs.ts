// From what was typed to numbers with their doubt, in the units that a calculator works with.
import {
  convert,
  convertDifference,
  type Finding,
  parseNumber,
  parseQuantity,
  type Where,
} from '../../ground/units/index.ts';
import { deskFinding } from '../desk-finding.ts';
import type { QuantitySpec } from './input-spec.ts';
import type { Input } from './inputs.ts';

export type InputsRead =
  | { readonly ok: true; readonly inputs: readonly Input[] }
  | { readonly ok: false; readonly findings: readonly Finding[] };

/** Every text that was typed for a quantity; the findings of all of them together. */
export function readTyped(
  specs: readonly QuantitySpec[],
  typed: Readonly<Record<string, string>>,
): InputsRead {
  const inputs: Input[] = [];
  const findings: Finding[] = [];
  for (const spec of specs) {
    const text = typed[spec.name];
    if (text === undefined || spec.hidden === true) continue;
    const pieces = spec.many === true ? text.split(',').map((piece) => piece.trim()) : [text.trim()];
    for (const piece of pieces) {
      const read = readOne(spec, piece);
      if (read.ok) inputs.push(read.input);
      else findings.push(...read.findings);
    }
  }
  return findings.length > 0 ? { ok: false, findings } : { ok: true, inputs };
}

type OneRead =
  | { readonly ok: true; readonly input: Input }
  | { readonly ok: false; readonly findings: readonly Finding[] };

function readOne(spec: QuantitySpec, text: string): OneRead {
  const where: Where = { field: spec.name };
  const read = spec.dimension === 'plain' ? readPlain(text, where) : readWithUnit(spec, text, where);
  if (!read.ok) return read;
  const { value, u95 } = read;
  const low = spec.mayBeNegative === true || spec.dimension === 'temperature' ? null : 0;
  if (low !== null && (spec.positive === true ? !(value > 0) : value < 0)) {
    const wanted = spec.positive === true ? 'above' : 'from';
    return {
      ok: false,
      findings: [deskFinding('reckon-not-positive', { input: spec.name, received: text, wanted }, { where })],
    };
  }
  if (spec.most !== undefined && value > spec.most) {
    const data = { input: spec.name, received: text, most: spec.most, unit: spec.unit };
    return { ok: false, findings: [deskFinding('reckon-too-large', data, { where })] };
  }
  return {
    ok: true,
    input: {
      name: spec.name,
      value,
      u: u95 === null ? null : u95 / 2,
      unit: spec.unit,
      by: 'typed',
      from: text,
      entries: [],
    },
  };
}

type ValueRead =
  | { readonly ok: true; readonly value: number; readonly u95: number | null }
  | { readonly ok: false; readonly findings: readonly Finding[] };

function readWithUnit(spec: QuantitySpec, text: string, where: Where): ValueRead {
  if (spec.dimension === 'plain') throw new Error(`${spec.name} has no unit`);
  // A list is cut at its commas before, so that a comma inside a value can only be a decimal sign where there is no list.
  const read = parseQuantity(text, {
    dimension: spec.dimension,
    where,
    mayBeNegative: spec.mayBeNegative === true || spec.dimension === 'temperature',
    ...(spec.many === true && { decimal: 'point' as const }),
    ...(spec.many === true && { defaultUnit: spec.unit }),
  });
  if (!read.ok) return { ok: false, findings: [read.finding] };
  const { value, u95, unit } = read.quantity;
  return {
    ok: true,
    value: convert(value, unit, spec.unit),
    u95: u95 === null ? null : convertDifference(u95, unit, spec.unit),
  };
}

const DOUBT_MARK = /±|\+\/-|\+-/;

function readPlain(text: string, where: Where): ValueRead {
  const [number = '', doubt] = text.split(DOUBT_MARK);
  const value = parseNumber(number, { where });
  if (!value.ok) return { ok: false, findings: [value.finding] };
  if (doubt === undefined) return { ok: true, value: value.value, u95: null };
  const u95 = parseNumber(doubt, { where });
  return u95.ok ? { ok: true, value: value.value, u95: u95.value } : { ok: false, findings: [u95.finding] };
}
