// The value of a formula with its doubt; a name without a value makes the whole "not known", and nothing here throws.
import { OutsideRange } from '../../../ground/physics/index.ts';
import { toSi } from '../card-units.ts';
import { functionNamed } from './functions.ts';
import type { Comparison, Formula, Term } from './parse.ts';

/** A value in SI with one standard deviation. */
export interface Leaf {
  readonly value: number;
  readonly u: number;
}

/** Values by name; null or absent is not known. */
export type Leaves = ReadonlyMap<string, Leaf | null>;

/** What formulas of the card are called, so that `amount` stands for its own formula; a name is only told by earlier ones. */
export type Named = ReadonlyMap<string, Formula>;

export type Reckoned =
  | { readonly is: 'known'; readonly value: number; readonly u: number }
  | { readonly is: 'not known'; readonly missing: readonly string[] }
  /** A range of the physics was left, something was divided by nothing, or it never comes about. */
  | { readonly is: 'no answer'; readonly why: string };

/** Whether a comparison holds: surely means by two standard deviations and more. */
export type Truth = 'surely' | 'perhaps' | 'surely not' | 'not known';

class Unanswered extends Error {}

/** @example reckonFormula(formula, new Map([['to.fill', { value: 0.0205, u: 0 }]])) */
export function reckonFormula({ term }: Formula, leaves: Leaves, named: Named = new Map()): Reckoned {
  return reckonTerm(term, leaves, named);
}

/** Whether the comparison of a formula holds; for a formula that compares nothing it is not known. */
export function holdsSurely({ term, compared }: Formula, leaves: Leaves, named: Named = new Map()): Truth {
  if (compared === null) return 'not known';
  const apart: Term = {
    is: 'sum',
    sign: '-',
    left: compared.with,
    right: term,
    column: compared.column,
  };
  const room = reckonTerm(apart, leaves, named);
  const edge = reckonTerm(compared.with, leaves, named);
  if (room.is !== 'known' || edge.is !== 'known') return 'not known';
  // Rounding of a unit's factor may not turn "equal" into "above".
  return truthOf(compared.by, room, 1e-9 * Math.abs(edge.value));
}

function truthOf(by: Comparison, { value, u }: Leaf, least: number): Truth {
  const margin = by === '<' || by === '<=' ? value : -value;
  const isStrict = by === '<' || by === '>';
  if (u === 0) {
    const holds = isStrict ? margin > least : margin >= -least;
    return holds ? 'surely' : 'surely not';
  }
  if (margin >= 2 * u) return 'surely';
  return margin <= -2 * u ? 'surely not' : 'perhaps';
}

function reckonTerm(term: Term, leaves: Leaves, named: Named): Reckoned {
  const names = leafNames(term, named);
  const missing = names.filter((name) => !isKnown(leaves.get(name)));
  if (missing.length > 0) return { is: 'not known', missing };
  const moved = (of: string | null, by: number): Reckoned =>
    answered(() => worthOf(term, valuesOf(leaves, named, { of, by })));
  const best = moved(null, 0);
  if (best.is !== 'known') return best;
  let variance = 0;
  for (const name of names) {
    const { u } = leaves.get(name) as Leaf;
    if (u > 0) variance += square(partOf(best.value, moved(name, u), moved(name, -u)));
  }
  return { is: 'known', value: best.value, u: Math.sqrt(variance) };
}

const square = (x: number): number => x * x;

function isKnown(leaf: Leaf | null | undefined): boolean {
  return (
    leaf !== null &&
    leaf !== undefined &&
    Number.isFinite(leaf.value) &&
    leaf.u >= 0 &&
    leaf.u < Number.POSITIVE_INFINITY
  );
}

/** How far one standard deviation of an input moves the result; at the end of a range the side that has a value counts. */
function partOf(best: number, above: Reckoned, below: Reckoned): number {
  if (above.is === 'known' && below.is === 'known') return (above.value - below.value) / 2;
  if (above.is === 'known') return above.value - best;
  return below.is === 'known' ? best - below.value : 0;
}

function answered(work: () => number): Reckoned {
  try {
    const value = work();
    if (!Number.isFinite(value)) return { is: 'no answer', why: 'no finite number' };
    return { is: 'known', value, u: 0 };
  } catch (error) {
    if (error instanceof OutsideRange) return { is: 'no answer', why: error.left.quantity };
    if (error instanceof Unanswered || error instanceof RangeError)
      return { is: 'no answer', why: error.message };
    throw error;
  }
}

type ValueOfName = (name: string) => number;

/** Each named formula is worked out once, however often it is named. */
function valuesOf(
  leaves: Leaves,
  named: Named,
  moved: { readonly of: string | null; readonly by: number },
): ValueOfName {
  const worked = new Map<string, number>();
  const valueOfName: ValueOfName = (name) => {
    const formula = named.get(name);
    if (formula === undefined) {
      const { value } = leaves.get(name) as Leaf;
      return name === moved.of ? value + moved.by : value;
    }
    const value = worked.get(name) ?? worthOf(formula.term, valueOfName);
    worked.set(name, value);
    return value;
  };
  return valueOfName;
}

function worthOf(term: Term, name: ValueOfName): number {
  switch (term.is) {
    case 'number':
      return toSi(term.value, term.unit);
    case 'name':
      return name(term.name);
    case 'minus':
      return -worthOf(term.of, name);
    case 'call': {
      const called = functionNamed(term.name);
      const value = called?.run(term.inputs.map((input) => worthOf(input, name))) ?? null;
      if (value === null) throw new Unanswered(`${term.name} has no answer`);
      return value;
    }
    default:
      return arithmetic(term.sign, worthOf(term.left, name), worthOf(term.right, name));
  }
}

function arithmetic(sign: '+' | '-' | '*' | '/', left: number, right: number): number {
  if (sign === '+') return left + right;
  if (sign === '-') return left - right;
  if (sign === '*') return left * right;
  if (right === 0) throw new Unanswered('divided by nothing');
  return left / right;
}

/** The names that a term rests on in the end, each once, in the order of the alphabet. */
export function leafNames(term: Term, named: Named = new Map()): readonly string[] {
  const names = new Set<string>();
  const seen = new Set<string>();
  const visit = (each: Term): void => {
    if (each.is === 'name') {
      if (seen.has(each.name)) return;
      seen.add(each.name);
      const formula = named.get(each.name);
      if (formula === undefined) names.add(each.name);
      else visit(formula.term);
    } else if (each.is === 'minus') visit(each.of);
    else if (each.is === 'sum') [each.left, each.right].forEach(visit);
    else if (each.is === 'call') each.inputs.forEach(visit);
  };
  visit(term);
  return [...names].sort();
}
