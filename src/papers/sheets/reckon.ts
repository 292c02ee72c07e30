// What a calculator answered: inputs with where they come from, results with their ±, sentences, cautions.
import type { SheetFigure } from './figure.ts';

export type ReckonGivenBy = 'typed' | 'book' | 'outpost file' | 'assumed';

export interface ReckonInput {
  readonly name: string;
  /** Which of several values of one field it is, from 1; 0 where there is only one. */
  readonly place: number;
  readonly value: number;
  /** Null where nobody said a ±: the value was taken as exact. */
  readonly u95: number | null;
  readonly unit: string;
  readonly by: ReckonGivenBy;
  /** What was typed, the key of the outpost file, or the reason of an assumption as a key of the words. */
  readonly from: string;
  readonly refs: readonly string[];
  /** Its part of the doubt of the first result, 0 to 1; null where that has none. */
  readonly share: number | null;
}

export interface ReckonResult extends SheetFigure {
  readonly name: string;
  /** The end of the band that a person has to reckon with; null where the middle is meant. */
  readonly limit: 'early' | 'late' | null;
}

export interface ReckonSheet {
  readonly calculator: string;
  /** Names of the book that it was asked with: `{ store: 'R2' }`. */
  readonly names: Readonly<Record<string, string>>;
  readonly inputs: readonly ReckonInput[];
  readonly results: readonly ReckonResult[];
  readonly sayings: readonly { readonly key: string; readonly text: string }[];
  /** Hazard boxes, in their order. */
  readonly cautions: readonly ReckonCaution[];
  /** Page of docs/methods, and lines of it: the equation, its range, its source. */
  readonly method: string;
  readonly formulas: readonly ReckonFormula[];
}

export interface ReckonCaution {
  /** WARNING: grave injury. CAUTION: slight injury. NOTICE: equipment. */
  readonly signal: 'WARNING' | 'CAUTION' | 'NOTICE';
  readonly text: string;
}

export interface ReckonFormula {
  readonly equation: string;
  readonly range: string;
  readonly source: string;
}

/** One field of a calculator, for a form. */
export interface ReckonField {
  readonly name: string;
  readonly kind: 'quantity' | 'plain' | 'store' | 'hose' | 'choice';
  readonly label: string;
  /** Units that it takes, the first of them offered first; empty for what has none. */
  readonly units: readonly string[];
  /** Words that it takes, each with what it means. */
  readonly choices: readonly { readonly value: string; readonly label: string }[];
  /** Several values, commas between. */
  readonly many: boolean;
  /** The answer needs it, and nothing else brings it: neither an assumption nor the outpost file. */
  readonly needed: boolean;
  /** What is taken where nobody gives it: value with unit, and why. */
  readonly otherwise: string | null;
}

export interface ReckonForm {
  readonly calculator: string;
  readonly title: string;
  readonly question: string;
  readonly fields: readonly ReckonField[];
  /** Fields with values that show what it is for. */
  readonly example: Readonly<Record<string, string>>;
  readonly cautions: readonly ReckonCaution[];
}

export interface ReckonForms {
  readonly forms: readonly ReckonForm[];
}
