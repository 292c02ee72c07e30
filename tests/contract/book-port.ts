// What every store of a book has to do, whatever it is made of: one suite, run against each of them.
import { describe, expect, test } from 'vitest';
import {
  type BookInfo,
  type BookPort,
  checkBook,
  contentOf,
  type Draft,
  FIRST_SEAL,
  type Head,
  HeadMoved,
  IdTaken,
  type KeptEntry,
  keepDrafts,
  plainHash,
} from '../../src/book/index.ts';
import { headAfter, makeDrafts, sealedAs } from './made-up-entries.ts';
import { naiveScan, SCAN_QUERIES } from './naive-scan.ts';

export const INFO: BookInfo = {
  bookId: '017f22e2-79b0-7cc3-98c4-dc0c0c07398f',
  site: 'corrie',
  purpose: 'book',
  createdAtMs: Date.UTC(2147, 0, 1),
};

/** A store under test: a fresh empty book at each call. */
export type OpenStore = (info: BookInfo) => Promise<{ port: BookPort; close: () => Promise<void> }>;

const NONE: Head = { site: 'corrie', number: 0, seal: FIRST_SEAL };
const BY = { hash: plainHash, keptAtMs: Date.UTC(2147, 5, 1) };

async function read(port: BookPort, query: Parameters<BookPort['scan']>[0]): Promise<KeptEntry[]> {
  const found: KeptEntry[] = [];
  for await (const rows of port.scan(query)) found.push(...rows);
  return found;
}

export function describeBookPort(name: string, open: OpenStore): void {
  const withStore = async (work: (port: BookPort) => Promise<void>): Promise<void> => {
    const store = await open(INFO);
    try {
      await work(store.port);
    } finally {
      await store.close();
    }
  };
  describe(`${name} keeps entries`, () => keeping(withStore));
  describe(`${name} keeps all or none`, () => allOrNone(withStore));
  describe(`${name} scans`, () => scanning(withStore));
}

type WithStore = (work: (port: BookPort) => Promise<void>) => Promise<void>;

function keeping(withStore: WithStore): void {
  test('an empty book says what it is and holds nothing', () =>
    withStore(async (port) => {
      expect(await port.info()).toEqual(INFO);
      expect(await port.heads()).toEqual([]);
      expect(await port.count()).toBe(0);
      expect(await port.find(INFO.bookId)).toBeNull();
      expect(await port.findNumber('corrie', 1)).toBeNull();
      expect(await read(port, { order: 'total' })).toEqual([]);
    }));

  test('what was appended comes back letter by letter, by id and by number', () =>
    withStore(async (port) => {
      const rows = sealedAs('corrie', makeDrafts(1, 40));
      await port.append(rows, [NONE]);
      expect(await port.count()).toBe(40);
      for (const row of rows) {
        expect(await port.find(row.id)).toEqual(row);
        expect(await port.findNumber(row.site, row.number)).toEqual(row);
      }
      expect(await port.findNumber('corrie', 41)).toBeNull();
      expect(await port.findNumber('other', 1)).toBeNull();
    }));

  test('integers come back exactly, up to the ends of what an entry may say', () =>
    withStore(async (port) => {
      const drafts = makeDrafts(2, 2).map((draft, at) => ({
        ...draft,
        happenedAtMs: at === 0 ? -2_208_988_800_000 : 32_503_679_999_999,
        enteredAtMs: at === 0 ? 32_503_679_999_999 : -2_208_988_800_000,
      }));
      const rows = sealedAs('corrie', drafts);
      await port.append(rows, [NONE]);
      expect(await read(port, { order: 'total' })).toEqual(rows);
    }));

  test('heads stand in the order of site names, one for each site', () =>
    withStore(async (port) => {
      const [a, b, c] = ['north-ridge', 'corrie', '7-lake'].map((site, at) =>
        sealedAs(site, makeDrafts(10 + at, 5 + at)),
      ) as [KeptEntry[], KeptEntry[], KeptEntry[]];
      await port.append([...a, ...b], []);
      await port.append(c, [{ ...NONE, site: '7-lake' }]);
      expect(await port.heads()).toEqual([c, b, a].map(headAfter));
    }));

  test('a kept book passes the check and has one digest with any other store', () =>
    withStore(async (port) => {
      const drafts = makeDrafts(3, 300);
      for (let at = 0; at < drafts.length; at += 37) {
        const kept = await keepDrafts(port, drafts.slice(at, at + 37), BY);
        expect(kept.ok).toBe(true);
      }
      const check = await checkBook(port, { hash: plainHash });
      expect(check.findings).toEqual([]);
      expect(check.entries).toBe(300);
      // Worked out from the rows themselves: "corrie 300 <seal>\n".
      const head = headAfter(sealedAs('corrie', drafts));
      expect(check.digest).toBe(plainHash(`corrie 300 ${head.seal}\n`));
    }));
}

function allOrNone(withStore: WithStore): void {
  const refused = async (port: BookPort, rows: KeptEntry[], heads: Head[], error: object): Promise<void> => {
    const before = await read(port, { order: 'site' });
    await expect(port.append(rows, heads)).rejects.toBeInstanceOf(error);
    expect(await read(port, { order: 'site' })).toEqual(before);
    expect(await port.count()).toBe(before.length);
  };

  test('a head that moved refuses the whole append', () =>
    withStore(async (port) => {
      const rows = sealedAs('corrie', makeDrafts(4, 30));
      await port.append(rows.slice(0, 10), [NONE]);
      await refused(port, rows.slice(0, 10), [NONE], HeadMoved);
      await refused(port, rows.slice(10), [headAfter(rows.slice(0, 9))], HeadMoved);
      await refused(port, rows.slice(10), [{ ...headAfter(rows.slice(0, 10)), seal: FIRST_SEAL }], HeadMoved);
      await port.append(rows.slice(10), [headAfter(rows.slice(0, 10))]);
      expect(await read(port, { order: 'site' })).toEqual(rows);
    }));

  test('an id that the book has refuses the whole append, and so does one that comes twice', () =>
    withStore(async (port) => {
      const drafts = makeDrafts(5, 20);
      const kept = sealedAs('corrie', drafts.slice(0, 10));
      await port.append(kept, [NONE]);
      const again = sealedAs('corrie', [...drafts.slice(10), drafts[3] as Draft<never>], headAfter(kept));
      await refused(port, again, [headAfter(kept)], IdTaken);
      const elsewhere = sealedAs('north-ridge', [drafts[3] as Draft<never>]);
      await refused(port, elsewhere, [{ ...NONE, site: 'north-ridge' }], IdTaken);
      const twice = sealedAs('north-ridge', [...drafts.slice(10), drafts[12] as Draft<never>]);
      await refused(port, twice, [{ ...NONE, site: 'north-ridge' }], IdTaken);
    }));

  test('a number that leaves a gap refuses the whole append', () =>
    withStore(async (port) => {
      const rows = sealedAs('corrie', makeDrafts(6, 9));
      await refused(port, rows.slice(1), [NONE], Error);
      await refused(port, [...rows.slice(0, 4), ...rows.slice(5)], [NONE], Error);
    }));

  test('same id and content is no new entry, same id and other content is a finding', () =>
    withStore(async (port) => {
      const drafts = makeDrafts(7, 12);
      await keepDrafts(port, drafts.slice(0, 8), BY);
      const again = await keepDrafts(port, [...drafts, ...drafts.slice(0, 2)], BY);
      expect(again).toMatchObject({
        ok: true,
        alreadyKept: drafts
          .slice(0, 8)
          .concat(drafts.slice(0, 2))
          .map(({ id }) => id),
      });
      expect(await port.count()).toBe(12);
      const other = { ...(drafts[2] as Draft<'note'>), note: 'said otherwise' } as Draft<never>;
      const contradicted = await keepDrafts(port, [...makeDrafts(8, 3), other], BY);
      expect(contradicted).toMatchObject({
        ok: false,
        findings: [{ code: 'id-reused', data: { keptNumber: 3 } }],
      });
      expect(await port.count()).toBe(12);
      const kept = await port.findNumber('corrie', 3);
      expect(contentOf(JSON.parse(kept?.text ?? '{}'))).toBe(contentOf(drafts[2] as Draft<never>));
    }));
}

function scanning(withStore: WithStore): void {
  test('5,000 entries of three sites: every kind of scan gives what a filter over a list gives', () =>
    withStore(async (port) => {
      const all: KeptEntry[] = [];
      for (const [at, site] of ['corrie', 'north-ridge', '7-lake'].entries())
        all.push(...sealedAs(site, makeDrafts(100 + at, [3000, 1500, 500][at] as number)));
      for (let at = 0; at < all.length; at += 700) await port.append(all.slice(at, at + 700), []);
      const queries = SCAN_QUERIES(all, 2147);
      for (const query of queries) {
        const wanted = naiveScan(all, query);
        const found: KeptEntry[] = [];
        for await (const rows of port.scan(query)) {
          expect(rows.length).toBeGreaterThan(0);
          expect(rows.length).toBeLessThanOrEqual(query.batch ?? 1000);
          found.push(...rows);
        }
        expect(found.map(placeOf), JSON.stringify(query)).toEqual(wanted.map(placeOf));
      }
      expect(queries.length).toBeGreaterThanOrEqual(200);
    }));

  test('entries appended while a scan runs are not in it', () =>
    withStore(async (port) => {
      const rows = sealedAs('corrie', makeDrafts(9, 50));
      await port.append(rows.slice(0, 30), [NONE]);
      for (const order of ['total', 'site'] as const) {
        const before = await read(port, { order });
        const seen: KeptEntry[] = [];
        for await (const batch of port.scan({ order, batch: 7 })) {
          if (seen.length === 0) {
            const { number } = (await port.heads()).find(({ site }) => site === 'corrie') as Head;
            await port.append(rows.slice(number, number + 10), [headAfter(rows.slice(0, number))]);
            await port.append(sealedAs(`a-${order}`, makeDrafts(order.length, 5)), []);
          }
          seen.push(...batch);
        }
        expect(seen).toEqual(before);
      }
      expect(await port.count()).toBe(60);
    }));

  test('a scan that is left half way holds nobody up', () =>
    withStore(async (port) => {
      const rows = sealedAs('corrie', makeDrafts(11, 40));
      await port.append(rows.slice(0, 30), [NONE]);
      for await (const batch of port.scan({ order: 'site', batch: 10 })) {
        expect(batch).toHaveLength(10);
        break;
      }
      await port.append(rows.slice(30), [headAfter(rows.slice(0, 30))]);
      expect(await read(port, { order: 'site' })).toEqual(rows);
    }));
}

function placeOf(row: KeptEntry): string {
  return `${row.site} ${row.number}`;
}
