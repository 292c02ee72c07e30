// What a calculator asks for: quantities with their units, and names of the book that stand for several of them.
import type { Dimension } from '../../ground/units/index.ts';

/** What is taken where nobody gives it, with its ± (95 %) and why, as a key of the words. */
export interface Otherwise {
  readonly value: number;
  readonly u95: number | null;
  readonly why: string;
}

export interface QuantitySpec {
  /** The flag on the command line, the field on the page, the key in JSON. */
  readonly name: string;
  /** `plain` is a number without a unit. */
  readonly dimension: Dimension | 'plain';
  /** The unit of the number that the calculator works with; a name of the table of units, empty for a plain number. */
  readonly unit: string;
  /** What a field of the page begins with; else `unit`. */
  readonly shownUnit?: string;
  /** Several values, commas between. */
  readonly many?: true;
  /** Only above zero. */
  readonly positive?: true;
  readonly mayBeNegative?: true;
  /** The greatest value that has a meaning, in `unit`. */
  readonly most?: number;
  readonly otherwise?: Otherwise;
  /** The calculator answers without it, only less. */
  readonly optional?: true;
  /** Something that no one types: the doubt of the formula itself, a factor about 1. */
  readonly hidden?: true;
}

/** A name of the book that brings values with it: a store, a hose. */
export interface NameSpec {
  readonly name: string;
  readonly of: 'store' | 'hose' | 'choice';
  readonly choices?: readonly string[];
}

export type InputSpec = QuantitySpec | NameSpec;

export function isName(spec: InputSpec): spec is NameSpec {
  return 'of' in spec;
}

/** The doubt of a formula itself, as a factor: 1, with its ± (95 %). */
export function formulaDoubt(name: string, u95: number, why: string): QuantitySpec {
  return { name, dimension: 'plain', unit: '', hidden: true, otherwise: { value: 1, u95, why } };
}
