// Holds a book that went through a fault against the chain that its writer wrote.
import type { KeptEntry } from '../../src/book/index.ts';
import { checkBookFile, openBook } from '../../src/doors/disk/index.ts';

export interface Expected {
  readonly chain: readonly KeptEntry[];
  /** Number up to which appends had been acknowledged. */
  readonly acked: number;
  /** Heads that the book may stand at: the ends of appends, and 0. */
  readonly ends: ReadonlySet<number>;
}

/** What is wrong with a book after a fault; null when it is whole and holds everything that was acknowledged. */
export async function whatIsWrong(path: string, expected: Expected): Promise<string | null> {
  try {
    using book = await openBook(path, { owner: 'faults', waitMs: 1000 });
    const check = await checkBookFile(book);
    const [finding] = check.findings;
    if (finding !== undefined) return `${finding.code} ${JSON.stringify(finding.data)}`;
    const number = check.heads[0]?.number ?? 0;
    if (check.heads.length > 1) return `${check.heads.length} chains`;
    if (number < expected.acked) return `lost: acknowledged ${expected.acked}, kept ${number}`;
    if (!expected.ends.has(number)) return `half an append: kept ${number}`;
    const seal = expected.chain[number - 1]?.seal;
    return check.heads[0]?.seal === seal ? null : `another chain at ${number}`;
  } catch (error) {
    return String(error);
  }
}

/** The heads after each append of a plan. */
export function endsOf(plan: readonly number[], from = 0): ReadonlySet<number> {
  const ends = new Set([from]);
  let number = from;
  for (const count of plan) {
    number += count;
    ends.add(number);
  }
  return ends;
}
