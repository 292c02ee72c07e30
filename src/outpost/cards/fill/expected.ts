// What a line expects, worked out: bounds in its own unit, or what is missing for them. The same at filling and while it runs.
import type { CardStep } from '../card.ts';
import { type CardUnit, fromSi, spanFromSi, typeOfUnit } from '../card-units.ts';
import { type Leaves, type Named, type Reckoned, reckonFormula } from '../formula/evaluate.ts';
import type { Formula } from '../formula/parse.ts';

/** A figure in a unit with one standard deviation, or why there is none. */
export type CardFigure =
  | { readonly is: 'known'; readonly value: number; readonly u: number; readonly unit: CardUnit }
  | { readonly is: 'not known'; readonly missing: readonly string[] }
  | { readonly is: 'no answer'; readonly why: string };

export type Expected =
  | { readonly is: 'nothing' }
  | { readonly is: 'words'; readonly words: string }
  | { readonly is: 'choice'; readonly right: readonly string[] }
  | {
      readonly is: 'bounds';
      /** Null where there is no such bound. */
      readonly low: CardFigure | null;
      readonly high: CardFigure | null;
      /** What is expected best; null where there are bounds only. */
      readonly about: CardFigure | null;
      readonly unit: CardUnit;
    };

export function figureOf(reckoned: Reckoned, unit: CardUnit): CardFigure {
  if (reckoned.is !== 'known') return reckoned;
  const isPoint = typeOfUnit(unit).point;
  const value = isPoint ? fromSi(reckoned.value, unit) : spanFromSi(reckoned.value, unit);
  return { is: 'known', value, u: spanFromSi(reckoned.u, unit), unit };
}

export function expectedAt(step: CardStep, leaves: Leaves, named: Named): Expected {
  const { expect, input } = step;
  if (expect.words !== null) return { is: 'words', words: expect.words };
  if (expect.right !== null) return { is: 'choice', right: expect.right };
  const { unit } = input;
  if (unit === undefined || (expect.about ?? expect.atLeast ?? expect.atMost) === null)
    return { is: 'nothing' };
  const figure = (formula: Formula | null): CardFigure | null =>
    formula === null ? null : figureOf(reckonFormula(formula, leaves, named), unit);
  if (expect.about === null) {
    const safe = step.mustPass === undefined ? 0 : 2;
    const [low, high] = [figure(expect.atLeast), figure(expect.atMost)];
    return { is: 'bounds', low: moved(low, safe), high: moved(high, -safe), about: null, unit };
  }
  const about = figure(expect.about) as CardFigure;
  const within = spanOf(expect.within, { leaves, named, unit });
  return { is: 'bounds', low: edge(about, within, -1), high: edge(about, within, 1), about, unit };
}

/** A bound that has to be passed is taken at its safe end: by two standard deviations to the inside. */
function moved(bound: CardFigure | null, times: number): CardFigure | null {
  return bound?.is === 'known' ? { ...bound, value: bound.value + times * bound.u, u: 0 } : bound;
}

function spanOf(
  formula: Formula | null,
  { leaves, named, unit }: { readonly leaves: Leaves; readonly named: Named; readonly unit: CardUnit },
): CardFigure {
  if (formula === null) return { is: 'known', value: 0, u: 0, unit };
  const reckoned = reckonFormula(formula, leaves, named);
  if (reckoned.is !== 'known') return reckoned;
  return { is: 'known', value: spanFromSi(reckoned.value, unit), u: 0, unit };
}

/** What is not known of the value (95 %) and the tolerance of the line are joined by squares: neither excuses the other. */
function edge(about: CardFigure, within: CardFigure, side: 1 | -1): CardFigure {
  if (about.is !== 'known') return about;
  if (within.is !== 'known') return within;
  const span = Math.sqrt(within.value * within.value + 4 * about.u * about.u);
  return { is: 'known', value: about.value + side * span, u: 0, unit: about.unit };
}

/** `fits` is also the answer where a bound is not known: nothing then speaks against the value. */
export function fitsExpected(expected: Expected, found: number | string): boolean {
  if (expected.is === 'choice') return typeof found === 'string' && expected.right.includes(found);
  if (expected.is !== 'bounds' || typeof found !== 'number') return true;
  const { low, high } = expected;
  // A bound that was turned from one unit into another may be off in its last digits.
  const slack = 1e-9 * Math.max(1, Math.abs(found));
  const isAbove = low?.is !== 'known' || found >= low.value - slack;
  const isBelow = high?.is !== 'known' || found <= high.value + slack;
  return Number.isFinite(found) && isAbove && isBelow;
}

/** Names without a value that the bounds of a line rest on, found values of lines included. */
export function missingFor(expected: Expected): readonly string[] {
  if (expected.is !== 'bounds') return [];
  const figures = [expected.low, expected.high, expected.about];
  return [...new Set(figures.flatMap((figure) => (figure?.is === 'not known' ? figure.missing : [])))];
}

/** Why a line that has to be passed cannot be judged: names without a value, or a formula without an answer; null: it can. */
export function missingInBounds(expected: Expected): readonly string[] | null {
  const missing = missingFor(expected);
  return missing.length === 0 && !hasNoAnswer(expected) ? null : missing;
}

/** No bound has an answer, for a reason that no value will mend. */
export function hasNoAnswer(expected: Expected): boolean {
  if (expected.is !== 'bounds') return false;
  return [expected.low, expected.high].some((figure) => figure?.is === 'no answer');
}
