// A treatment by a recipe of the outpost: which water it is for, its dose, and the parts that go into it.
import type { Treatment } from '../../outpost/index.ts';
import { type Answer, no, yes } from '../answer.ts';
import { deskFinding } from '../desk-finding.ts';
import { type Context, findName, findStore, readAmount } from '../log/context.ts';
import type { MadeBody } from './begin.ts';
import type { TreatRequest } from './hold-request.ts';

/** The treatment, and what it takes of each part; they are kept together. */
export function treatBodies(
  context: Context,
  request: TreatRequest,
  isFact: boolean,
): Answer<readonly MadeBody[]> {
  const store = findStore(context, request.store);
  if (!store.ok) return store;
  const recipe = findRecipe(context, store.value, request.recipe);
  if (!recipe.ok) return recipe;
  const source = isFact ? null : sourceRules(context, store.value, recipe.value);
  if (source !== null) return source;
  const dose =
    request.dose === undefined ? yes(undefined) : readAmount(context, request.dose, { field: 'dose' });
  if (!dose.ok) return dose;
  const { id, to, usesPerContainer } = recipe.value;
  return yes([
    {
      kind: 'treatment',
      body: {
        store: store.value,
        recipe: id,
        toGrade: to,
        ...(dose.value !== undefined && { dose: dose.value }),
      },
    },
    ...usesPerContainer.map(({ part, count }): MadeBody => ({ kind: 'part-used', body: { part, count } })),
  ]);
}

function findRecipe({ fold }: Context, store: string, typed: string | undefined): Answer<Treatment> {
  const { treatments } = fold.index;
  if (typed !== undefined) {
    const name = findName('recipe', typed, [...treatments.keys()]);
    return name.ok ? yes(treatments.get(name.value) as Treatment) : name;
  }
  const grade = fold.stores.get(store)?.grade ?? null;
  const fitting = [...treatments.values()].filter(({ from }) => from === grade);
  const [only] = fitting;
  if (only !== undefined && fitting.length === 1) return yes(only);
  const data = { rule: 'treatment', store, recipe: 'any recipe', why: 'no recipe for it', neverHeld: [] };
  return no('refused', deskFinding('intention-refused', data));
}

/** Water of another grade than the recipe begins with is none that it is for. */
function sourceRules({ fold }: Context, store: string, { id, from }: Treatment) {
  const grade = fold.stores.get(store)?.grade ?? null;
  if (grade === from) return null;
  const data = { rule: 'treatment', store, recipe: id, why: 'other source', neverHeld: [], grade, from };
  return no('refused', deskFinding('intention-refused', data));
}
