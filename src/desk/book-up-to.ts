// A book as somebody saw it: the same rows, up to the heads that its chains had then.
import type { BookPort, Head, KeptEntry, ScanQuery } from '../book/index.ts';

/** How far each site's chain went. */
export type BookHeads = readonly Pick<Head, 'site' | 'number'>[];

export function bookUpTo(port: BookPort, heads: BookHeads): BookPort {
  const last = new Map(heads.map(({ site, number }) => [site, number]));
  const isIn = (row: KeptEntry) => row.number <= (last.get(row.site) ?? 0);
  return {
    info: () => port.info(),
    heads: async () => (await port.heads()).filter(({ site, number }) => number <= (last.get(site) ?? 0)),
    count: async () => heads.reduce((sum, { number }) => sum + number, 0),
    find: async (id) => seen(await port.find(id), isIn),
    findNumber: async (site, number) => seen(await port.findNumber(site, number), isIn),
    scan: (query) => scanOf(port, query, isIn),
    append: () => Promise.reject(new Error('a book of the past takes nothing')),
  };
}

function seen(row: KeptEntry | null, isIn: (row: KeptEntry) => boolean): KeptEntry | null {
  return row !== null && isIn(row) ? row : null;
}

async function* scanOf(
  port: BookPort,
  query: ScanQuery,
  isIn: (row: KeptEntry) => boolean,
): AsyncIterable<readonly KeptEntry[]> {
  for await (const rows of port.scan(query)) {
    const inside = rows.filter(isIn);
    if (inside.length > 0) yield inside;
  }
}
