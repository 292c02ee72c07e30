// A formula cut into numbers with their units, names and signs, each with its column.
import { nearest, parseNumber } from '../../../ground/units/index.ts';
import { CARD_UNITS, type CardUnit, UNITS_IN_FORMULAS } from '../card-units.ts';
import { FaultInFormula } from './formula-fault.ts';

export type Token =
  | { readonly is: 'number'; readonly value: number; readonly unit: CardUnit; readonly column: number }
  | { readonly is: 'name'; readonly name: string; readonly column: number }
  | { readonly is: 'sign'; readonly sign: string; readonly column: number }
  | { readonly is: 'end'; readonly column: number };

const NUMBER = /^\d+(?:\.\d+)?/;
const NAME = /^[a-z][a-z0-9_]*(?:\.[a-z][a-z0-9_]*)*/;
const SIGNS = ['<=', '>=', '<', '>', '+', '-', '*', '/', '(', ')', ','] as const;
/** What people write for the signs of arithmetic. */
const ALSO_WRITTEN: Readonly<Record<string, string>> = { '−': '-', '×': '*', '÷': '/', '≤': '<=', '≥': '>=' };
const WORD = /^[\p{L}\p{N}_./%°µ³]+/u;
const LONGEST = 400;

export function tokensOf(text: string): readonly Token[] {
  if (text.length > LONGEST)
    throw new FaultInFormula('formula-too-long', 1, { length: text.length, most: LONGEST });
  const tokens: Token[] = [];
  let at = 0;
  while (at < text.length) {
    const rest = text.slice(at);
    const blank = /^\s+/.exec(rest)?.[0];
    if (blank !== undefined) at += blank.length;
    else {
      const { token, length } = tokenAt(rest, at + 1);
      tokens.push(token);
      at += length;
    }
  }
  return [...tokens, { is: 'end', column: text.length + 1 }];
}

function tokenAt(rest: string, column: number): { readonly token: Token; readonly length: number } {
  const digits = NUMBER.exec(rest)?.[0];
  if (digits !== undefined) return numberAt(rest, digits, column);
  const name = NAME.exec(rest)?.[0];
  if (name !== undefined) return { token: { is: 'name', name, column }, length: name.length };
  const written = ALSO_WRITTEN[rest.slice(0, 1)];
  if (written !== undefined) return { token: { is: 'sign', sign: written, column }, length: 1 };
  const sign = SIGNS.find((each) => rest.startsWith(each));
  if (sign === undefined)
    throw new FaultInFormula('formula-sign-unknown', column, { sign: [...rest][0] ?? '' });
  return { token: { is: 'sign', sign, column }, length: sign.length };
}

/** A word behind a number is its unit, with or without a blank between. */
function numberAt(rest: string, digits: string, column: number) {
  const read = parseNumber(digits, { decimal: 'point' });
  if (!read.ok) throw new FaultInFormula('formula-sign-unknown', column, { sign: digits.slice(0, 20) });
  const gap = /^ */.exec(rest.slice(digits.length))?.[0].length ?? 0;
  const behind = rest.slice(digits.length + gap);
  const unit = UNITS_IN_FORMULAS.find((each) => behind.startsWith(each) && endsWord(behind, each));
  if (unit !== undefined) {
    const length = digits.length + gap + unit.length;
    return { token: { is: 'number', value: read.value, unit, column } as const, length };
  }
  const word = WORD.exec(behind)?.[0];
  if (word !== undefined && !behind.startsWith('/'))
    throw new FaultInFormula('formula-unit-unknown', column + digits.length + gap, {
      unit: word.slice(0, 40),
      near: nearest(word, CARD_UNITS),
      known: UNITS_IN_FORMULAS,
    });
  return {
    token: { is: 'number', value: read.value, unit: 'plain', column } as const,
    length: digits.length,
  };
}

/** `L` in `L/min` is no litre; in `2 L / 3` it is one. */
function endsWord(text: string, unit: string): boolean {
  return !/^[\p{L}\p{N}_°³]/u.test(text.slice(unit.length));
}
