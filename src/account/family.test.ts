// The family of the water: against a plain forward model, on random histories, and on small ones worked out by hand.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { bookOf } from '../../tests/journeys/checks.ts';
import { HOLM } from '../../tests/journeys/holm.ts';
import { anyJourney, journeyOf } from '../../tests/journeys/journey.ts';
import { accountOf, positionNow } from '../../tests/journeys/kept.ts';
import { dayLine, holmOpening, litres, Told } from '../../tests/journeys/told.ts';
import { CORRIE_WORLD, HOLM_WORLD } from '../../tests/journeys/world.ts';
import type { AnyEntry } from '../book/index.ts';
import { type FamilyPart, familyOf } from './family.ts';
import { type Inflow, Inflows } from './inflows.ts';
import { storyOf } from './story.ts';

/** Holm, followed from its opening on; `setup` may be told more before. */
function followed(options: { readonly estimating?: boolean } = {}): { told: Told; inflows: Inflows } {
  const told = new Told(HOLM, options);
  const inflows = new Inflows();
  told.fold.watcher = inflows.watcher;
  told.tell('opening', holmOpening());
  return { told, inflows };
}

function familyIn({ told, inflows }: ReturnType<typeof followed>, store: string): readonly FamilyPart[] {
  const massMg = told.position().stores.find(({ facts }) => facts.id === store)?.massMg ?? 0;
  return familyOf(inflows.list, { store, massMg });
}

/** `FB 20.5 [delivery Pannier 20.5]` */
function said(parts: readonly FamilyPart[]): string {
  return parts
    .map(({ kind, name, massMg, parts: below }) => {
      const own = `${[kind === 'store' ? '' : kind, name].filter((word) => word !== '').join(' ')} ${massMg / 1e6}`;
      return below.length === 0 ? own : `${own} [${said(below)}]`;
    })
    .join(', ');
}

function mustAddUp(parts: readonly FamilyPart[], massMg: number): void {
  if (parts.length === 0) return;
  expect(parts.reduce((sum, part) => sum + part.massMg, 0)).toBe(massMg);
  for (const part of parts) {
    expect(Number.isSafeInteger(part.massMg) && part.massMg >= 0).toBe(true);
    mustAddUp(part.parts, part.massMg);
  }
}

function depthOf(parts: readonly FamilyPart[]): number {
  return parts.length === 0 ? 0 : 1 + Math.max(...parts.map((part) => depthOf(part.parts)));
}

describe.each([HOLM_WORLD, CORRIE_WORLD])('any history at $name', (world) => {
  test('has trees that add up to the content of every store, four generations deep at most', async () => {
    let trees = 0;
    await fc.assert(
      fc.asyncProperty(anyJourney, fc.nat({ max: 999 }), async (acts, choice) => {
        const port = await bookOf(journeyOf(world, acts).arrived);
        const { stores, accountsMg } = positionNow(await accountOf(port));
        const store = stores[choice % stores.length];
        if (store === undefined) throw new Error('nothing is aboard');
        const outcome = await storyOf(port, store.facts.id);
        if (!outcome.ok) throw new Error('no story');
        const { family } = outcome.story;
        expect(family.length > 0).toBe(store.massMg > 0);
        expect(store.massMg).toBe(accountsMg.get(`store:${store.facts.id}`) ?? 0);
        mustAddUp(family, store.massMg);
        expect(depthOf(family)).toBeLessThanOrEqual(4);
        if (family.some((part) => part.parts.length > 0)) trees += 1;
      }),
      { seed: 21470414, numRuns: 250 },
    );
    expect(trees).toBeGreaterThan(10);
  });
});

test('other names for the stores change the names in the tree and nothing else', async () => {
  const names = /\b(C-0[1-4]|W-0[12]|R1|KB|PB)\b/g;
  const renamed = (text: string) => text.replace(names, (name) => `Z-${name.toLowerCase()}`);
  const withoutIds = (parts: readonly FamilyPart[]) => JSON.stringify(parts);
  await fc.assert(
    fc.asyncProperty(anyJourney, fc.nat({ max: 999 }), async (acts, choice) => {
      const { arrived } = journeyOf(HOLM_WORLD, acts);
      const store = ['C-01', 'C-02', 'C-03', 'C-04', 'W-01', 'R1'][choice % 6] ?? '';
      const plain = await storyOf(await bookOf(arrived), store);
      const other = arrived.map((entry) => JSON.parse(renamed(JSON.stringify(entry))) as AnyEntry);
      const changed = await storyOf(await bookOf(other), renamed(store));
      if (!plain.ok || !changed.ok) throw new Error('no story');
      expect(withoutIds(changed.story.family)).toBe(renamed(withoutIds(plain.story.family)));
    }),
    { seed: 21470415, numRuns: 60 },
  );
});

test('a movement told in two parts is the same family as the movement told whole', () => {
  const tree = (parts: readonly number[]) => {
    const one = followed({ estimating: false });
    one.told.goTo(1, 8).tell('movement', { from: 'C-04', to: 'C-03', amount: litres(3) });
    parts.forEach((valueL, k) => {
      one.told.goTo(1, 9 + k / 10).tell('movement', { from: 'C-01', to: 'C-03', amount: litres(valueL) });
    });
    one.told.goTo(1, 12).tell('movement', { from: 'C-03', to: 'R1', amount: litres(4) });
    return ['C-03', 'R1'].map((store) => said(familyIn(one, store)));
  };
  const whole = tree([9]);
  expect(tree([0.25, 8.75])).toEqual(whole);
  expect(tree([2.5, 2.5, 4])).toEqual(whole);
  expect(whole[0]).toBe('C-01 6 [opening 6], C-04 2 [opening 2]');
});

test('backwards from now comes to the same as mixing forwards', () => {
  const stores = ['a', 'b', 'c', 'd'];
  const step = fc.record({
    from: fc.nat({ max: 4 }),
    to: fc.nat({ max: 3 }),
    amount: fc.integer({ min: 1, max: 50 }),
  });
  fc.assert(
    fc.property(fc.array(step, { minLength: 1, maxLength: 40 }), (steps) => {
      const model = new Map(stores.map((store) => [store, new Map<string, number>()]));
      const inflows: Inflow[] = [];
      steps.forEach(({ from, to, amount }, k) => {
        const source = stores[from] ?? null;
        const target = stores[to] ?? '';
        const given = source === null ? new Map([[`pool ${k % 3}`, amount]]) : drawn(model, source, amount);
        if (source === target || given.size === 0) return;
        const held = model.get(target) ?? new Map<string, number>();
        for (const [leaf, mass] of given) held.set(leaf, (held.get(leaf) ?? 0) + mass);
        const part = sum(given) / sum(held);
        const of = source === null ? `pool ${k % 3}` : `store:${source}`;
        inflows.push({
          to: `store:${target}`,
          from: of,
          told: null,
          part,
          begins: part >= 1,
          atMs: k,
          entry: `${k}`,
          grade: null,
        });
      });
      for (const store of stores) {
        const held = model.get(store) ?? new Map<string, number>();
        const massMg = Math.round(sum(held) * 1e6);
        const leaves = leavesOf(familyOf(inflows, { store, massMg }, { depth: 50, smallestShare: 0 }));
        for (const [leaf, mass] of held)
          expect(Math.abs((leaves.get(leaf) ?? 0) - mass * 1e6)).toBeLessThan(60);
      }
    }),
    { seed: 21470416, numRuns: 300 },
  );
});

function drawn(
  model: ReadonlyMap<string, Map<string, number>>,
  source: string,
  amount: number,
): Map<string, number> {
  const held = model.get(source) ?? new Map<string, number>();
  const all = sum(held);
  const share = all === 0 ? 0 : Math.min(1, amount / all);
  const given = new Map([...held].map(([leaf, mass]) => [leaf, mass * share]));
  for (const [leaf, mass] of held) held.set(leaf, share === 1 ? 0 : mass * (1 - share));
  if (share === 1) held.clear();
  return new Map([...given].filter(([, mass]) => mass > 0));
}

function sum(held: ReadonlyMap<string, number>): number {
  return [...held.values()].reduce((all, mass) => all + mass, 0);
}

function leavesOf(parts: readonly FamilyPart[], found = new Map<string, number>()): Map<string, number> {
  for (const part of parts) {
    if (part.parts.length > 0) leavesOf(part.parts, found);
    else found.set(part.name, (found.get(part.name) ?? 0) + part.massMg);
  }
  return found;
}

describe('a family tree', () => {
  test('names opening stock, what was made here, deliveries and what came from outside', () => {
    const one = followed();
    one.told
      .goTo(1, 9)
      .tell('movement', { from: 'C-01', to: 'C-03', amount: litres(10, 0.1), grade: 'drinking' });
    one.told.goTo(1, 10).tell('movement', { from: 'outside', to: 'C-03', amount: litres(5, 0.1) });
    expect(said(familyIn(one, 'C-03'))).toBe('C-01 10 [opening 10], pool outside 5');
    one.told
      .goTo(1, 21)
      .tell('day-line', dayLine(1, { condensate: 998, product: 6, strokes: 0, flushes: 0 }));
    const made = familyIn(one, 'PB');
    expect(made[0]?.parts.map(({ kind, name }) => `${kind} ${name}`)).toEqual(['pool cabin air', 'opening ']);
  });

  test('of a delivery names the visit, and goes through the store that brought it', () => {
    const one = followed();
    one.told.goTo(2, 9).tell('visit-berth', {
      visit: 'Sledge 4',
      peopleArrive: 0,
      stores: [
        {
          store: 'FX',
          kind: 'softBag',
          capacityL: 30,
          usableRemainderL: 0.5,
          amount: litres(25, 0.3),
          grade: 'drinking',
        },
      ],
    });
    one.told.goTo(2, 10).tell('movement', { from: 'FX', to: 'C-03', amount: litres(20, 0.1) });
    expect(said(familyIn(one, 'C-03'))).toBe('FX 20 [delivery Sledge 4 20]');
  });

  test('starts anew when a store was emptied, and what was left in it is older', () => {
    const one = followed({ estimating: false });
    one.told.goTo(1, 9).tell('movement', { from: 'C-04', to: 'R1', amount: litres(17.4) });
    one.told.goTo(1, 10).tell('movement', { from: 'C-01', to: 'C-04', amount: litres(11.4) });
    expect(said(familyIn(one, 'C-04'))).toBe('C-01 11.4 [opening 11.4], older 0.6');
  });

  test('of a reading stays the same tree: a reading says how much, not from where', () => {
    const one = followed();
    one.told.goTo(1, 9).tell('movement', { from: 'C-01', to: 'C-03', amount: litres(10, 0.1) });
    one.told.goTo(1, 10).tell('weigh', { store: 'C-03', amount: litres(10.3), instrument: 'balance' });
    const [only, ...others] = familyIn(one, 'C-03');
    expect(others).toEqual([]);
    expect(only).toMatchObject({ kind: 'store', name: 'C-01', share: 1 });
    expect(only?.massMg).toBeGreaterThan(10_050_000);
  });

  test('ends at four generations and says of small shares that they are older', () => {
    const one = followed({ estimating: false });
    const chain = ['C-01', 'C-03', 'C-01', 'C-03', 'C-01', 'C-03', 'C-01', 'C-03'];
    chain.slice(1).forEach((to, k) => {
      one.told.goTo(k + 1, 9).tell('movement', { from: chain[k] ?? '', to, amount: litres(10) });
    });
    expect(depthOf(familyIn(one, 'C-03'))).toBe(4);
    one.told.goTo(30, 9).tell('movement', { from: 'C-04', to: 'R1', amount: litres(0.5) });
    expect(said(familyIn(one, 'R1'))).toBe('opening 150, older 0.5');
  });

  test('of nothing is nothing, and of what nobody told it is all older', () => {
    const one = followed();
    expect(familyIn(one, 'W-02')).toEqual([]);
    one.told.goTo(1, 10).tell('weigh', { store: 'C-03', amount: litres(5, 0.1), instrument: 'balance' });
    expect(familyIn(one, 'C-03').map(({ kind, share }) => [kind, share])).toEqual([['older', 1]]);
  });
});

test('what came in longer ago than is kept is older', () => {
  const inflows = new Inflows(2);
  const told = new Told(HOLM, { estimating: false });
  told.fold.watcher = inflows.watcher;
  told.tell('opening', holmOpening());
  for (let k = 0; k < 4; k++)
    told.goTo(1, 9 + k).tell('movement', { from: 'C-01', to: 'C-03', amount: litres(1) });
  expect(inflows.list.length).toBeLessThan(4);
  const tree = familyOf(inflows.list, { store: 'C-03', massMg: 4_000_000 });
  expect(tree.map(({ kind }) => kind)).toEqual(['store', 'older']);
});
