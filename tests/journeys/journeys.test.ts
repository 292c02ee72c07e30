// Histories by chance: the sum is 0 after every entry, going on equals starting anew, and the order of arrival has no say.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { Account, positionOf } from '../../src/account/index.ts';
import {
  type AnyEntry,
  acceptLines,
  canonicalJson,
  exportLines,
  FIRST_SEAL,
  headOf,
  type Json,
  MemoryStore,
  plainHash,
  rowOf,
  sealOf,
} from '../../src/book/index.ts';
import { readOutpost } from '../../src/outpost/index.ts';
import { recordCounts } from '../verification/record.ts';
import { positionDigest, stateOf } from './fold-state.ts';
import { type Act, anyJourney, type Journey, journeyOf } from './journey.ts';
import { emptyBook } from './kept.ts';
import { NaiveLedger } from './naive-ledger.ts';
import { CORRIE_WORLD, HOLM_WORLD, type World } from './world.ts';

const SEED = 21470301;
const counted = { histories: 0, entries: 0, shuffled: 0, compared: 0 };

const read = new Map<string, ReturnType<typeof readOutpost>>();

/** An outpost file is read once for all histories. */
function readOnce(text: string): ReturnType<typeof readOutpost> {
  const known = read.get(text) ?? readOutpost(text, { file: 'outpost of the test' });
  read.set(text, known);
  return known;
}

async function open(port: MemoryStore): Promise<Account> {
  const opened = await Account.open(port, { readOutpost: readOnce });
  if (!opened.ok) throw new Error(JSON.stringify(opened.findings));
  return opened.account;
}

async function append(port: MemoryStore, entry: AnyEntry): Promise<void> {
  const head = headOf(await port.heads(), entry.site, FIRST_SEAL);
  const text = canonicalJson(entry as unknown as Json);
  await port.append([rowOf(entry, { text, seal: sealOf(plainHash, head.seal, text), keptAtMs: 0 })], [head]);
}

/** Keeps a story entry by entry, takes each into the account, and holds the sum after every one of them. */
async function goOn({ arrived }: Journey): Promise<{ port: MemoryStore; account: Account }> {
  const port = emptyBook();
  const [file, opening, ...rest] = arrived as [AnyEntry, AnyEntry, ...AnyEntry[]];
  await append(port, file);
  await append(port, opening);
  const account = await open(port);
  for (const entry of rest) {
    await append(port, entry);
    await account.take([entry]);
    const { fold } = account;
    if (fold.ledger.closureMg() !== 0) throw new Error(`the ledger does not close after ${entry.kind}`);
    counted.entries += 1;
  }
  return { port, account };
}

async function holdsTogether(world: World, acts: readonly Act[]): Promise<void> {
  const journey = journeyOf(world, acts);
  const { port, account } = await goOn(journey);
  const anew = await open(port);
  counted.histories += 1;
  const position = positionOf(anew.fold, anew.fold.lastEntryMs ?? 0);
  expect(position.closureMg).toBe(0);
  expect(stateOf(account.fold)).toEqual(stateOf(anew.fold));
  againstNaive(world, journey, anew);
}

/** Stores that no counter and no reading of a port touches hold what the plain map says, to the milligram. */
function againstNaive(world: World, { arrived }: Journey, account: Account): void {
  const naive = new NaiveLedger(world, arrived);
  const onPorts = new Set(world.ports.flatMap(({ stores }) => stores));
  // The reserve feeds the tap when nothing else does.
  const spoken = world.stores.filter(
    (store) => !onPorts.has(store) && store !== 'R1' && !world.metered.includes(store),
  );
  for (const store of spoken) {
    expect(account.fold.ledger.balanceMg(`store:${store}`), store).toBe(naive.balances.get(store) ?? 0);
    counted.compared += 1;
  }
}

async function run(world: World, numRuns: number): Promise<void> {
  await fc.assert(
    fc.asyncProperty(anyJourney, (acts) => holdsTogether(world, acts)),
    { seed: SEED, numRuns },
  );
}

test(
  `Holm: 4,000 histories close, go on as from scratch, and agree with a plain map (seed ${SEED})`,
  { timeout: 240_000 },
  () => run(HOLM_WORLD, 4000),
);

test(
  `Corrie: 1,000 histories close, go on as from scratch, and agree with a plain map (seed ${SEED})`,
  { timeout: 240_000 },
  () => run(CORRIE_WORLD, 1000),
);

test('exchanged lines in any order of sites, a tenth of them twice, give the same position', {
  timeout: 120_000,
}, async () => {
  await fc.assert(
    fc.asyncProperty(anyJourney, fc.integer({ min: 0, max: 9 }), async (acts, which) => {
      const { port } = await goOn(journeyOf(HOLM_WORLD, acts));
      const [, ...lines] = await Array.fromAsync(exportLines(port));
      const ofSite = (site: string) => lines.filter((line) => line.includes(`"site":"${site}"`));
      const other = new MemoryStore({ bookId: 'c', site: 'ground', purpose: 'book', createdAtMs: 1 });
      const parcels = [ofSite('ground'), ofSite('holm'), lines.filter((_line, k) => k % 10 === which)];
      for (const parcel of which % 2 === 0 ? parcels : [parcels[1], parcels[0], parcels[2]]) {
        const taken = await acceptLines(other, parcel ?? [], { hash: plainHash, keptAtMs: 1, firstLine: 2 });
        expect(taken.ok).toBe(true);
      }
      const [here, there] = [await open(port), await open(other)];
      const digest = ({ fold }: Account) => positionDigest(positionOf(fold, fold.lastEntryMs ?? 0));
      expect(digest(there)).toBe(digest(here));
      counted.shuffled += 1;
    }),
    { seed: SEED, numRuns: 300 },
  );
});

test('control: a model that forgets undone entries wrongly, or rounds each leg, is caught', async () => {
  const wrong = (entries: readonly AnyEntry[]) =>
    new NaiveLedger(
      HOLM_WORLD,
      entries.filter(({ kind }) => kind !== 'undo'),
    );
  let caught = 0;
  await fc.assert(
    fc.asyncProperty(anyJourney, async (acts) => {
      const journey = journeyOf(HOLM_WORLD, acts);
      const { account } = await goOn(journey);
      const naive = wrong(journey.arrived);
      if (
        HOLM_WORLD.stores.some(
          (store) => naive.balances.get(store) !== account.fold.ledger.balanceMg(`store:${store}`),
        )
      )
        caught += 1;
    }),
    { seed: SEED, numRuns: 60 },
  );
  expect(caught).toBeGreaterThan(0);
});

test('the counts of these histories are written down', () => {
  expect(counted.histories).toBeGreaterThanOrEqual(5000);
  expect(counted.compared).toBeGreaterThan(0);
  const { histories, entries, compared, shuffled } = counted;
  recordCounts('journeys', import.meta.filename, {
    seed: SEED,
    counts: { histories, entries, compared, shuffled },
  });
});
