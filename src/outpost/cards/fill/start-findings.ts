// Why a filled card may not start: a choice, a rating, a bound that has to be passed, a condition, a rule.
import { type FindingData, nearest } from '../../../ground/units/index.ts';
import type { Card, CardForm } from '../card.ts';
import type { CardStartCode, CardStartFinding } from '../card-finding.ts';
import { holdsSurely, type Leaves, leafNames } from '../formula/evaluate.ts';
import { type ChoiceOf, FOUND, MOVED_SO_FAR, nameLine } from '../names.ts';
import { type Expected, hasNoAnswer, missingFor } from './expected.ts';
import type { FillAsked, RuleOfMovement } from './fill-asked.ts';

interface Filled {
  readonly form: CardForm;
  readonly chosen: ReadonlyMap<string, string>;
  readonly leaves: Leaves;
  readonly expected: readonly { readonly step: Card['steps'][number]; readonly expected: Expected }[];
}

/** Every reason, in the order in which a keeper would mend them. */
export function startFindings(card: Card, asked: FillAsked, filled: Filled): readonly CardStartFinding[] {
  const { form, chosen, leaves, expected } = filled;
  return [
    ...(card.forms.includes(form) ? [] : [no('card-form-not-there', 'form', { form, forms: card.forms })]),
    ...choiceFindings(card, asked),
    ...ratingFindings(card, leaves, chosen),
    ...mustPassFindings(expected),
    ...conditionFindings(card, leaves),
    ...ruleFindings(card, asked, chosen),
  ];
}

function no(code: CardStartCode, field: string, data: FindingData): CardStartFinding {
  return { code, severity: 'error', where: { field }, data, entries: [] };
}

function choiceFindings(card: Card, { chosen, stores, index }: FillAsked): readonly CardStartFinding[] {
  const found: CardStartFinding[] = [];
  const known: Readonly<Record<ChoiceOf, readonly string[] | null>> = {
    store: stores.map(({ id }) => id),
    hose: [...index.hoses.keys()],
    unit: [...index.units.keys()],
    port: [...index.ports.keys()],
    quantity: null,
    word: null,
  };
  for (const { id, of, what, otherwise, kinds } of card.choose) {
    const thing = chosen[id];
    const names = known[of];
    if (thing === undefined) {
      if (otherwise === null) found.push(no('card-choice-missing', id, { what, of }));
    } else if ((of === 'quantity') === (typeof thing === 'string'))
      found.push(no('card-choice-missing', id, { what, of }));
    else if (typeof thing === 'string' && names !== null && !names.includes(thing))
      found.push(no('card-choice-unknown', id, { of, received: thing, near: nearest(thing, names) }));
    else if (typeof thing === 'string' && kinds !== undefined && names !== null) {
      const kind =
        of === 'store' ? stores.find((store) => store.id === thing)?.kind : index.units.get(thing)?.kind;
      if (kind === undefined || !kinds.includes(kind))
        found.push(no('card-choice-kind', id, { received: thing, kind: kind ?? '', kinds, what }));
    }
  }
  const { movement } = card;
  if (
    movement !== null &&
    chosen[movement.from] !== undefined &&
    chosen[movement.from] === chosen[movement.to]
  )
    found.push(no('card-choice-same', movement.to, { store: `${chosen[movement.to]}` }));
  return found;
}

function ratingFindings({ ratings, choices }: Card, leaves: Leaves, chosen: ReadonlyMap<string, string>) {
  return ratings.flatMap((name) => {
    const leaf = leaves.get(name) ?? null;
    if (leaf !== null && leaf.value > 0) return [];
    const of = chosen.get(name.split('.')[0] ?? '') ?? '';
    return [no('card-rating-missing', name, { what: nameLine(name, choices)?.what ?? name, of })];
  });
}

/** A *must pass* line whose bound will never be known could be passed by anything. */
function mustPassFindings(steps: Filled['expected']): readonly CardStartFinding[] {
  return steps.flatMap(({ step, expected }) => {
    if (step.mustPass === undefined) return [];
    const missing = missingFor(expected).filter((name) => !name.startsWith(FOUND) && name !== MOVED_SO_FAR);
    if (missing.length === 0 && !hasNoAnswer(expected)) return [];
    return [no('card-must-pass-unknown', step.id, { check: step.mustPass, missing })];
  });
}

function conditionFindings({ conditions, named }: Card, leaves: Leaves): readonly CardStartFinding[] {
  return conditions.flatMap(({ holds, otherwise }) => {
    const truth = holdsSurely(holds, leaves, named);
    if (truth === 'surely') return [];
    const data = { condition: holds.text, otherwise, surely: truth === 'surely not' };
    if (truth !== 'not known') return [no('card-condition-fails', 'conditions', data)];
    const terms = holds.compared === null ? [holds.term] : [holds.term, holds.compared.with];
    const names = terms.flatMap((term) => leafNames(term, named));
    const missing = [...new Set(names)].filter((name) => (leaves.get(name) ?? null) === null);
    return [no('card-condition-unknown', 'conditions', { ...data, missing })];
  });
}

const CODE_OF_RULE: Readonly<Record<RuleOfMovement, CardStartCode>> = {
  'source-held': 'card-source-held',
  'source-unreleased': 'card-source-unreleased',
  'grades-clash': 'card-grades-clash',
  'biocides-clash': 'card-biocides-clash',
};

function ruleFindings({ movement }: Card, { rules }: FillAsked, chosen: ReadonlyMap<string, string>) {
  if (movement === null) return [];
  const [from, to] = [chosen.get(movement.from), chosen.get(movement.to)];
  if (from === undefined || to === undefined) return [];
  const { relabelledTo = null } = movement;
  return rules({ from, to, relabelledTo }).map(({ rule, data }) =>
    no(CODE_OF_RULE[rule], movement.to, { ...data, from, to }),
  );
}
