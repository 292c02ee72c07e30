// A number in a cell: read only where it has one reading, by itself or by what its whole column proves.
import { type FindingData, parseNumber } from '../../ground/units/index.ts';
import { quoted } from './inbox-finding.ts';
import type { Decimal } from './options.ts';

/** Why a cell is not read. */
export interface CellFault {
  readonly code: string;
  readonly data: FindingData;
}

export type CellRead<Key extends string, Value> =
  | ({ readonly ok: true } & { readonly [K in Key]: Value })
  | { readonly ok: false; readonly fault: CellFault };

/** What the numbers of a column prove of their decimal sign. */
export interface DecimalRule {
  /** Null: nothing declared and nothing proven, or both signs. */
  readonly decimal: Decimal | null;
  /** A decimal comma stands somewhere in the table, so that `1.234` may be a thousand. */
  readonly commaSeen: boolean;
}

const GAPS = "[ \\u00A0\\u2009\\u202F']";
const NUMBER = `[+\\-\\u2212]?(?:\\d{1,3}(?:${GAPS}\\d{3})+(?!\\d)|\\d[\\d.,]*)(?:[eE]-?\\d{1,3})?`;
export const NUMBER_AT_START = new RegExp(`^\\s*(${NUMBER})`);
const POINT_GROUPS = /^[+\-\u2212]?\d{1,3}(?:\.\d{3})+(?:,\d+)?$/;
const COMMA_GROUPS = /^[+\-\u2212]?\d{1,3}(?:,\d{3})+(?:\.\d+)?$/;
const ONE_GROUP = /^[+\-\u2212]?[1-9]\d{0,2}[.,]\d{3}$/;
const PLAIN = /^-?\d{1,15}(?:\.\d{1,12})?$/;

/** The decimal sign that a text can only have: none where it has two readings, or no sign. */
function signOf(text: string): Decimal | null {
  const number = NUMBER_AT_START.exec(text)?.[1]?.replace(/[eE].*$/, '');
  if (number === undefined || ONE_GROUP.test(number)) return null;
  const [point, comma] = [number.lastIndexOf('.'), number.lastIndexOf(',')];
  if (point < 0 && comma < 0) return null;
  if (point >= 0 && comma >= 0) return comma > point ? 'comma' : 'point';
  // Two of one kind part groups, so the other one is the decimal sign.
  const sign = point >= 0 ? '.' : ',';
  const isTwice = number.indexOf(sign) !== number.lastIndexOf(sign);
  return (sign === '.') === isTwice ? 'comma' : 'point';
}

/** Cells enough to prove a sign: a column that mixes both proves none. */
export function provenDecimal(cells: Iterable<string>): Decimal | 'both' | null {
  let proven: Decimal | null = null;
  for (const cell of cells) {
    if (!/[.,]/.test(cell)) continue;
    const sign = signOf(cell);
    if (sign === null) continue;
    if (proven !== null && proven !== sign) return 'both';
    proven = sign;
  }
  return proven;
}

/** @example readCellNumber('1.234,5', { decimal: 'comma', commaSeen: true }) // { ok: true, value: 1234.5 } */
export function readCellNumber(text: string, rule: DecimalRule): CellRead<'value', number> {
  const trimmed = text.trim();
  if (PLAIN.test(trimmed) && !ONE_GROUP.test(trimmed) && rule.decimal !== 'comma') {
    const plain = parseNumber(trimmed);
    if (plain.ok) return plain;
  }
  if (/^[=@]/.test(trimmed) || /^[+\-\u2212](?![\d.,])/.test(trimmed)) return fault('cell-formula', text);
  const readings = twoReadings(trimmed, rule);
  if (readings !== null) {
    return { ok: false, fault: { code: 'cell-two-readings', data: { received: quoted(trimmed), readings } } };
  }
  const read = parseNumber(ungrouped(trimmed, rule.decimal), { decimal: rule.decimal ?? 'either' });
  return read.ok ? read : fault('cell-no-number', text);
}

function fault(code: string, text: string): { readonly ok: false; readonly fault: CellFault } {
  return { ok: false, fault: { code, data: { received: quoted(text.trim()) } } };
}

/** `1,234` under nothing that proves a sign; `1.234` too, where somebody here writes commas. */
function twoReadings(text: string, { decimal, commaSeen }: DecimalRule): readonly string[] | null {
  if (decimal !== null || !ONE_GROUP.test(text) || (text.includes('.') && !commaSeen)) return null;
  return [text.replace(',', '.'), text.replace(/[.,]/, '')];
}

function ungrouped(text: string, decimal: Decimal | null): string {
  const tight = text.replaceAll("'", '');
  const sign = decimal ?? signOf(tight);
  if (sign === 'comma' && POINT_GROUPS.test(tight)) return tight.replaceAll('.', '');
  if (sign === 'point' && COMMA_GROUPS.test(tight)) return tight.replaceAll(',', '');
  return tight;
}

/** Cells that say that nothing was read: never zero. */
const NOTHING = new Set(['', '-', '\u2013', '\u2014', 'n/a', 'na', 'none', 'not read', 'null', '.', '?']);

export function isNothing(text: string): boolean {
  return text === '' || NOTHING.has(text.trim().toLowerCase());
}
