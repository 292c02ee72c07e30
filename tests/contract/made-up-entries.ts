// Entries made up from a seed: the same seed gives the same entries on every machine.
import {
  type AnyDraft,
  type AnyEntry,
  canonicalJson,
  entryId,
  FIRST_SEAL,
  type Hash,
  type Head,
  type Json,
  type KeptEntry,
  plainHash,
  rowOf,
  sealOf,
} from '../../src/book/index.ts';

/** Numbers from 0 up to 1, from a seed. */
export type Chance = () => number;

/** A counter through the finaliser of MurmurHash3: plain, and even enough to choose cases with. */
export function chanceFrom(seed: number): Chance {
  let state = seed | 0;
  return () => {
    state = (state + 0x9e3779b9) | 0;
    let mixed = Math.imul(state ^ (state >>> 16), 0x85ebca6b);
    mixed = Math.imul(mixed ^ (mixed >>> 13), 0xc2b2ae35);
    return ((mixed ^ (mixed >>> 16)) >>> 0) / 4_294_967_296;
  };
}

export function chooseFrom<T>(chance: Chance, list: readonly T[]): T {
  return list[Math.floor(chance() * list.length)] as T;
}

export function idFrom(chance: Chance, utcMs: number): string {
  return entryId(
    utcMs,
    Uint8Array.from({ length: 10 }, () => Math.floor(chance() * 256)),
  );
}

/** 00:00 of D01 of the made-up outpost. */
export const DAY_ONE_MS = Date.UTC(2147, 0, 1);
const HOUR_MS = 3_600_000;

/** A drink, a note, a reading: small entries of the kinds that a day brings, some of them late. */
export function makeDraft(chance: Chance, at: number): AnyDraft {
  const enteredAtMs = DAY_ONE_MS + at * 600_000;
  const lateMs = Math.floor(chance() * 4) === 0 ? Math.floor(chance() * 30) * HOUR_MS : 0;
  return {
    id: idFrom(chance, enteredAtMs),
    version: 1,
    happenedAtMs: enteredAtMs - lateMs,
    happenedOffsetMin: 0,
    enteredAtMs,
    enteredOffsetMin: 0,
    by: chooseFrom(chance, ['keeper', 'second', 'medic']),
    ...chooseFrom(chance, BODIES)(chance),
  } as AnyDraft;
}

const BODIES: readonly ((chance: Chance) => Pick<AnyDraft, 'kind' | 'body'>)[] = [
  (chance) => ({
    kind: 'movement',
    body: { from: 'T1', to: 'crew', amount: amountFrom(chance), use: 'drink' },
  }),
  (chance) => ({ kind: 'weigh', body: { store: 'B3', amount: amountFrom(chance) } }),
  (chance) => ({ kind: 'note', body: { text: `Valve ${Math.floor(chance() * 90)} sticks: “é” 水` } }),
  (chance) => ({ kind: 'undo', body: { target: idFrom(chance, DAY_ONE_MS) } }),
];

function amountFrom(chance: Chance) {
  const value = Math.floor(chance() * 2000) / 1000;
  return {
    massMg: Math.round(value * 998_203),
    raw: { value, unit: 'L', mgPerUnit: 998_203 },
  };
}

export function makeDrafts(seed: number, count: number): readonly AnyDraft[] {
  const chance = chanceFrom(seed);
  return Array.from({ length: count }, (_, at) => makeDraft(chance, at));
}

/** Drafts numbered and sealed as the next entries of a site. */
export function sealedAs(
  site: string,
  drafts: readonly AnyDraft[],
  after?: Head,
  hash: Hash = plainHash,
): KeptEntry[] {
  let head = after ?? { site, number: 0, seal: FIRST_SEAL };
  return drafts.map((draft) => {
    const entry = { ...draft, site, number: head.number + 1 } as AnyEntry;
    const text = canonicalJson(entry as unknown as Json);
    const seal = sealOf(hash, head.seal, text);
    head = { site, number: entry.number, seal };
    return rowOf(entry, { text, seal, keptAtMs: DAY_ONE_MS });
  });
}

export function headAfter(rows: readonly KeptEntry[]): Head {
  const { site, number, seal } = rows.at(-1) as KeptEntry;
  return { site, number, seal };
}
