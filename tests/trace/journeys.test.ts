// Contact tracing over books of random stories: the same as the tracer of parcels, and the history is that of the account.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  flowsOf,
  historyOf,
  originsOf,
  suspicionAt,
  traceContacts,
  type WaterHistory,
} from '../../src/account/index.ts';
import type { BookPort } from '../../src/book/index.ts';
import { bookOf } from '../journeys/checks.ts';
import { anyJourney, journeyOf } from '../journeys/journey.ts';
import { accountOf, positionNow } from '../journeys/kept.ts';
import { CORRIE_WORLD, HOLM_WORLD } from '../journeys/world.ts';
import { NaiveTracer } from './naive-tracer.ts';

const CLOSE_MG = 1.5;

async function read(port: BookPort): Promise<WaterHistory> {
  const outcome = await historyOf(port);
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.findings));
  return outcome.history;
}

describe.each([
  { world: HOLM_WORLD, histories: 200 },
  { world: CORRIE_WORLD, histories: 60 },
])('any story of $world.name', ({ world, histories }) => {
  test('is traced as the tracer of parcels does it', { timeout: 120_000 }, async () => {
    let contacts = 0;
    await fc.assert(
      fc.asyncProperty(anyJourney, fc.nat({ max: 9999 }), async (acts, choice) => {
        const history = await read(await bookOf(journeyOf(world, acts).arrived));
        const store = world.stores[choice % world.stores.length] ?? '';
        const from = history.steps[0]?.atMs ?? 0;
        const takenAtMs = from + (((history.steps.at(-1)?.atMs ?? 0) - from) * (choice % 97)) / 97;
        const suspicion = suspicionAt(history, { store }, takenAtMs);
        const { trace } = traceContacts(history, suspicion);
        const naive = new NaiveTracer(history, new Set()).trace(suspicion);
        history.accounts.forEach(({ kind, name }, at) => {
          const found = trace.contacts.find((one) => one.kind === kind && one.name === name)?.suspectMg ?? 0;
          const apartMg = Math.abs(found - (naive.suspectMg[at] ?? 0));
          if (!(apartMg <= CLOSE_MG)) throw new Error(`${name}: ${found} and not ${naive.suspectMg[at]}`);
        });
        contacts += trace.contacts.filter(({ isSource }) => !isSource).length;
      }),
      { seed: 21470502, numRuns: histories },
    );
    expect(contacts).toBeGreaterThan(histories / 4);
  });

  test('has the contents of its position, and origins that add up to them', async () => {
    let told = 0;
    await fc.assert(
      fc.asyncProperty(anyJourney, async (acts) => {
        const port = await bookOf(journeyOf(world, acts).arrived);
        const history = await read(port);
        for (const { facts, massMg } of positionNow(await accountOf(port)).stores) {
          const origins = originsOf(history, facts.id);
          if (origins === null) continue;
          expect(origins.heldMg).toBe(Math.max(0, massMg));
          if (origins.heldMg > 0)
            expect(origins.origins.reduce((sum, one) => sum + one.massMg, 0)).toBe(origins.heldMg);
          told += origins.origins.length;
        }
      }),
      { seed: 21470503, numRuns: 60 },
    );
    expect(told).toBeGreaterThan(60);
  });

  test('has every flow of the book in its history', async () => {
    const isTold = (kind: string) => kind === 'opening' || kind === 'visit-berth';
    let compared = 0;
    await fc.assert(
      fc.asyncProperty(anyJourney, async (acts) => {
        const port = await bookOf(journeyOf(world, acts).arrived);
        const history = await historyOf(port, { estimating: false });
        const flows = await flowsOf(port);
        if (!history.ok || !flows.ok) throw new Error('no book');
        const posted: string[] = [];
        for await (const batch of flows.flows)
          for (const { entry, massMg, kind } of batch) if (!isTold(kind)) posted.push(`${entry} ${massMg}`);
        const steps = history.history.steps.flatMap((step) =>
          step.what === 'flow' && !isTold(step.kind) ? [`${step.entry} ${step.massMg}`] : [],
        );
        // What stands in for a missing count comes behind them.
        expect(steps.slice(0, posted.length)).toEqual(posted);
        compared += posted.length;
      }),
      { seed: 21470504, numRuns: 40 },
    );
    expect(compared).toBeGreaterThan(100);
  });
});
