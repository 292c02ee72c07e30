// Posted flows: together they are the ledger, and each says what it carried and for which entry.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { bookOf } from '../../tests/journeys/checks.ts';
import { anyJourney, journeyOf } from '../../tests/journeys/journey.ts';
import { accountOf, draftOf, emptyBook, holmBook, keep } from '../../tests/journeys/kept.ts';
import { at, dayLine, litres } from '../../tests/journeys/told.ts';
import { CORRIE_WORLD, HOLM_WORLD } from '../../tests/journeys/world.ts';
import type { BookPort, View } from '../book/index.ts';
import { flowsOf, type PostedFlow } from './flows.ts';

async function allFlows(port: BookPort, view: View = {}): Promise<PostedFlow[]> {
  const outcome = await flowsOf(port, { view });
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.findings));
  const flows: PostedFlow[] = [];
  for await (const batch of outcome.flows) flows.push(...batch);
  return flows;
}

function sumsOf(flows: readonly PostedFlow[]): Record<string, number> {
  const sums = new Map<string, number>();
  for (const { from, to, massMg } of flows) {
    sums.set(from, (sums.get(from) ?? 0) - massMg);
    sums.set(to, (sums.get(to) ?? 0) + massMg);
  }
  return Object.fromEntries([...sums].filter(([, massMg]) => massMg !== 0));
}

test.each([HOLM_WORLD, CORRIE_WORLD])(
  'of any history at $name add up to its ledger, account by account',
  async (world) => {
    let flowCount = 0;
    await fc.assert(
      fc.asyncProperty(anyJourney, async (acts) => {
        const port = await bookOf(journeyOf(world, acts).arrived);
        const flows = await allFlows(port);
        const { fold } = await accountOf(port);
        const balances = [...fold.ledger.balances()].filter(([, massMg]) => massMg !== 0);
        expect(sumsOf(flows)).toEqual(Object.fromEntries(balances));
        flowCount += flows.length;
      }),
      { seed: 21470413, numRuns: 60 },
    );
    expect(flowCount).toBeGreaterThan(1000);
  },
);

describe('a flow', () => {
  test('says from where to where, how much, when, for which entry and of what grade', async () => {
    const port = await holmBook();
    const [moved] = await keep(port, [
      draftOf('movement', { from: 'C-01', to: 'C-02', amount: litres(5) }, { atMs: at(1, 10), count: 9 }),
    ]);
    const flows = await allFlows(port);
    expect(flows.at(-1)).toEqual({
      from: 'store:C-01',
      to: 'store:C-02',
      massMg: 5_000_000,
      atMs: at(1, 10),
      entry: moved?.id,
      kind: 'movement',
      grade: 'drinking',
    });
    expect(flows.filter(({ kind }) => kind === 'opening').map(({ to, grade }) => [to, grade])).toEqual([
      ['store:R1', 'drinking'],
      ['store:C-01', 'drinking'],
      ['store:C-02', 'technical'],
      ['store:C-04', 'drinking'],
      ['store:W-01', 'waste'],
      ['store:KB', 'raw'],
      ['store:PB', 'drinking'],
    ]);
  });

  test('of a counter carries the grade of the store that it was drawn from', async () => {
    const port = await holmBook();
    await keep(port, [
      draftOf('day-line', dayLine(1, { condensate: 994, product: 3, strokes: 40 }), {
        atMs: at(1, 21),
        count: 9,
      }),
    ]);
    const made = (await allFlows(port)).filter(({ kind }) => kind === 'day-line');
    expect(made.find(({ to }) => to === 'store:PB')).toMatchObject({ from: 'store:KB', grade: 'raw' });
    expect(made.find(({ to }) => to === 'store:KB')).toMatchObject({ from: 'cabin air', grade: null });
    expect(made.find(({ from }) => from === 'store:PB')).toMatchObject({ to: 'people', grade: 'drinking' });
  });

  test('is in a view only as the view has it', async () => {
    const port = await holmBook();
    await keep(port, [
      draftOf('movement', { from: 'C-01', to: 'C-03', amount: litres(5) }, { atMs: at(1, 10), count: 9 }),
    ]);
    const before = await allFlows(port, { asOfMs: at(1, 9) });
    expect((await allFlows(port)).length - before.length).toBe(1);
  });
});

test('a book without an outpost file has no flows, and says why', async () => {
  expect(await flowsOf(emptyBook())).toEqual({ ok: false, findings: null });
});
