// Reads one decimal number as people write it, and refuses every text that has two readings.
import type { Where } from './finding.ts';
import { quoted, type Read, refuse } from './quantity-finding.ts';

export interface NumberRule {
  /** Which decimal sign is taken; `either` by default. */
  readonly decimal?: 'point' | 'comma' | 'either';
  readonly where?: Where;
}

const longestInput = 64;
const mostDigits = 17;
const space = '[ \\u00A0\\u2009\\u202F]';
const shape = new RegExp(
  `^([+\\-\\u2212]?)(\\d+|\\d{1,3}(?:${space}\\d{3})+)(?:([.,])(\\d+))?(?:e(-?\\d{1,3}))?$`,
);
const grouped = /^[+\-\u2212]?\d{1,3}(?:[.,]\d{3})*[.,]\d+(?:e-?\d{1,3})?$/;

/**
 * Reads a number: `21.4`, `7,5`, `-3`, `1e3`, `1 234.5` (groups of three by a space, a no-break or a thin space).
 * `1,234` and `1.234,5` have two readings and are refused, with both in the finding's data; `0,250` has one.
 * @example parseNumber('7,5') // { ok: true, value: 7.5 }
 */
export function parseNumber(text: string, rule: NumberRule = {}): Read<'value', number> {
  const where = rule.where ?? {};
  if (text.length > longestInput) {
    return refuse('input-too-long', where, {
      received: quoted(text),
      length: text.length,
      longest: longestInput,
    });
  }
  const trimmed = text.trim();
  if (trimmed === '') return refuse('number-missing', where, { received: quoted(text) });
  const readings = twoReadings(trimmed, rule.decimal ?? 'either');
  if (readings !== null) return refuse('number-ambiguous', where, { received: trimmed, readings });
  const match = shape.exec(trimmed);
  if (match === null) return refuse('number-unreadable', where, { received: quoted(trimmed) });
  const [, sign = '', whole = '', separator = '', fraction = '', exponent = '0'] = match;
  if (isOther(separator, rule.decimal ?? 'either')) {
    return refuse('number-separator', where, {
      received: trimmed,
      separator,
      wanted: separator === ',' ? '.' : ',',
    });
  }
  return numberOf({ sign, digits: whole.replace(/\D/g, ''), fraction, exponent }, trimmed, where);
}

function isOther(separator: string, decimal: 'point' | 'comma' | 'either'): boolean {
  return (separator === ',' && decimal === 'point') || (separator === '.' && decimal === 'comma');
}

function numberOf(
  parts: {
    readonly sign: string;
    readonly digits: string;
    readonly fraction: string;
    readonly exponent: string;
  },
  received: string,
  where: Where,
): Read<'value', number> {
  const kept = (parts.digits + parts.fraction).replace(/^0+/, '');
  if (kept.length > mostDigits) {
    return refuse('number-too-many-digits', where, { received, digits: kept.length, most: mostDigits });
  }
  const size = Number(`${parts.digits}.${parts.fraction}e${parts.exponent}`);
  if (!Number.isFinite(size)) return refuse('number-too-large', where, { received });
  if (size === 0 && kept !== '') return refuse('number-too-small', where, { received });
  const negative = parts.sign === '-' || parts.sign === '\u2212';
  return { ok: true, value: negative && size !== 0 ? -size : size };
}

/** Both readings of a text whose point or comma may be a decimal sign or may group the digits by three; null if there is one reading. */
function twoReadings(text: string, decimal: 'point' | 'comma' | 'either'): string[] | null {
  if (!grouped.test(text)) return null;
  const marks = text.replace(/[^.,]/g, '');
  const single = /^[+\-\u2212]?([1-9]\d{0,2}),\d{3}(?!\d)/.test(text);
  if (marks.length === 1 && !(single && decimal === 'either')) return null;
  const first = text.search(/[.,]/);
  const last = Math.max(text.lastIndexOf('.'), text.lastIndexOf(','));
  const oneKind = !(marks.includes('.') && marks.includes(','));
  const asGroups = oneKind ? strip(text) : withPoint(text, last);
  return [withPoint(text, first), asGroups];
}

function strip(text: string): string {
  return text.replace(/[.,]/g, '');
}

function withPoint(text: string, index: number): string {
  return `${strip(text.slice(0, index))}.${strip(text.slice(index + 1))}`;
}
