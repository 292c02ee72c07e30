// A book kept in memory: for tests, for the practice of a moment, and as the plain model of the port.
import { compareOrder } from './order.ts';
import { type BookInfo, type BookPort, HeadMoved, headOf, type KeptEntry, type ScanQuery } from './port.ts';
import { FIRST_SEAL, type Head } from './seal.ts';

const DEFAULT_BATCH = 1000;

export class MemoryStore implements BookPort {
  readonly #info: BookInfo;
  readonly #byId = new Map<string, KeptEntry>();
  readonly #sites = new Map<string, KeptEntry[]>();

  constructor(info: BookInfo) {
    this.#info = info;
  }

  async info(): Promise<BookInfo> {
    return this.#info;
  }

  async heads(): Promise<readonly Head[]> {
    const heads: Head[] = [];
    for (const site of [...this.#sites.keys()].sort()) {
      const last = this.#sites.get(site)?.at(-1);
      if (last !== undefined) heads.push({ site, number: last.number, seal: last.seal });
    }
    return heads;
  }

  async count(): Promise<number> {
    return this.#byId.size;
  }

  async find(id: string): Promise<KeptEntry | null> {
    return this.#byId.get(id) ?? null;
  }

  async findNumber(site: string, number: number): Promise<KeptEntry | null> {
    return this.#sites.get(site)?.[number - 1] ?? null;
  }

  async *scan(query: ScanQuery): AsyncIterable<readonly KeptEntry[]> {
    const chosen = this.#choose(query);
    const batch = query.batch ?? DEFAULT_BATCH;
    for (let start = 0; start < chosen.length; start += batch) yield chosen.slice(start, start + batch);
  }

  async append(entries: readonly KeptEntry[], expectedHeads: readonly Head[]): Promise<void> {
    const heads = await this.heads();
    for (const expected of expectedHeads) {
      const head = headOf(heads, expected.site, FIRST_SEAL);
      if (head.number !== expected.number || head.seal !== expected.seal) throw new HeadMoved(expected.site);
    }
    const ids = new Set<string>();
    const next = new Map<string, number>();
    for (const entry of entries) {
      if (this.#byId.has(entry.id) || ids.has(entry.id)) throw new Error(`id ${entry.id} is kept already`);
      const wanted = next.get(entry.site) ?? headOf(heads, entry.site, FIRST_SEAL).number + 1;
      if (entry.number !== wanted) throw new Error(`number ${entry.number} of ${entry.site} leaves a gap: ${wanted} is next`);
      next.set(entry.site, wanted + 1);
      ids.add(entry.id);
    }
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
