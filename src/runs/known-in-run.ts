// What formulas know while a card runs: the values that it was filled with, what was found at its lines, what has moved.
import {
  type Card,
  type CardStep,
  type Expected,
  expectedAt,
  type Leaf,
  type Leaves,
  leafNames,
  reckonFormula,
  spanToSi,
  toSi,
} from '../outpost/index.ts';
import { counts, type LineState, type RunState } from './run-state.ts';

/** Water that was found to have moved in stretches that were broken off. */
export function movedBefore({ flow }: Pick<RunState, 'flow'>): {
  readonly litres: number;
  readonly u: number;
} {
  const moved = flow.flatMap((stretch) => stretch.moved ?? []);
  return {
    litres: moved.reduce((sum, { litres }) => sum + litres, 0),
    u: Math.sqrt(moved.reduce((sum, { u }) => sum + u * u, 0)),
  };
}

export function leavesInRun(card: Card, state: Pick<RunState, 'leaves' | 'lines' | 'flow'>): Leaves {
  const leaves = new Map(state.leaves);
  const before = movedBefore(state);
  leaves.set('run.moved', { value: toSi(before.litres, 'L'), u: spanToSi(before.u, 'L') });
  for (const step of card.steps) {
    const line = state.lines.get(step.id);
    const found = line === undefined ? null : foundLeaf(step, line, { card, leaves });
    if (found !== null) leaves.set(`found.${step.id}`, found);
  }
  return leaves;
}

function foundLeaf(
  { input }: CardStep,
  line: LineState,
  { card, leaves }: { readonly card: Card; readonly leaves: Leaves },
): Leaf | null {
  const { found } = line;
  if (!counts(line) || found?.is !== 'number' || input.unit === undefined) return null;
  const value = toSi(found.value, input.unit);
  if (found.u !== undefined) return { value, u: spanToSi(found.u, input.unit) };
  const doubt = input.doubt === null ? null : reckonFormula(input.doubt, leaves, card.named);
  return { value, u: doubt?.is === 'known' ? Math.abs(doubt.value) : 0 };
}

/** What a line expects, by all that is known at this moment of the run. */
export function expectedInRun(card: Card, state: RunState, step: CardStep): Expected {
  return expectedAt(step, leavesInRun(card, state), card.named);
}

/** Lines whose values bounds of a *must pass* line rest on: without them it could not be judged. */
export function neededLines(card: Card): ReadonlySet<string> {
  const needed = new Set<string>();
  for (const { mustPass, expect } of card.steps) {
    if (mustPass === undefined) continue;
    for (const formula of [expect.about, expect.within, expect.atLeast, expect.atMost])
      for (const name of formula === null ? [] : leafNames(formula.term, card.named))
        if (name.startsWith('found.')) needed.add(name.slice('found.'.length));
  }
  return needed;
}
