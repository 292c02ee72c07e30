// An amount in a cell: a number with the unit of the cell, else of its heading, else it waits.
import { convert, unitNamed } from '../../ground/units/index.ts';
import { type CellRead, type DecimalRule, NUMBER_AT_START, readCellNumber } from './cell-number.ts';
import { quoted } from './inbox-finding.ts';
import { unitOf } from './match-heading.ts';

export interface CellAmount {
  readonly value: number;
  readonly unit: string;
  /** ± at 95 %, in the same unit. */
  readonly u95: number | null;
}

interface AmountRule extends DecimalRule {
  /** Of the heading, or of a cell beside. */
  readonly unit: string | null;
  /** Units that may stand here. */
  readonly allowed: ReadonlySet<string>;
}

const DOUBT = /\u00B1|\+\/-|\+-|\+\/\u2212|\+\u2212/;

/** A missing unit is told with the number beside it, for the readings that it could have. */
export function readCellAmount(
  text: string,
  rule: AmountRule,
): CellRead<'amount', CellAmount> & { readonly bareValue?: number } {
  const trimmed = text.trim();
  const mark = DOUBT.exec(trimmed.slice(1));
  const [left, right] =
    mark === null
      ? [trimmed, null]
      : [trimmed.slice(0, mark.index + 1), trimmed.slice(mark.index + 1 + mark[0].length)];
  const value = readPart(left, rule);
  if (!value.ok) return value;
  const doubt = right === null ? null : readPart(right, rule);
  if (doubt !== null && !doubt.ok) return doubt;
  const written = value.part.unit || (doubt?.part.unit ?? '');
  const unit = written === '' ? rule.unit : unitOf(written);
  if (unit === null || !rule.allowed.has(unit))
    return noUnit(trimmed, { written, value: value.part.value }, rule);
  if (value.part.value < 0) return faulty('cell-negative', trimmed);
  const u95 = doubt === null ? null : doubtIn(doubt.part, unit);
  if (u95 !== null && !(u95 > 0)) return faulty('cell-no-number', trimmed);
  return { ok: true, amount: { value: value.part.value, unit, u95 } };
}

interface Part {
  readonly value: number;
  readonly unit: string;
}

function readPart(text: string, rule: DecimalRule): CellRead<'part', Part> {
  const number = NUMBER_AT_START.exec(text)?.[0] ?? '';
  const rest = text.slice(number.length).trim();
  // Words, brackets and marks beside a number may change what it says.
  const isUnit = rest === '' || /^[A-Za-z\u00B0\u00B5\u03BC%][A-Za-z0-9\u00B0\u00B3%/]*\.?$/.test(rest);
  const read = readCellNumber(number === '' || !isUnit ? text : number, rule);
  return read.ok ? { ok: true, part: { value: read.value, unit: rest.replace(/\.$/, '') } } : read;
}

function noUnit(text: string, { written, value }: { written: string; value: number }, rule: AmountRule) {
  const received = quoted(text);
  if (written === '' && rule.unit === null) {
    if (value < 0) return faulty('cell-negative', text);
    return { ok: false as const, fault: { code: 'cell-unit-missing', data: { received } }, bareValue: value };
  }
  const data = {
    received,
    unit: quoted(written || (rule.unit ?? '')),
    allowed: [...rule.allowed].slice(0, 12),
  };
  return { ok: false as const, fault: { code: 'cell-unit-other', data } };
}

function faulty(code: string, text: string) {
  return { ok: false as const, fault: { code, data: { received: quoted(text) } } };
}

function doubtIn({ value, unit }: Part, wanted: string): number {
  const own = unit === '' ? wanted : unitOf(unit);
  if (own === null || own === wanted) return value;
  return unitNamed(own).dimension === unitNamed(wanted).dimension ? convert(value, own, wanted) : Number.NaN;
}

/** `20.5 L+-0.4`: as a person would type it, so that it goes the way of everything typed. */
export function spellAmount({ value, unit, u95 }: CellAmount): string {
  return u95 === null ? `${value} ${unit}` : `${value} ${unit}+-${u95}`;
}
