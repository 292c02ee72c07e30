// The fold: the state that entries are folded into. Rooms outside see it only as a Position.
import type { AnyEntry } from '../book/index.ts';
import { type DayRule, type Finding, msPerMinute, parseInstantIso } from '../ground/units/index.ts';
import type { Instrument, NormFlow, Outpost, OutpostIndex, Store } from '../outpost/index.ts';
import { indexOutpost } from '../outpost/index.ts';
import { type CounterState, cloneCounter, openCounter } from './counter-state.ts';
import { type ErrorKind, type ErrorState, errorKey, walkTo } from './error-state.ts';
import { Estimator } from './estimator.ts';
import type { FarOffReading } from './far-off-reading.ts';
import type { AccountFindingCode } from './finding-codes.ts';
import type { InstrumentRecord } from './instrument-record.ts';
import { Ledger, storeAccount } from './ledger.ts';
import { normFlowsOf, poolsOf } from './people-and-air.ts';
import type { BadResult } from './quality/bad-result.ts';
import type { SampleTaken } from './quality/known-results.ts';
import { type LimitsInForce, policyInForce } from './quality/limits-in-force.ts';
import { cloneHabits, type Habits, noHabits } from './questions/habits.ts';
import { cloneStore, type StoreFacts, type StoreState } from './store-state.ts';
import { Usage } from './usage.ts';
import type { WatcherOf } from './watcher.ts';

export type AccountFinding = Finding<AccountFindingCode> & { readonly atMs: number };

/** One end of a flow: an account of the ledger, and the store behind it if there is one. */
export interface End {
  readonly account: string;
  readonly store: StoreState | null;
}

/** Water that goes from one end to the other. */
export interface Flow {
  readonly from: End;
  readonly to: End;
  readonly massMg: number;
  /** One standard deviation of the amount that is new in this flow. */
  readonly uMg: number;
  /** Place of the calibration error that the amount carries, −1 for none. */
  readonly calibration: number;
  /** Grade that the entry names, when it names one. */
  readonly grade?: string | undefined;
  /** Counted water from a unit: the grade is the outpost's plumbing, no rule is asked. */
  readonly plumbing?: boolean;
  /** Water out of a hose: the store that it came out of, as it was then. */
  readonly inHose?: StoreState | null;
  /** It left its source some time ago: what was read of the source since has it inside. */
  readonly leftEarlier?: boolean;
}

/** Who follows the water while entries are posted. */
export type Watcher = WatcherOf<Fold, Flow>;

/** A movement that later ones are compared with, to see the same act entered twice. */
export interface RecentMovement {
  readonly entry: string;
  /** How people, and how commands, name that entry. */
  readonly ref: string;
  readonly entryNo: string;
  readonly site: string;
  readonly from: string;
  readonly to: string;
  readonly massMg: number;
  readonly atMs: number;
  readonly startAtMs: number | null;
  readonly source: string | null;
  readonly by: string;
  /** Who drank or used it, where that is said. */
  readonly person: string | null;
}

export interface Decision {
  /** The other one of the pair. */
  readonly first: string;
  readonly decision: 'merge' | 'both are true';
}

export interface RunState {
  readonly from: string;
  readonly to: string;
  /** The store that the water in the hose came out of, as it was then; null: it came from no store. */
  readonly inHose?: StoreState | null;
}

export interface VisitState {
  readonly visit: string;
  readonly berthDay: number;
  readonly departDay: number | null;
  readonly aboard: boolean;
}

export interface PortChange {
  readonly atMs: number;
  readonly store: string | null;
}

/** What a fold holds beside its ledger, its estimator and its usage, as plain data. */
export interface FoldFields
  extends Pick<
    Fold,
    | 'stores'
    | 'counters'
    | 'errors'
    | 'records'
    | 'litresPerCount'
    | 'ports'
    | 'runs'
    | 'visits'
    | 'closedDays'
    | 'recent'
    | 'beforeOpening'
    | 'pools'
    | 'farOff'
    | 'saidBeforeCalibration'
    | 'decisions'
    | 'dayRule'
    | 'peopleAboard'
    | 'openingMs'
    | 'normsUntilMs'
    | 'lastLineMs'
    | 'lastEntryMs'
    | 'entries'
    | 'habits'
    | 'limits'
    | 'samples'
    | 'badResults'
    | 'waiverEndsMs'
  > {
  /** Findings are shared with copies; each knows how many of the list are its own. */
  readonly found: { readonly list: AccountFinding[]; readonly count: number };
}

export class Fold {
  readonly index: OutpostIndex;
  readonly mgPerL: number;
  /** Counters of making before counters of using, so that a buffer is filled before it is drawn. */
  readonly instrumentsInOrder: readonly Instrument[];
  /** The instrument that counts the water of a unit, by the unit's name. */
  readonly counterOfUnit: ReadonlyMap<string, Instrument>;
  /** Flows that no meter sees, by the outpost's norms. */
  readonly normFlows: readonly NormFlow[];
  ledger = new Ledger();
  estimator = new Estimator();
  usage = new Usage();
  stores = new Map<string, StoreState>();
  counters = new Map<string, CounterState>();
  /** Errors that readings repeat, by kind and name: see error-state.ts. */
  errors = new Map<string, ErrorState>();
  /** Pools that are read and so have a place in the estimator: the cabin air, the people. */
  pools: ReadonlyMap<string, number> = new Map();
  /** How readings kept to their declared doubts, by instrument or way of reading. */
  records = new Map<string, InstrumentRecord>();
  /** Readings that were far off of late: two of them may be one swapped pair of labels. */
  farOff: readonly FarOffReading[] = [];
  /** Instruments of which it was said that they were read before their calibration. */
  saidBeforeCalibration: readonly string[] = [];
  /** Litres of one count, where an entry has told another figure than the outpost file. */
  litresPerCount = new Map<string, number>();
  /** Who stood on each port, the present one last. */
  ports = new Map<string, readonly PortChange[]>();
  /** What this outpost usually does: what questions about new entries rest on. */
  habits: Habits = noHabits();
  /** The limits that bear on its water. */
  limits: LimitsInForce;
  /** Samples by their name, the youngest of a name. */
  samples: ReadonlyMap<string, SampleTaken> = new Map();
  /** Results that failed, and nobody has answered yet. */
  badResults: readonly BadResult[] = [];
  /** When the first waiver is over. */
  waiverEndsMs = Number.POSITIVE_INFINITY;
  runs = new Map<string, RunState>();
  visits = new Map<string, VisitState>();
  recent: RecentMovement[] = [];
  /** Shared with copies until one of them says something new. */
  #findings: AccountFinding[] = [];
  #findingCount = 0;
  /** Pairs on which somebody has decided, by the id of the one that is named second. */
  decisions: ReadonlyMap<string, Decision> = new Map();
  closedDays = new Map<number, { readonly atMs: number; readonly entry: string }>();
  dayRule: DayRule;
  peopleAboard: number;
  openingMs: number | null = null;
  /** Entries about stocks that came before any opening; an opening says of them that it has them inside. */
  beforeOpening: readonly AnyEntry[] = [];
  normsUntilMs: number | null = null;
  lastLineMs: number | null = null;
  lastEntryMs: number | null = null;
  entries = 0;
  /** Who follows the water through a pass; nobody hears what a copy does. */
  watcher: Watcher | null = null;
  /** Without the estimator only whole milligrams are moved: for rebuilding a ledger alone. */
  readonly estimating: boolean;

  constructor(
    outpost: Outpost,
    options: {
      readonly estimating?: boolean;
      readonly index?: OutpostIndex;
      readonly like?: Fold;
      readonly fields?: FoldFields;
    } = {},
  ) {
    this.index = options.index ?? indexOutpost(outpost);
    this.estimating = options.estimating ?? true;
    this.mgPerL = Math.round(outpost.outpost.waterDensityKgPerM3 * 1000);
    this.instrumentsInOrder =
      options.like?.instrumentsInOrder ??
      [...outpost.instruments].sort((a, b) => rankOfWay(a) - rankOfWay(b));
    this.counterOfUnit = options.like?.counterOfUnit ?? countersOfUnits(outpost);
    this.normFlows = options.like?.normFlows ?? normFlowsOf(outpost);
    this.dayRule = options.like?.dayRule ?? dayRuleOf(outpost);
    this.peopleAboard = outpost.outpost.people;
    this.limits = options.like?.limits ?? policyInForce(this.index);
    if (options.fields !== undefined) {
      this.#take(options.fields);
      return;
    }
    for (const store of outpost.stores)
      if (store.comesWith === undefined) this.addStore(this.factsOf(store), store.holds ?? null);
    for (const port of outpost.ports) this.ports.set(port.id, []);
    if (this.estimating) this.pools = poolsOf(this.estimator, outpost);
  }

  clone(): Fold {
    const { estimating, index } = this;
    const copy = new Fold(index.outpost, { estimating, index, like: this, fields: this.fields() });
    copy.ledger = this.ledger.clone();
    copy.estimator = this.estimator.clone();
    copy.usage = this.usage.clone();
    return copy;
  }

  /** Everything but the ledger, the estimator and the usage, copied as far as it is changed in place. */
  fields(): FoldFields {
    const { beforeOpening, pools, farOff, saidBeforeCalibration, decisions, dayRule, peopleAboard } = this;
    const { openingMs, normsUntilMs, lastLineMs, lastEntryMs, entries } = this;
    const { limits, samples, badResults, waiverEndsMs } = this;
    return {
      stores: new Map([...this.stores].map(([id, state]) => [id, cloneStore(state)])),
      counters: new Map([...this.counters].map(([id, state]) => [id, cloneCounter(state)])),
      errors: new Map([...this.errors].map(([key, error]) => [key, { ...error }])),
      records: new Map(this.records),
      litresPerCount: new Map(this.litresPerCount),
      ports: new Map(this.ports),
      runs: new Map(this.runs),
      visits: new Map(this.visits),
      closedDays: new Map(this.closedDays),
      recent: [...this.recent],
      habits: cloneHabits(this.habits),
      found: { list: this.#findings, count: this.#findingCount },
      ...{ beforeOpening, pools, farOff, saidBeforeCalibration, decisions, dayRule, peopleAboard },
      ...{ openingMs, normsUntilMs, lastLineMs, lastEntryMs, entries },
      ...{ limits, samples, badResults, waiverEndsMs },
    };
  }

  /** Takes the fields over: whoever brought them keeps no hand on them. */
  #take({ found, ...fields }: FoldFields): void {
    Object.assign(this, fields);
    this.#findings = found.list;
    this.#findingCount = found.count;
  }

  factsOf(store: Store): StoreFacts {
    const mg = (litres: number) => Math.round(litres * this.mgPerL);
    return {
      id: store.id,
      name: store.name,
      kind: store.kind,
      place: store.place,
      capacityMg: mg(store.capacityL),
      fillMg: store.fillL === undefined ? null : mg(store.fillL),
      remainderMg: mg(store.usableRemainderL),
      remainderUMg: mg(store.usableRemainderDoubtL),
      reserve: store.reserve,
      wasteLimitMg: store.wasteLimitL === undefined ? null : mg(store.wasteLimitL),
      emptyNeedsFlowStopped: store.emptyNeedsFlowStopped,
      visit: store.leavesWith ?? null,
    };
  }

  /** A store that the account has not met. Its content is nothing that anybody told yet. */
  addStore(facts: StoreFacts, grade: string | null): StoreState {
    const known = this.stores.get(facts.id);
    const state: StoreState = {
      facts,
      account: storeAccount(facts.id),
      content: known?.content ?? this.estimator.add(0, 0),
      gaugeOffset: known?.gaugeOffset ?? this.#gaugeOffsetOf(facts.id),
      aboard: true,
      grade,
      emptied: true,
      setAside: false,
      gradeHistory: grade === null ? [] : [grade],
      biocides: [],
      release: 'none',
      released: null,
      hold: null,
      holdsBehind: [],
      conditional: null,
      conditionalsBehind: [],
      waived: [],
      broughtBack: false,
      results: [],
      waterSinceMs: Number.NEGATIVE_INFINITY,
      badNewsSinceMs: Number.NEGATIVE_INFINITY,
      inflowMg: 0,
      filledFrom: null,
      treated: null,
      lastReading: null,
      toldFirst: null,
      movedAtMs: null,
      because: [],
    };
    this.stores.set(facts.id, state);
    return state;
  }

  #gaugeOffsetOf(store: string): number {
    const shellL = this.index.stores.get(store)?.gauging?.shellDoubtL;
    return shellL === undefined ? -1 : this.error('shell', store, this.kgOfL(shellL)).place;
  }

  kgOfL(litres: number): number {
    return (litres * this.mgPerL) / MG_PER_KG;
  }

  /** An error that readings repeat, made when first asked for, with its walk up to the present entry. */
  error(kind: ErrorKind, of: string, assumedU: number, driftPerSqrtDay = 0): ErrorState {
    const key = errorKey(kind, of);
    const ms = this.lastEntryMs ?? 0;
    let error = this.errors.get(key);
    if (error === undefined) {
      const place = this.estimator.add(0, assumedU * assumedU);
      error = { kind, of, place, assumedU, driftPerSqrtDay, walkedToMs: ms, lessons: [], lessonsInAll: 0 };
      this.errors.set(key, error);
    }
    walkTo(this.estimator, error, ms);
    return error;
  }

  /** Place of an instrument's relative calibration error, or −1 when it has none. */
  calibrationOf(instrument: Instrument | undefined): number {
    const relative = instrument?.calibration?.relative;
    if (instrument === undefined || relative === undefined || relative === 0 || !this.estimating) return -1;
    return this.error('calibration', instrument.id, relative, instrument.driftRelativePerSqrtDay).place;
  }

  /** Place of what is at an end of a flow, or −1 where nothing ever reads it. */
  placeOf({ account, store }: End): number {
    return store === null ? (this.pools.get(account) ?? -1) : store.content;
  }

  counter(id: string, sinceMs: number): CounterState {
    let state = this.counters.get(id);
    if (state === undefined) {
      state = openCounter(sinceMs);
      this.counters.set(id, state);
    }
    return state;
  }

  storeOn(port: string): StoreState | null {
    const id = this.ports.get(port)?.at(-1)?.store ?? null;
    return id === null ? null : (this.stores.get(id) ?? null);
  }

  setPort(port: string, store: string | null, atMs: number): void {
    const changes = this.ports.get(port) ?? [];
    this.ports.set(port, [...changes.slice(-8), { atMs, store }]);
  }

  portOf(store: string): string | null {
    for (const [port, changes] of this.ports) if (changes.at(-1)?.store === store) return port;
    return null;
  }

  endOfStore(state: StoreState): End {
    return { account: state.account, store: state };
  }

  get findings(): readonly AccountFinding[] {
    return this.#findings.length === this.#findingCount
      ? this.#findings
      : this.#findings.slice(0, this.#findingCount);
  }

  note(finding: AccountFinding): void {
    if (this.#findings.length !== this.#findingCount)
      this.#findings = this.#findings.slice(0, this.#findingCount);
    this.#findings.push(finding);
    this.#findingCount += 1;
  }
}

export const MG_PER_KG = 1_000_000;

function countersOfUnits({ instruments }: Outpost): ReadonlyMap<string, Instrument> {
  const counters = instruments.filter(({ meters, route }) => meters !== undefined && route !== undefined);
  // Of several the one that is written first counts.
  return new Map(counters.toReversed().map((instrument) => [instrument.meters ?? '', instrument]));
}

/** What comes in from outside is counted first, then what is made of it, then what is used. */
function rankOfWay({ route }: Instrument): number {
  if (route === undefined || !('store' in route.to)) return 2;
  return route.from.some((source) => 'pool' in source) ? 0 : 1;
}

function dayRuleOf(outpost: Outpost): DayRule {
  const read = parseInstantIso(`${outpost.outpost.dayOne}T00:00Z`);
  const line = parseInstantIso(`${outpost.outpost.dayOne}T${outpost.outpost.dayLineAt}Z`);
  if (!read.ok || !line.ok) throw new Error('a checked outpost file has a day that cannot be read');
  return {
    dayOneUtcMs: read.instant.utcMs,
    lineMinuteOfDay: (line.instant.utcMs - read.instant.utcMs) / msPerMinute,
  };
}
