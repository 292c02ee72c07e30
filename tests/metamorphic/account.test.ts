// What must come of the whole practice book when it is told otherwise: other names, other days, split movements, other sizes.
import { beforeAll, describe, expect, test } from 'vitest';
import type { AnyEntry } from '../../src/book/index.ts';
import { msPerDay } from '../../src/ground/units/index.ts';
import type { Outpost } from '../../src/outpost/index.ts';
import { changedThroughout, numbered, practiceEntries, type Reckoned, reckoned } from './practice.ts';

let entries: readonly AnyEntry[];
let plain: Reckoned;

beforeAll(async () => {
  entries = await practiceEntries();
  plain = await reckoned(entries);
  expect(plain.position.stores.length).toBeGreaterThan(25);
  expect(plain.position.closureMg).toBe(0);
});

/** Every figure of every store, by name; and every learned error. */
function figuresOf({ position }: Reckoned, nameOf: (id: string) => string = (id) => id) {
  const stores = position.stores.map((store) => {
    const { facts, massMg, uMg, lowMg, highMg, howKnown, standing, ageMs, grade } = store;
    return [nameOf(facts.id), massMg, uMg, lowMg, highMg, howKnown, standing, ageMs, grade] as const;
  });
  const learned = position.learned.map(({ kind, of, mean, u }) => [kind, nameOf(of), mean, u] as const);
  const byName = <T extends readonly unknown[]>(list: readonly T[]) =>
    [...list].sort((a, b) => (`${a[0]} ${a[1]}` < `${b[0]} ${b[1]}` ? -1 : 1));
  return { stores: byName(stores), learned: byName(learned) };
}

const codesOf = ({ position }: Reckoned, nameOf: (id: string) => string = (id) => id) =>
  position.findings.map(
    ({ code, where }) => `${code} ${where.store === undefined ? '' : nameOf(where.store)}`,
  );

describe('stores by other names', () => {
  /** Containers and waste containers, each group counted from its other end. */
  const turned = (id: string): string => {
    const [, group, number] = /^([CW])-(\d\d)$/.exec(id) ?? [];
    // C-17 to C-19 come with a freighter: they are of another kind than the others.
    if (number === undefined || (group === 'C' && Number(number) > 16)) return id;
    const many = group === 'C' ? 16 : 7;
    return `${group}-${String(many + 1 - Number(number)).padStart(2, '0')}`;
  };

  test('turned round within their groups: the same figures bit for bit, under the other names', async () => {
    const told = entries.map((entry) =>
      entry.kind === 'outpost'
        ? entry
        : changedThroughout(entry, (value) => (typeof value === 'string' ? turned(value) : value)),
    );
    const other = await reckoned(told);
    expect(figuresOf(other, turned)).toEqual(figuresOf(plain));
    expect(codesOf(other, turned)).toEqual(codesOf(plain));
    expect(codesOf(other)).not.toEqual(codesOf(plain));
  });

  test('all of them renamed, in the outpost file as well', async () => {
    const renamed = (text: string) => text.replaceAll(/\b([CW])-(?=\d\d\b)/g, (_all, group) => `${group}Z-`);
    const back = (id: string) => id.replaceAll('Z-', '-');
    const told = entries.map((entry) =>
      changedThroughout(entry, (value) => (typeof value === 'string' ? renamed(value) : value)),
    );
    const other = await reckoned(told);
    expect(other.position.stores.some(({ facts }) => facts.id === 'CZ-07')).toBe(true);
    expect(figuresOf(other, back)).toEqual(figuresOf(plain));
    expect(codesOf(other, back)).toEqual(codesOf(plain));
  });
});

describe('other days', () => {
  test.each([1, 30, 400])('%i days later: the same figures bit for bit', async (days) => {
    const later = days * msPerDay;
    const first = new Date(Date.UTC(2147, 2, 1) + later).toISOString().slice(0, 10);
    const told = entries.map((entry) =>
      changedThroughout(entry, (value, key) => {
        if (entry.kind === 'outpost' && key === 'text')
          return String(value).replace('dayOne: 2147-03-01', `dayOne: ${first}`);
        return typeof value === 'number' && key.endsWith('Ms') ? value + later : value;
      }),
    );
    const other = await reckoned(told);
    expect(other.position.lastEntryMs).toBe((plain.position.lastEntryMs ?? 0) + later);
    expect(other.position.dayRule.dayOneUtcMs).toBe(plain.position.dayRule.dayOneUtcMs + later);
    expect(figuresOf(other)).toEqual(figuresOf(plain));
    expect([...other.position.accountsMg]).toEqual([...plain.position.accountsMg]);
    expect(codesOf(other)).toEqual(codesOf(plain));
    for (const grade of ['drinking', 'technical'])
      expect(other.position.usageDays(grade).map(({ netMg }) => netMg)).toEqual(
        plain.position.usageDays(grade).map(({ netMg }) => netMg),
      );
  });
});

describe('movements told as two', () => {
  type Movement = Extract<AnyEntry, { kind: 'movement' }>;

  /** Those that nobody questions: a copy is left out or in as a whole. */
  const splittable = (entry: AnyEntry): entry is Movement => {
    const questioned = plain.position.findings.some(
      ({ code, entries: about }) => code === 'duplicate-proposed' && about.includes(entry.id),
    );
    return entry.kind === 'movement' && !questioned && entry.body.amount.massMg > 2;
  };

  /** Two parts of unlike size; a doubt that the entry tells is shared out so that its squares add up. */
  function split(entry: Movement): readonly AnyEntry[] {
    const { amount } = entry.body;
    return [0.375, 0.625].map((share, part) => {
      const firstMg = Math.round(amount.massMg * 0.375);
      const massMg = part === 0 ? firstMg : amount.massMg - firstMg;
      const uMg = amount.uMg === undefined ? {} : { uMg: Math.round(amount.uMg * Math.sqrt(share)) };
      const raw = { ...amount.raw, value: amount.raw.value * share };
      const id = part === 0 ? entry.id : entry.id.replace(/^./, (digit) => (digit === 'f' ? 'e' : 'f'));
      return { ...entry, id, body: { ...entry.body, amount: { massMg, raw, ...uMg } } } as Movement;
    });
  }

  test('masses are exact to the milligram, and the estimate moves by less than what the parts err by', async () => {
    const told = numbered(entries.flatMap((entry) => (splittable(entry) ? split(entry) : [entry])));
    const halves = told.length - entries.length;
    expect(halves).toBeGreaterThan(15);
    const other = await reckoned(told);
    expect([...other.fold.ledger.balances()].sort()).toEqual([...plain.fold.ledger.balances()].sort());
    expect(other.position.findings.filter(({ code }) => code === 'duplicate-proposed')).toHaveLength(
      plain.position.findings.filter(({ code }) => code === 'duplicate-proposed').length,
    );
    for (const [k, store] of plain.position.stores.entries()) {
      const split = other.position.stores[k];
      expect(split?.facts.id).toBe(store.facts.id);
      expect(Math.abs((split?.massMg ?? Number.NaN) - store.massMg), store.facts.id).toBeLessThan(
        0.5 * store.uMg + 1,
      );
      // An instrument that is read twice errs twice: never less doubt than before.
      expect(split?.uMg ?? 0, store.facts.id).toBeGreaterThan(0.98 * store.uMg - 1);
    }
  });

  test('where the parts tell their doubts, the estimate is the same: squares add up', async () => {
    const doubted = entries.map((entry) => {
      if (!splittable(entry)) return entry;
      const amount = { ...entry.body.amount, uMg: 100_000_000 > entry.body.amount.massMg ? 120_000 : 0 };
      return { ...entry, body: { ...entry.body, amount } } as Movement;
    });
    const told = numbered(doubted.flatMap((entry) => (splittable(entry) ? split(entry) : [entry])));
    const [whole, parts] = [await reckoned(doubted), await reckoned(told)];
    for (const [k, store] of whole.position.stores.entries()) {
      const split = parts.position.stores[k];
      // Shared doubts are whole milligrams, too.
      expect(Math.abs((split?.massMg ?? Number.NaN) - store.massMg), store.facts.id).toBeLessThan(3);
      expect(Math.abs((split?.uMg ?? Number.NaN) - store.uMg), store.facts.id).toBeLessThan(3);
    }
  });
});

describe('an outpost of another size', () => {
  const TIMES = 3;

  /** Water that weighs three times as much in a cabin of three times the size; people are not balanced, for they have one size. */
  const larger =
    (times: number) =>
    (outpost: Outpost): Outpost => {
      const { waterInFoodLPerPersonDay: _food, ...norms } = outpost.norms;
      const { cabinVolumeM3, waterDensityKgPerM3 } = outpost.outpost;
      return {
        ...outpost,
        norms,
        outpost: {
          ...outpost.outpost,
          ...(cabinVolumeM3 !== undefined && { cabinVolumeM3: times * cabinVolumeM3 }),
          waterDensityKgPerM3: times * waterDensityKgPerM3,
        },
      };
    };

  const scaled = (told: readonly AnyEntry[]) =>
    told.map((entry) =>
      changedThroughout(entry, (value, key) =>
        typeof value === 'number' && /Mg$|MgPerDay$|^mgPerUnit$/.test(key) ? TIMES * value : value,
      ),
    );

  test('movements alone: every account is the exact multiple', async () => {
    const moved = numbered(
      entries.filter(({ kind }) => !['day-line', 'declared-empty', 'meter', 'roster'].includes(kind)),
    );
    // Nothing flows by a norm: what is reckoned by the minute is rounded to a milligram each time.
    const still = (times: number) => (outpost: Outpost) => {
      const { norms, ...rest } = larger(times)(outpost);
      const { vapourCollectedLPerPersonDay: _vapour, ...others } = norms;
      return { ...rest, norms: others, normFlows: [] };
    };
    const [one, other] = [await reckoned(moved, still(1)), await reckoned(scaled(moved), still(TIMES))];
    const balances = [...one.fold.ledger.balances()];
    expect(balances.length).toBeGreaterThan(20);
    for (const [account, massMg] of balances)
      expect([account, other.fold.ledger.balanceMg(account)]).toEqual([account, TIMES * massMg]);
    // Best values as well, to 1e-9 of what is in the largest store: doubts are rounded to whole milligrams.
    let most = 0;
    for (const [id, { content }] of one.fold.stores) {
      const place = other.fold.stores.get(id)?.content ?? -1;
      const apart = other.fold.estimator.mean(place) / TIMES - one.fold.estimator.mean(content);
      most = Math.max(most, Math.abs(apart) / 200);
    }
    console.log(`best values without counters differ by at most ${most.toExponential(1)} of a full tank`);
    expect(most).toBeLessThan(1e-9);
  });

  test('the whole book: every store three times as full, and three times as doubtful', async () => {
    const [one, other] = [await reckoned(entries, larger(1)), await reckoned(scaled(entries), larger(TIMES))];
    expect(other.position.closureMg).toBe(0);
    let most = 0;
    for (const [k, store] of one.position.stores.entries()) {
      const large = other.position.stores[k];
      most = Math.max(
        most,
        Math.abs((large?.massMg ?? Number.NaN) / TIMES - store.massMg) / (store.uMg + 1000),
      );
      expect(Math.abs((large?.uMg ?? 0) / TIMES / store.uMg - 1), store.facts.id).toBeLessThan(0.01);
    }
    console.log(
      `best values of the larger outpost differ by at most ${most.toExponential(1)} of their doubt`,
    );
    // What nobody measures between a buffer and the store behind it is "some 10 kg" at any size.
    expect(most).toBeLessThan(0.02);
    expect(codesOf(other)).toEqual(codesOf(one));
  });
});
