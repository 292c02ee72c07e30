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
  const groups: Group[] = [];
  const shares: number[] = [];
  const add = (name: Name, share: number): void => {
    const group = groupOf[name];
    const at = groups.indexOf(group);
    if (at < 0) {
      groups.push(group);
      shares.push(share);
    } else shares[at] = (shares[at] as number) + share;
  };
  for (const { of, share } of parts) add(of, share);
  for (const { of, share } of pairs) for (const each of of) add(each, share / 2);
  const budget = groups.map((of, at) => {
    const share = shares[at] as number;
    return { of, u: u * Math.sqrt(Math.max(0, share)), share };
  });
  return budget.sort((a, b) => b.share - a.share);
}
