// Checking a kept book: every chain from its first seal, every text against its columns, every head against the receipt.
import { canonicalJson, type Json } from './canonical.ts';
import type { BookPort, KeptEntry } from './port.ts';
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
export async function checkBook(port: BookPort, by: { readonly hash: Hash; readonly receipt?: readonly Head[] }): Promise<CheckResult> {
  const heads = new Map<string, Head>();
  const findings: BookFinding[] = [];
  const add = (finding: BookFinding) => {
    if (findings.length < MOST_FINDINGS) findings.push(finding);
  };
  let entries = 0;
  for await (const rows of port.scan({ order: 'site' })) {
    for (const row of rows) {
      entries += 1;
      const head = heads.get(row.site) ?? { site: row.site, number: 0, seal: FIRST_SEAL };
      if (row.number !== head.number + 1) add(broken('chain-gap', row, { next: head.number + 1 }));
      if (sealOf(by.hash, head.seal, row.text) !== row.seal) add(broken('chain-broken', row, {}));
      if (!columnsAgree(row)) add(broken('text-not-canonical', row, {}));
      heads.set(row.site, { site: row.site, number: row.number, seal: row.seal });
    }
  }
  const list = [...heads.values()];
  for (const finding of againstReceipt(list, by.receipt ?? [])) add(finding);
  return { entries, digest: bookDigest(by.hash, list), heads: list, findings };
}

/** Do the columns that scans use say the same as the sealed text? */
function columnsAgree(row: KeptEntry): boolean {
  try {
    const entry = JSON.parse(row.text) as KeptEntry;
    return (
      entry.id === row.id &&
      entry.kind === row.kind &&
      entry.site === row.site &&
      entry.number === row.number &&
      entry.happenedAtMs === row.happenedAtMs &&
      entry.enteredAtMs === row.enteredAtMs
    );
  } catch {
    return false;
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

function againstReceipt(heads: readonly Head[], receipt: readonly Head[]): BookFinding[] {
  return receipt.flatMap((noted): BookFinding[] => {
    const head = heads.find((one) => one.site === noted.site);
    const number = head?.number ?? 0;
    if (number > noted.number || (number === noted.number && head?.seal === noted.seal)) return [];
    const data = { site: noted.site, knows: number, receipt: noted.number };
    return [{ code: 'receipt-ahead', severity: 'act-now', where: {}, data, entries: [] }];
  });
}

function broken(code: BookFinding['code'], row: KeptEntry, data: BookFinding['data']): BookFinding {
  return { code, severity: 'act-now', where: { entry: row.id }, data: { site: row.site, number: row.number, ...data }, entries: [row.id] };
}
