// A position: what the account believes at one instant, for every store and for the whole, ready to be shown or run forward.
import type { DayRule } from '../ground/units/index.ts';
import type { OutpostIndex } from '../outpost/index.ts';
import { contentOf } from './flow.ts';
import { type AccountFinding, type Fold, MG_PER_KG, type VisitState } from './fold.ts';
import { withGapsFilled } from './gaps.ts';
import { storeAccount, UNACCOUNTED } from './ledger.ts';
import { stateFindings } from './state-findings.ts';
import type { StorePosition } from './store-position.ts';
import { type HowKnown, reasonsOf, type StoreState } from './store-state.ts';
import type { UsageDay } from './usage.ts';

/** A sum over stores, with the covariances between them. */
export interface StockSum {
  readonly massMg: number;
  readonly uMg: number;
}

export interface Position {
  readonly atMs: number;
  readonly index: OutpostIndex;
  readonly mgPerL: number;
  readonly dayRule: DayRule;
  readonly peopleAboard: number;
  /** Stores that are aboard. */
  readonly stores: readonly StorePosition[];
  readonly sumOf: (stores: readonly string[]) => StockSum;
  /** Every account in whole milligrams; `unaccounted` carries what readings changed. */
  readonly accountsMg: ReadonlyMap<string, number>;
  /** Sum over all accounts: the integer 0. */
  readonly closureMg: number;
  readonly findings: readonly AccountFinding[];
  readonly usageDays: (grade: string) => readonly UsageDay[];
  readonly visits: readonly VisitState[];
  readonly ports: ReadonlyMap<string, string | null>;
  readonly openingMs: number | null;
  readonly lastLineMs: number | null;
  readonly lastEntryMs: number | null;
  readonly entries: number;
  readonly closedDays: readonly number[];
  /** Learned relative calibration errors, by instrument. */
  readonly calibrations: ReadonlyMap<string, { readonly relative: number; readonly u: number }>;
}

/** The position of a fold, as it stands at an instant not before its last entry. */
export function positionOf(told: Fold, atMs: number): Position {
  const fold = withGapsFilled(told);
  const aboard = [...fold.stores.values()].filter((state) => state.aboard);
  const stores = aboard.map((state) => storePosition(fold, state, atMs));
  const accountsMg = accountsOf(fold, stores);
  // Lists that are replaced and never changed: what a position says stands still while the fold goes on.
  const usage = new Map(fold.usage.grades().map((grade) => [grade, fold.usage.days(grade)]));
  let closureMg = 0;
  for (const balance of accountsMg.values()) closureMg += balance;
  return {
    atMs,
    index: fold.index,
    mgPerL: fold.mgPerL,
    dayRule: fold.dayRule,
    peopleAboard: fold.peopleAboard,
    stores,
    sumOf: sumsOf(fold, stores),
    accountsMg,
    closureMg,
    // What stands in for a missing count says nothing of its own.
    findings: [...told.findings, ...stateFindings(fold, stores, atMs)],
    usageDays: (grade) => usage.get(grade) ?? [],
    visits: [...fold.visits.values()],
    ports: new Map([...fold.ports].map(([port, changes]) => [port, changes.at(-1)?.store ?? null])),
    openingMs: fold.openingMs,
    lastLineMs: fold.lastLineMs,
    lastEntryMs: fold.lastEntryMs,
    entries: fold.entries,
    closedDays: [...fold.closedDays.keys()],
    calibrations: calibrationsOf(fold),
  };
}

function storePosition(fold: Fold, state: StoreState, atMs: number): StorePosition {
  const { facts, grade, emptied, gradeHistory, biocides, release, hold, conditional, lastReading } = state;
  const movedSince = lastReading !== null && state.movedAtMs !== null && state.movedAtMs > lastReading.atMs;
  const howKnown: HowKnown = lastReading === null ? 'unknown' : movedSince ? 'reckoned' : lastReading.how;
  return {
    facts,
    grade,
    emptied,
    gradeHistory,
    biocides,
    release,
    hold,
    conditional,
    because: reasonsOf(state),
    ...contentOf(fold, state),
    howKnown,
    ageMs: lastReading === null ? null : Math.max(0, atMs - lastReading.atMs),
    readAtMs: lastReading?.atMs ?? null,
    port: fold.portOf(facts.id),
  };
}

/** Sums over stores as they stand now: the covariances are copied, since the fold's own go on. */
function sumsOf(fold: Fold, stores: readonly StorePosition[]): Position['sumOf'] {
  const massesMg = new Map(stores.map((store) => [store.facts.id, store.massMg]));
  const estimator = fold.estimator.clone();
  const placeOf = (id: string) => fold.stores.get(id)?.content ?? [];
  return (ids) => {
    const known = ids.filter((id) => massesMg.has(id));
    const massMg = known.reduce((sum, id) => sum + (massesMg.get(id) ?? 0), 0);
    const variance = fold.estimating ? estimator.sum(known.flatMap(placeOf)).variance : 0;
    return { massMg, uMg: Math.round(Math.sqrt(variance) * MG_PER_KG) };
  };
}

/** Readings change what is believed and move nothing: what they change stands against `unaccounted`. */
function accountsOf(fold: Fold, stores: readonly StorePosition[]): ReadonlyMap<string, number> {
  const accounts = new Map(fold.ledger.balances());
  let changedMg = 0;
  for (const store of stores) {
    const account = storeAccount(store.facts.id);
    changedMg += store.massMg - (accounts.get(account) ?? 0);
    accounts.set(account, store.massMg);
  }
  const unaccounted = (accounts.get(UNACCOUNTED) ?? 0) - changedMg;
  if (unaccounted === 0) accounts.delete(UNACCOUNTED);
  else accounts.set(UNACCOUNTED, unaccounted);
  return accounts;
}

function calibrationsOf(fold: Fold): ReadonlyMap<string, { relative: number; u: number }> {
  const learned = new Map<string, { relative: number; u: number }>();
  for (const [name, place] of fold.offsets) {
    if (!name.startsWith('calibration:')) continue;
    const u = Math.sqrt(Math.max(0, fold.estimator.variance(place)));
    learned.set(name.slice('calibration:'.length), { relative: fold.estimator.mean(place), u });
  }
  return learned;
}
