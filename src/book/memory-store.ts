// A book kept in memory: for tests, for the practice of a moment, and as the plain model of the port.
import { holdAppend } from './append-rules.ts';
import { compareOrder } from './order.ts';
import { type BookInfo, type BookPort, IdTaken, type KeptEntry, type ScanQuery } from './port.ts';
import type { Head } from './seal.ts';

const DEFAULT_BATCH = 1000;

export class MemoryStore implements BookPort {
  readonly #info: BookInfo;
  readonly #byId = new Map<string, KeptEntry>();
  readonly #sites = new Map<string, KeptEntry[]>();

  constructor(info: BookInfo) {
    this.#info = info;
  }

  info(): Promise<BookInfo> {
    return Promise.resolve(this.#info);
  }

  heads(): Promise<readonly Head[]> {
    return Promise.resolve(this.#heads());
  }

  #heads(): readonly Head[] {
    const heads: Head[] = [];
    for (const site of [...this.#sites.keys()].sort()) {
      const last = this.#sites.get(site)?.at(-1);
      if (last !== undefined) heads.push({ site, number: last.number, seal: last.seal });
    }
    return heads;
  }

  count(): Promise<number> {
    return Promise.resolve(this.#byId.size);
  }

  find(id: string): Promise<KeptEntry | null> {
    return Promise.resolve(this.#byId.get(id) ?? null);
  }

  findNumber(site: string, number: number): Promise<KeptEntry | null> {
    return Promise.resolve(this.#sites.get(site)?.[number - 1] ?? null);
  }

  // biome-ignore lint/suspicious/useAwait: the port asks for batches that may be waited for.
  async *scan(query: ScanQuery): AsyncIterable<readonly KeptEntry[]> {
    const chosen = this.#choose(query);
    const batch = query.batch ?? DEFAULT_BATCH;
    for (let start = 0; start < chosen.length; start += batch) yield chosen.slice(start, start + batch);
  }

  append(entries: readonly KeptEntry[], expectedHeads: readonly Head[]): Promise<void> {
    return Promise.try(() => this.#append(entries, expectedHeads));
  }

  #append(entries: readonly KeptEntry[], expectedHeads: readonly Head[]): void {
    holdAppend(this.#heads(), entries, expectedHeads);
    const taken = entries.find((entry) => this.#byId.has(entry.id));
    if (taken !== undefined) throw new IdTaken(taken.id);
    for (const entry of entries) this.#keep(entry);
  }

  #keep(entry: KeptEntry): void {
    this.#byId.set(entry.id, entry);
    const list = this.#sites.get(entry.site);
    if (list === undefined) this.#sites.set(entry.site, [entry]);
    else list.push(entry);
  }

  #choose(query: ScanQuery): KeptEntry[] {
    const kinds = query.kinds === undefined ? null : new Set(query.kinds);
    const compare = query.order === 'total' ? compareOrder : compareSite;
    const after = query.after;
    return [...this.#byId.values()]
      .filter((entry) => query.site === undefined || entry.site === query.site)
      .filter((entry) => kinds === null || kinds.has(entry.kind))
      .filter((entry) => after === undefined || compare(entry, after) > 0)
      .sort(compare);
  }
}

function compareSite(a: { site: string; number: number }, b: { site: string; number: number }): number {
  if (a.site !== b.site) return a.site < b.site ? -1 : 1;
  return a.number - b.number;
}
