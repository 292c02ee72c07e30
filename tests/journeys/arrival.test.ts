// Lines of two sites in any order, a tenth of them twice: the book and its position are those of the lines in order.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  type AnyEntry,
  acceptLines,
  bookDigest,
  canonicalJson,
  FIRST_SEAL,
  type Head,
  type Json,
  MemoryStore,
  sealOf,
} from '../../src/book/index.ts';
import { nodeHash } from '../../src/doors/disk/index.ts';
import { recordCounts } from '../verification/record.ts';
import { digestOf, reckon } from './checks.ts';
import { anyJourney, journeyOf } from './journey.ts';
import { HOLM_WORLD } from './world.ts';

const SEED = Number(process.env['JOURNEY_SEED'] ?? 21470301);
const SHUFFLES = 2000;
const counts = { shuffles: 0, lines: 0, 'lines twice': 0 };

/** Lines as an export writes them, each with its seal. */
function linesOf(entries: readonly AnyEntry[]): { readonly site: string; readonly line: string }[] {
  const heads = new Map<string, string>();
  return entries.map((entry) => {
    const text = canonicalJson(entry as unknown as Json);
    const seal = sealOf(nodeHash, heads.get(entry.site) ?? FIRST_SEAL, text);
    heads.set(entry.site, seal);
    return { site: entry.site, line: `{"entry":${text},"seal":"${seal}"}` };
  });
}

/** Both chains in their own order, mixed by the choices; each tenth line or so comes once more later on. */
function mixed(lines: ReturnType<typeof linesOf>, choices: readonly number[]): string[] {
  const chains = ['holm', 'ground'].map((site) =>
    lines.filter((each) => each.site === site).map(({ line }) => line),
  );
  const taken: string[] = [];
  for (let k = 0; chains.some((chain) => chain.length > 0); k++) {
    const choice = choices[k % choices.length] ?? 0;
    const [first, second] = choice % 2 === 0 ? chains : chains.toReversed();
    const line = first?.shift() ?? second?.shift();
    if (line !== undefined) taken.push(line);
    if (choice % 10 === 0 && taken.length > 0) taken.push(taken[choice % taken.length] ?? '');
  }
  return taken;
}

async function bookFrom(
  parcels: readonly (readonly string[])[],
): Promise<{ port: MemoryStore; heads: readonly Head[]; twice: number }> {
  const port = new MemoryStore({ bookId: 'b', site: 'elsewhere', purpose: 'book', createdAtMs: 0 });
  let twice = 0;
  for (const [k, parcel] of parcels.entries()) {
    const taken = await acceptLines(port, parcel, { hash: nodeHash, keptAtMs: k, firstLine: 2 });
    if (!taken.ok) throw new Error(JSON.stringify(taken.findings));
    twice += taken.alreadyKept;
  }
  return { port, heads: await port.heads(), twice };
}

test(`${SHUFFLES} shuffles, seed ${SEED}`, { timeout: 240_000 }, async () => {
  await fc.assert(
    fc.asyncProperty(
      anyJourney,
      fc.array(fc.nat({ max: 999 }), { minLength: 5, maxLength: 40, size: 'max' }),
      fc.integer({ min: 1, max: 9 }),
      async (acts, choices, size) => {
        const lines = linesOf(journeyOf(HOLM_WORLD, acts).arrived);
        const inOrder = await bookFrom([lines.map(({ line }) => line)]);
        const shuffled = mixed(lines, choices);
        const parcels = Array.from({ length: Math.ceil(shuffled.length / size) }, (_, k) =>
          shuffled.slice(k * size, (k + 1) * size),
        );
        const other = await bookFrom(parcels);
        expect(bookDigest(nodeHash, other.heads)).toBe(bookDigest(nodeHash, inOrder.heads));
        expect(digestOf(await reckon(other.port))).toBe(digestOf(await reckon(inOrder.port)));
        counts.shuffles += 1;
        counts.lines += lines.length;
        counts['lines twice'] += other.twice;
      },
    ),
    { seed: SEED, numRuns: SHUFFLES },
  );
  expect(counts['lines twice']).toBeGreaterThan(counts.lines / 15);
  recordCounts('arrival', import.meta.filename, { seed: SEED, counts });
});
