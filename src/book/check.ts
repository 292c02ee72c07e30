// Checking a kept book: every chain from its first seal, every text against its columns, every head against the receipt.
import { canonicalJson, type Json } from './canonical.ts';
import { type BookPort, headOf, type KeptEntry } from './port.ts';
import { bookDigest, FIRST_SEAL, type Hash, type Head, sealOf } from './seal.ts';
import type { BookFinding } from './validate.ts';

export interface CheckResult {
  readonly entries: number;
  readonly digest: string;
  readonly heads: readonly Head[];
  readonly findings: readonly BookFinding[];
}

/** More findings than this are counted, not listed. */
const MOST_FINDINGS = 50;

/**
 * Walks all chains. A finding never stops the walk: what is behind a broken seal is checked on from the seal that stands there.
 * @param receipt heads that were written down outside the book; a book that knows less is behind
 */
export async function checkBook(
  port: BookPort,
  by: { readonly hash: Hash; readonly receipt?: readonly Head[] },
): Promise<CheckResult> {
  const heads = new Map<string, Head>();
  const findings: BookFinding[] = [];
  let entries = 0;
  for await (const rows of port.scan({ order: 'site' })) {
    entries += rows.length;
    for (const row of rows) {
      const head = heads.get(row.site) ?? headOf([], row.site, FIRST_SEAL);
      if (findings.length < MOST_FINDINGS) findings.push(...faultsOf(row, head, by.hash));
      heads.set(row.site, row);
    }
  }
  const list = [...heads.values()].map(({ site, number, seal }) => ({ site, number, seal }));
  findings.push(...(await againstReceipt(port, by.receipt ?? [])));
  return { entries, digest: bookDigest(by.hash, list), heads: list, findings };
}

function faultsOf(row: KeptEntry, head: Head, hash: Hash): readonly BookFinding[] {
  const follows = row.number === head.number + 1;
  const isSealed = sealOf(hash, head.seal, row.text) === row.seal;
  const problem = columnFault(row);
  if (follows && isSealed && problem === null) return NOTHING;
  const findings: BookFinding[] = [];
  if (!follows) findings.push(broken('chain-gap', row, { next: head.number + 1 }));
  if (!isSealed) findings.push(broken('chain-broken', row, {}));
  if (problem !== null) findings.push(broken(problem, row, {}));
  return findings;
}

const NOTHING: readonly BookFinding[] = [];

/** Do the columns that scans use say the same as the sealed text? */
function columnFault(row: KeptEntry): 'columns-differ' | 'text-not-canonical' | null {
  try {
    const entry = JSON.parse(row.text) as KeptEntry;
    const agree =
      entry.id === row.id &&
      entry.kind === row.kind &&
      entry.site === row.site &&
      entry.number === row.number &&
      entry.happenedAtMs === row.happenedAtMs &&
      entry.enteredAtMs === row.enteredAtMs;
    return agree ? null : 'columns-differ';
  } catch {
    return 'text-not-canonical';
  }
}

/** A slower look at one row: is its text the canonical spelling of what it says? */
export function isCanonical(row: KeptEntry): boolean {
  try {
    return canonicalJson(JSON.parse(row.text) as Json) === row.text;
  } catch {
    return false;
  }
}

/**
 * Holds a book against heads that were written down outside it. A book that knows fewer entries was shortened;
 * one that has another seal at a noted number tells another story.
 */
export async function againstReceipt(port: BookPort, receipt: readonly Head[]): Promise<BookFinding[]> {
  const heads = receipt.length === 0 ? [] : await port.heads();
  const findings: BookFinding[] = [];
  for (const noted of receipt) {
    const knows = headOf(heads, noted.site, FIRST_SEAL).number;
    const data = { site: noted.site, knows, receipt: noted.number };
    if (knows < noted.number) findings.push(ofReceipt('receipt-ahead', data));
    else if (noted.number > 0 && (await port.findNumber(noted.site, noted.number))?.seal !== noted.seal)
      findings.push(ofReceipt('receipt-differs', data));
  }
  return findings;
}

function ofReceipt(code: 'receipt-ahead' | 'receipt-differs', data: BookFinding['data']): BookFinding {
  return { code, severity: 'act-now', where: {}, data, entries: [] };
}

function broken(code: BookFinding['code'], row: KeptEntry, data: BookFinding['data']): BookFinding {
  return {
    code,
    severity: 'act-now',
    where: { entry: row.id },
    data: { site: row.site, number: row.number, ...data },
    entries: [row.id],
  };
}
