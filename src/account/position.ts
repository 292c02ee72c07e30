// A position: what the account believes at one instant, for every store and for the whole, ready to be shown or run forward.
import type { DayRule } from '../ground/units/index.ts';
import type { NormFlow, OutpostIndex } from '../outpost/index.ts';
import { type ErrorKind, walkVariance } from './error-state.ts';
import { type AccountFinding, type Fold, MG_PER_KG, type VisitState } from './fold.ts';
import { withGapsFilled } from './gaps.ts';
import { doubtFactor } from './instrument-record.ts';
import { storeAccount, UNACCOUNTED } from './ledger.ts';
import { withinWalls } from './positivity.ts';
import type { BadResult } from './quality/bad-result.ts';
import type { SampleTaken } from './quality/known-results.ts';
import type { LimitsInForce } from './quality/limits-in-force.ts';
import { holdAt } from './quality/waivers.ts';
import { type ReadingAhead, readingsAhead } from './reading-ahead.ts';
import { isMovedSince, standingOf } from './standing.ts';
import { stateFindings } from './state-findings.ts';
import type { StorePosition } from './store-position.ts';
import { type HowKnown, reasonsOf, type StoreState } from './store-state.ts';
import type { UsageDay } from './usage.ts';

/** An error that readings repeat, as far as it is known. */
export interface LearnedError {
  readonly kind: ErrorKind;
  /** Instrument, norm, store or pool. */
  readonly of: string;
  /** Best value and one standard deviation: relative for calibrations and norms, else kilograms or the gauge's own unit. */
  readonly mean: number;
  readonly u: number;
  /** What was assumed of it before any reading. */
  readonly assumedU: number;
  /** Entries that taught it, the youngest ones, and how many in all. */
  readonly lessons: readonly string[];
  readonly lessonsInAll: number;
}

/** How readings of one instrument, or of one way of reading, kept to the doubts that are declared for them. */
export interface RecordOfDoubts {
  readonly of: string;
  readonly readings: number;
  /** What the declared doubts would have to be multiplied by to fit. */
  readonly factor: number;
}

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
  /** What would be known after a reading of a store; null where it cannot be read at any time. */
  readonly afterReading: (store: string) => ReadingAhead | null;
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
  /** Flows that no meter sees, by the outpost's norms. */
  readonly norms: readonly NormFlow[];
  readonly learned: readonly LearnedError[];
  readonly records: readonly RecordOfDoubts[];
  readonly limits: LimitsInForce;
  readonly samples: ReadonlyMap<string, SampleTaken>;
  readonly badResults: readonly BadResult[];
}

/** The position of a fold, as it stands at an instant not before its last entry. */
export function positionOf(told: Fold, atMs: number): Position {
  const fold = withGapsFilled(told);
  const aboard = [...fold.stores.values()].filter((state) => state.aboard);
  const walled = fold.estimating ? withinWalls(fold.estimator, wallsOf(aboard)) : new Map<number, number>();
  const stores = aboard.map((state) => storePosition(fold, state, { atMs, walled }));
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
    afterReading: readingsAhead(fold, stores, atMs),
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
    norms: fold.normFlows,
    learned: learnedOf(fold, atMs),
    records: [...fold.records].map(([of, record]) => ({
      of,
      readings: record.length,
      factor: doubtFactor(record),
    })),
    limits: fold.limits,
    samples: fold.samples,
    badResults: fold.badResults,
  };
}

function wallsOf(stores: readonly StoreState[]) {
  return stores.map(({ content, facts }) => ({
    place: content,
    lowKg: 0,
    highKg: facts.capacityMg / MG_PER_KG,
  }));
}

function storePosition(
  fold: Fold,
  state: StoreState,
  { atMs, walled }: { atMs: number; walled: ReadonlyMap<number, number> },
): StorePosition {
  const { facts, grade, emptied, gradeHistory, biocides, release, conditional, lastReading } = state;
  const movedSince = lastReading !== null && isMovedSince(lastReading, state.movedAtMs);
  const content = contentIn(fold, state, walled);
  const howKnown: HowKnown = lastReading === null ? 'unknown' : movedSince ? 'reckoned' : lastReading.how;
  return {
    facts,
    grade,
    emptied,
    gradeHistory,
    biocides,
    release,
    released: state.released,
    hold: holdAt(state, atMs),
    conditional,
    waived: state.waived.filter(({ untilMs }) => untilMs > atMs),
    results: state.results,
    treated: state.treated,
    because: reasonsOf(state),
    ...content,
    lowMg: within(facts.capacityMg, content.massMg - 2 * content.uMg),
    highMg: within(facts.capacityMg, content.massMg + 2 * content.uMg),
    howKnown,
    standing: standingOf(state, content.uMg),
    ageMs: lastReading === null ? null : Math.max(0, atMs - lastReading.atMs),
    readAtMs: lastReading?.atMs ?? null,
    port: fold.portOf(facts.id),
  };
}

function contentIn(fold: Fold, state: StoreState, walled: ReadonlyMap<number, number>): StockSum {
  if (!fold.estimating) return { massMg: fold.ledger.balanceMg(state.account), uMg: 0 };
  const { estimator } = fold;
  const massMg = Math.round((walled.get(state.content) ?? estimator.mean(state.content)) * MG_PER_KG);
  const uMg = Math.round(Math.sqrt(estimator.variance(state.content)) * MG_PER_KG);
  return { massMg: massMg === 0 ? 0 : massMg, uMg };
}

/** Between empty and full. A best value beyond them is an error that is said: then the band ends there, not at the wall. */
function within(capacityMg: number, massMg: number): number {
  return Math.min(capacityMg, Math.max(0, massMg));
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

function learnedOf(fold: Fold, atMs: number): readonly LearnedError[] {
  return [...fold.errors.values()]
    .filter(({ assumedU }) => assumedU > 0)
    .map((error) => ({
      kind: error.kind,
      of: error.of,
      mean: fold.estimator.mean(error.place),
      u: Math.sqrt(fold.estimator.variance(error.place) + walkVariance(error, atMs)),
      assumedU: error.assumedU,
      lessons: error.lessons,
      lessonsInAll: error.lessonsInAll,
    }));
}
