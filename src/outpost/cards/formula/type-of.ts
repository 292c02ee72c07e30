// What a formula gives, from what its names and numbers measure; a sum of litres and minutes is a fault with its column.
import { nearest } from '../../../ground/units/index.ts';
import { typeOfUnit } from '../card-units.ts';
import { FaultInFormula, type FormulaFault } from './formula-fault.ts';
import { FUNCTIONS, functionNamed } from './functions.ts';
import type { Formula, Term } from './parse.ts';
import {
  combined,
  PLAIN,
  type QuantityType,
  sameDimensions,
  sameType,
  typeInWords,
} from './quantity-type.ts';

/** What names mean where the formula stands. */
export interface NamesInForce {
  readonly typeOf: (name: string) => QuantityType | null;
  /** For "did you mean". */
  readonly known: readonly string[];
  /** Names that come to be only at a later line. */
  readonly later: ReadonlySet<string>;
}

/** `truth` for a comparison. */
export type Typed =
  | { readonly ok: true; readonly type: QuantityType | 'truth' }
  | { readonly ok: false; readonly fault: FormulaFault };

export function typeOfFormula({ term, compared }: Formula, names: NamesInForce): Typed {
  try {
    const type = typeOfTerm(term, names);
    if (compared === null) return { ok: true, type };
    mustBeAlike(type, typeOfTerm(compared.with, names), compared.column);
    return { ok: true, type: 'truth' };
  } catch (error) {
    if (error instanceof FaultInFormula) return { ok: false, fault: error.fault };
    throw error;
  }
}

function typeOfTerm(term: Term, names: NamesInForce): QuantityType {
  switch (term.is) {
    case 'number':
      return typeOfUnit(term.unit);
    case 'name':
      return typeOfName(term, names);
    case 'minus':
      return mustBeDifference(typeOfTerm(term.of, names), term.column);
    case 'call':
      return typeOfCall(term, names);
    default: {
      const [left, right] = [typeOfTerm(term.left, names), typeOfTerm(term.right, names)];
      if (term.sign === '+' || term.sign === '-') return ofSum(left, right, term);
      mustBeDifference(left, term.column);
      mustBeDifference(right, term.column);
      return combined(left, right, term.sign === '*' ? 1 : -1);
    }
  }
}

function typeOfName({ name, column }: Term & { is: 'name' }, names: NamesInForce): QuantityType {
  const type = names.typeOf(name);
  if (type !== null) return type;
  if (names.later.has(name)) throw new FaultInFormula('formula-name-too-early', column, { name });
  const data = { name, near: nearest(name, names.known), known: names.known.slice(0, 40) };
  throw new FaultInFormula('formula-name-unknown', column, data);
}

/** Two points are apart by a difference; a point moved by a difference is a point; two points have no sum. */
function ofSum(left: QuantityType, right: QuantityType, { sign, column }: Term & { is: 'sum' }) {
  if (!sameDimensions(left, right)) throw unlike(left, right, column);
  if (left.point && right.point) {
    if (sign === '-') return { ...left, point: false };
    throw new FaultInFormula('formula-point', column, { sign });
  }
  if (right.point && sign === '-') throw new FaultInFormula('formula-point', column, { sign });
  return { ...left, point: left.point || right.point };
}

function typeOfCall({ name, inputs, column }: Term & { is: 'call' }, names: NamesInForce): QuantityType {
  const called = functionNamed(name);
  if (called === null) {
    const known = Object.keys(FUNCTIONS);
    throw new FaultInFormula('formula-function-unknown', column, { name, near: nearest(name, known), known });
  }
  const { takes, gives } = called;
  if (takes === null) return typeOfList(inputs, names, column);
  if (inputs.length !== takes.length)
    throw new FaultInFormula('formula-arguments', column, {
      name,
      takes: takes.map(([each]) => each),
      received: inputs.length,
    });
  takes.forEach(([, type], index) => {
    const input = inputs[index] as Term;
    mustBeAlike(type, typeOfTerm(input, names), input.column);
  });
  return gives ?? PLAIN;
}

function typeOfList(inputs: readonly Term[], names: NamesInForce, column: number): QuantityType {
  const [first = PLAIN, ...rest] = inputs.map((input) => typeOfTerm(input, names));
  for (const type of rest) mustBeAlike(first, type, column);
  return first;
}

function mustBeDifference(type: QuantityType, column: number): QuantityType {
  if (type.point) throw new FaultInFormula('formula-point', column, { sign: '* / -' });
  return type;
}

function mustBeAlike(expected: QuantityType, received: QuantityType, column: number): void {
  if (!sameDimensions(expected, received)) throw unlike(expected, received, column);
  if (!sameType(expected, received)) throw new FaultInFormula('formula-point', column, { sign: 'beside' });
}

function unlike(expected: QuantityType, received: QuantityType, column: number): FaultInFormula {
  const data = { expected: typeInWords(expected), received: typeInWords(received) };
  return new FaultInFormula('formula-dimension', column, data);
}
