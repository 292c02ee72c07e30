// The grammar of formulas: text in, a tree out, or the fault with its column. Deep enough for people, shallow enough to end.
import type { CardUnit } from '../card-units.ts';
import { FaultInFormula, type FormulaFault } from './formula-fault.ts';
import { type Token, tokensOf } from './lex.ts';

export type Sign = '+' | '-' | '*' | '/';
export type Comparison = '<' | '<=' | '>' | '>=';

export type Term =
  | { readonly is: 'number'; readonly value: number; readonly unit: CardUnit; readonly column: number }
  | { readonly is: 'name'; readonly name: string; readonly column: number }
  | { readonly is: 'minus'; readonly of: Term; readonly column: number }
  | {
      readonly is: 'sum';
      readonly sign: Sign;
      readonly left: Term;
      readonly right: Term;
      readonly column: number;
    }
  | { readonly is: 'call'; readonly name: string; readonly inputs: readonly Term[]; readonly column: number };

/** A term, or two of them compared. */
export interface Formula {
  readonly text: string;
  readonly term: Term;
  readonly compared: { readonly by: Comparison; readonly with: Term; readonly column: number } | null;
}

export type Parsed =
  | { readonly ok: true; readonly formula: Formula }
  | { readonly ok: false; readonly fault: FormulaFault };

const DEEPEST = 30;
const COMPARISONS: readonly string[] = ['<', '<=', '>', '>='];

/** @example parseFormula('min(to.fill - to.content, 20.5 L)') */
export function parseFormula(text: string): Parsed {
  try {
    const parser = new Parser(tokensOf(text));
    return { ok: true, formula: parser.formula(text) };
  } catch (error) {
    if (error instanceof FaultInFormula) return { ok: false, fault: error.fault };
    throw error;
  }
}

class Parser {
  readonly #tokens: readonly Token[];
  #at = 0;
  #depth = 0;

  constructor(tokens: readonly Token[]) {
    this.#tokens = tokens;
  }

  formula(text: string): Formula {
    const term = this.#sum();
    const { column } = this.#now();
    const by = this.#takes(COMPARISONS);
    const compared = by === null ? null : { by: by as Comparison, with: this.#sum(), column };
    if (this.#now().is !== 'end') throw this.#unexpected('the end of the formula, or + - * / < >');
    return { text, term, compared };
  }

  #now(): Token {
    return this.#tokens[this.#at] as Token;
  }

  #takes(signs: readonly string[]): string | null {
    const token = this.#now();
    if (token.is !== 'sign' || !signs.includes(token.sign)) return null;
    this.#at += 1;
    return token.sign;
  }

  #unexpected(expected: string): FaultInFormula {
    const token = this.#now();
    const received =
      token.is === 'sign'
        ? token.sign
        : token.is === 'name'
          ? token.name
          : token.is === 'number'
            ? `${token.value}`
            : 'the end';
    return new FaultInFormula('formula-unexpected', token.column, { expected, received });
  }

  #chain(signs: readonly string[], part: () => Term): Term {
    let left = part();
    for (;;) {
      const { column } = this.#now();
      const sign = this.#takes(signs);
      if (sign === null) return left;
      left = { is: 'sum', sign: sign as Sign, left, right: part(), column };
    }
  }

  #sum(): Term {
    this.#depth += 1;
    if (this.#depth > DEEPEST)
      throw new FaultInFormula('formula-too-deep', this.#now().column, { most: DEEPEST });
    const term = this.#chain(['+', '-'], () => this.#chain(['*', '/'], () => this.#part()));
    this.#depth -= 1;
    return term;
  }

  #part(): Term {
    const { column } = this.#now();
    if (this.#takes(['-']) !== null) return { is: 'minus', of: this.#primary(), column };
    return this.#primary();
  }

  #primary(): Term {
    const token = this.#now();
    if (token.is === 'number') {
      this.#at += 1;
      return token;
    }
    if (token.is === 'name') {
      this.#at += 1;
      return this.#takes(['(']) === null ? token : this.#call(token.name, token.column);
    }
    if (this.#takes(['(']) === null)
      throw this.#unexpected('a number, a name, a function or an opening bracket');
    const inside = this.#sum();
    if (this.#takes([')']) === null) throw this.#unexpected('a closing bracket');
    return inside;
  }

  #call(name: string, column: number): Term {
    const inputs = [this.#sum()];
    while (this.#takes([',']) !== null) inputs.push(this.#sum());
    if (this.#takes([')']) === null) throw this.#unexpected('a comma or a closing bracket');
    return { is: 'call', name, inputs, column };
  }
}
