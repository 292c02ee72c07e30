// The plain model of a scan, a filter and a sort over a list, and every combination of what a scan may be asked.
import type { KeptEntry, ScanQuery } from '../../src/book/index.ts';
import { chanceFrom, chooseFrom } from './made-up-entries.ts';

export function naiveScan(all: readonly KeptEntry[], query: ScanQuery): readonly KeptEntry[] {
  const keyOf = (row: Pick<KeptEntry, 'happenedAtMs' | 'site' | 'number'>) =>
    query.order === 'total' ? [row.happenedAtMs, row.site, row.number] : [row.site, row.number];
  const compare = (a: readonly (string | number)[], b: readonly (string | number)[]): number => {
    const at = a.findIndex((value, index) => value !== b[index]);
    if (at === -1) return 0;
    return (a[at] as number) < (b[at] as number) ? -1 : 1;
  };
  return all
    .filter((row) => query.site === undefined || row.site === query.site)
    .filter((row) => query.kinds === undefined || query.kinds.includes(row.kind))
    .filter((row) => query.after === undefined || compare(keyOf(row), keyOf(query.after)) > 0)
    .toSorted((a, b) => compare(keyOf(a), keyOf(b)));
}

/** Each order with each site, choice of kinds, place to start behind and size of batch. */
export function SCAN_QUERIES(all: readonly KeptEntry[], seed: number): readonly ScanQuery[] {
  const chance = chanceFrom(seed);
  const places = [
    () => undefined,
    () => chooseFrom(chance, all),
    () => ({ ...chooseFrom(chance, all), site: 'm-between', number: 1 }),
    () => ({ happenedAtMs: 0, site: 'zzz', number: 999_999 }),
  ];
  const queries: ScanQuery[] = [];
  for (const order of ['total', 'site'] as const)
    for (const site of [undefined, 'corrie', '7-lake', 'nowhere'])
      for (const kinds of [
        undefined,
        [],
        ['undo'],
        ['undo', 'note', 'undo'],
        ['movement', 'weigh', 'note', 'undo', 'release'],
      ])
        for (const place of places)
          for (const batch of [undefined, 1 + Math.floor(chance() * 900)]) {
            const after = place();
            queries.push({
              order,
              ...(site === undefined ? {} : { site }),
              ...(kinds === undefined ? {} : { kinds }),
              ...(after === undefined ? {} : { after }),
              ...(batch === undefined ? {} : { batch }),
            });
          }
  return queries;
}
