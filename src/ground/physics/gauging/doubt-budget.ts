// Which group of inputs makes the doubt of a result: the budget as one reads it.
import type { Propagated } from '../../maths/index.ts';

/** What a group of inputs makes. */
export interface BudgetShare<Group extends string> {
  readonly of: Group;
  /** In the unit of the result; 0 where a group takes back what others do. */
  readonly u: number;
  /** Part of u²; those of all groups make 1. */
  readonly share: number;
}

/**
 * The shares of a propagated result, gathered by groups, the largest first. What two inputs of two groups make together is
 * halved between them.
 * @param groups every input in one group; an input that is in none counts nowhere
 * @source gum, 5.1.2 and 5.2.2: the terms of the sum
 * @example doubtBudget(gauged.waterM3, { tank: ['tankM3'], pressure: ['tankBeforePa', 'tankAfterPa'] })[0].of // 'tank'
 */
export function doubtBudget<Name extends string, Group extends string>(
  { u, parts, pairs }: Propagated<Name>,
  groups: Readonly<Record<Group, readonly Name[]>>,
): readonly BudgetShare<Group>[] {
  const names = Object.keys(groups) as Group[];
  const budget = names.map((group): BudgetShare<Group> => {
    const isIn = (name: Name): boolean => groups[group].includes(name);
    let share = 0;
    for (const part of parts) if (isIn(part.of)) share += part.share;
    for (const pair of pairs) share += (pair.share * pair.of.filter(isIn).length) / 2;
    return { of: group, u: u * Math.sqrt(Math.max(0, share)), share };
  });
  return budget.sort((a, b) => b.share - a.share);
}
