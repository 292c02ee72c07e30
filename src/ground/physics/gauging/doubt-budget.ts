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
 * @param groupOf the group of every input
 * @source gum, 5.1.2 and 5.2.2: the terms of the sum
 * @example doubtBudget(gauged.waterM3, { tankM3: 'tank', tankBeforePa: 'pressure', tankAfterPa: 'pressure' })[0].of // 'tank'
 */
export function doubtBudget<Name extends string, Group extends string>(
  { u, parts, pairs }: Propagated<Name>,
  groupOf: Readonly<Record<Name, Group>>,
): readonly BudgetShare<Group>[] {
  const budget: { of: Group; u: number; share: number }[] = [];
  for (const { of, share } of parts) lineOf(budget, groupOf[of]).share += share;
  for (const { of, share } of pairs) for (const each of of) lineOf(budget, groupOf[each]).share += share / 2;
  for (const line of budget) line.u = u * Math.sqrt(Math.max(0, line.share));
  return budget.sort((a, b) => b.share - a.share);
}

function lineOf<Line extends { readonly of: string }>(
  budget: ({ u: number; share: number } & Line)[],
  group: Line['of'],
): { u: number; share: number } {
  for (let at = 0; at < budget.length; at += 1) {
    const line = budget[at] as { u: number; share: number } & Line;
    if (line.of === group) return line;
  }
  const line = { of: group, u: 0, share: 0 } as { u: number; share: number } & Line;
  budget.push(line);
  return line;
}
