// English for the calculators: looked up by the names that the desk gives.
import type { FindingData } from '../../../ground/units/index.ts';
import type { ReckonCaution, ReckonFormula } from '../../sheets/reckon.ts';
import { type CalculatorWords, calculators } from './reckon/calculators.ts';
import { cautions } from './reckon/cautions.ts';
import { assumptions, bookSources, choices, inputLabels, resultLabels } from './reckon/labels.ts';
import { sayingText } from './reckon/sayings.ts';

/** A name without words is a fault of the code, which a test finds. */
function of<T>(table: Readonly<Record<string, T>>, key: string): T {
  const found = Object.hasOwn(table, key) ? table[key] : undefined;
  if (found === undefined) throw new Error(`nothing is written for ${key}`);
  return found;
}

export function reckonWords(calculator: string): CalculatorWords {
  return of(calculators, calculator);
}

export function reckonFormulas(calculator: string): readonly ReckonFormula[] {
  return of(calculators, calculator).formulas;
}

export function reckonCautions(keys: readonly string[]): readonly ReckonCaution[] {
  return keys.map((key) => of(cautions, key));
}

export function reckonSaying(key: string, data: FindingData): string {
  return sayingText(key, data);
}

export function inputLabel(name: string): string {
  return of(inputLabels, name);
}

export function resultLabel(name: string): string {
  return of(resultLabels, name);
}

export function choiceLabel(name: string): string {
  return of(choices, name);
}

/** A word of a choice as it reads; a name of the book is what it is. */
export function namedOrChosen(value: string): string {
  return Object.hasOwn(choices, value) ? choiceLabel(value) : value;
}

/** Why a value is taken as it is: a sentence of an assumption, or of the book, or the key of the outpost file as it is. */
export function sourceLabel(by: string, from: string): string {
  if (by === 'assumed') return of(assumptions, from);
  return by === 'book' ? of(bookSources, from) : from;
}
