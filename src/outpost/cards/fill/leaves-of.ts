// The values that a card's formulas rest on: what was typed beats the book, and the book beats the outpost file.
import type { Card } from '../card.ts';
import { spanToSi, toSi } from '../card-units.ts';
import { type Leaf, type Leaves, leafNames, reckonFormula } from '../formula/evaluate.ts';
import type { Term } from '../formula/parse.ts';
import { FOUND, MOVED_SO_FAR } from '../names.ts';
import type { CardValue, FillAsked } from './fill-asked.ts';
import { fileLeaf } from './outpost-values.ts';

/** Every name that a formula of the card rests on, with its value; what is found at a line comes while it runs. */
export function leavesOf(card: Card, asked: FillAsked, chosen: ReadonlyMap<string, string>): Leaves {
  const names = new Set([
    ...card.ratings,
    ...formulasOf(card).flatMap((term) => leafNames(term, card.named)),
  ]);
  for (const { limits } of card.hazards) for (const { figure } of limits) names.add(figure);
  const leaves = new Map<string, Leaf | null>();
  for (const name of [...names].sort())
    if (!name.startsWith(FOUND) && name !== MOVED_SO_FAR)
      leaves.set(name, leafFor(name, { card, asked, chosen }));
  // Before anything flowed nothing has moved.
  if (names.has(MOVED_SO_FAR)) leaves.set(MOVED_SO_FAR, { value: 0, u: 0 });
  // A quantity that nobody gave is what its own formula says, and that may rest on the others.
  for (const { id, of, otherwise } of card.choose)
    if (of === 'quantity' && (leaves.get(id) ?? null) === null && otherwise !== null) {
      const reckoned = reckonFormula(otherwise, leaves, card.named);
      leaves.set(id, reckoned.is === 'known' ? reckoned : null);
    }
  return leaves;
}

function leafFor(
  name: string,
  {
    card,
    asked,
    chosen,
  }: { readonly card: Card; readonly asked: FillAsked; readonly chosen: ReadonlyMap<string, string> },
): Leaf | null {
  const given = asked.chosen[name];
  if (given !== undefined && typeof given !== 'string') return leafOfValue(given);
  const [choice = '', ...rest] = name.split('.');
  const thing = card.choices.has(choice) ? (chosen.get(choice) ?? null) : null;
  if (card.choices.has(choice) && thing === null) return null;
  const key = thing === null ? name : [thing, ...rest].join('.');
  const known = asked.values.get(key);
  if (known !== undefined) return leafOfValue(known);
  return fileLeaf(name, { thing, choices: card.choices, index: asked.index });
}

function leafOfValue({ value, u, unit }: CardValue): Leaf {
  return { value: toSi(value, unit), u: spanToSi(u, unit) };
}

function formulasOf(card: Card): readonly Term[] {
  const { flow } = card;
  const formulas = [
    ...card.named.values(),
    ...card.choose.map(({ otherwise }) => otherwise),
    ...card.conditions.map(({ holds }) => holds),
    ...card.steps.flatMap(({ expect: { about, within, atLeast, atMost }, input }) => [
      ...[about, within, atLeast, atMost],
      input.doubt,
    ]),
    ...(flow === null ? [] : [flow.planned, flow.minutes, flow.lineContent]),
    ...card.posts.flatMap(({ figures }) => Object.values(figures).map(({ value }) => value)),
  ];
  return formulas.flatMap((formula) =>
    formula === null
      ? []
      : formula.compared === null
        ? [formula.term]
        : [formula.term, formula.compared.with],
  );
}
