// The fold: the state that entries are folded into. Rooms outside see it only as a Position.
import type { AnyEntry } from '../book/index.ts';
import { type DayRule, type Finding, msPerMinute, parseInstantIso } from '../ground/units/index.ts';
import type { Instrument, Outpost, OutpostIndex, Store } from '../outpost/index.ts';
import { indexOutpost } from '../outpost/index.ts';
import { type CounterState, cloneCounter, openCounter } from './counter-state.ts';
import { Estimator } from './estimator.ts';
import type { AccountFindingCode } from './finding-codes.ts';
import { Ledger, storeAccount } from './ledger.ts';
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

export class Fold {
  readonly index: OutpostIndex;
  readonly mgPerL: number;
  /** Counters of making before counters of using, so that a buffer is filled before it is drawn. */
  readonly instrumentsInOrder: readonly Instrument[];
  /** The instrument that counts the water of a unit, by the unit's name. */
  readonly counterOfUnit: ReadonlyMap<string, Instrument>;
  ledger = new Ledger();
  estimator = new Estimator();
  usage = new Usage();
  stores = new Map<string, StoreState>();
  counters = new Map<string, CounterState>();
  /** Places of calibration errors, offsets of gauges and of levels that a unit keeps, by name. */
  offsets = new Map<string, number>();
  /** Who stood on each port, the present one last. */
  ports = new Map<string, readonly PortChange[]>();
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
    options: { readonly estimating?: boolean; readonly index?: OutpostIndex; readonly like?: Fold } = {},
  ) {
    this.index = options.index ?? indexOutpost(outpost);
    this.estimating = options.estimating ?? true;
    this.mgPerL = Math.round(outpost.outpost.waterDensityKgPerM3 * 1000);
    this.instrumentsInOrder =
      options.like?.instrumentsInOrder ??
      [...outpost.instruments].sort((a, b) => rankOfWay(a) - rankOfWay(b));
    this.counterOfUnit = options.like?.counterOfUnit ?? countersOfUnits(outpost);
    this.dayRule = options.like?.dayRule ?? dayRuleOf(outpost);
    this.peopleAboard = outpost.outpost.people;
    // A copy brings its own stores and ports.
    if (options.like !== undefined) return;
    for (const store of outpost.stores)
      if (store.comesWith === undefined) this.addStore(this.factsOf(store), store.holds ?? null);
    for (const port of outpost.ports) this.ports.set(port.id, []);
  }

  clone(): Fold {
    const copy = new Fold(this.index.outpost, { estimating: this.estimating, index: this.index, like: this });
    copy.ledger = this.ledger.clone();
    copy.estimator = this.estimator.clone();
    copy.usage = this.usage.clone();
    copy.stores = new Map([...this.stores].map(([id, state]) => [id, cloneStore(state)]));
    copy.counters = new Map([...this.counters].map(([id, state]) => [id, cloneCounter(state)]));
    copy.offsets = new Map(this.offsets);
    copy.ports = new Map(this.ports);
    copy.runs = new Map(this.runs);
    copy.visits = new Map(this.visits);
    copy.closedDays = new Map(this.closedDays);
    copy.#findings = this.#findings;
    copy.#findingCount = this.#findingCount;
    copy.recent = [...this.recent];
    const {
      beforeOpening,
      decisions,
      dayRule,
      peopleAboard,
      openingMs,
      normsUntilMs,
      lastLineMs,
      lastEntryMs,
      entries,
    } = this;
    return Object.assign(copy, {
      beforeOpening,
      decisions,
      dayRule,
      peopleAboard,
      openingMs,
      normsUntilMs,
      lastLineMs,
      lastEntryMs,
      entries,
    });
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
      gradeHistory: grade === null ? [] : [grade],
      biocides: [],
      release: 'none',
      hold: null,
      holdsBehind: [],
      conditional: null,
      lastReading: null,
      movedAtMs: null,
      because: [],
    };
    this.stores.set(facts.id, state);
    return state;
  }

  #gaugeOffsetOf(store: string): number {
    const shellL = this.index.stores.get(store)?.gauging?.shellDoubtL;
    if (shellL === undefined) return -1;
    const uKg = (shellL * this.mgPerL) / MG_PER_KG;
    return this.estimator.add(0, uKg * uKg);
  }

  /** Place of an offset in the estimator, made when first asked for. */
  offset(name: string, u: number): number {
    let place = this.offsets.get(name);
    if (place === undefined) {
      place = this.estimator.add(0, u * u);
      this.offsets.set(name, place);
    }
    return place;
  }

  /** Place of an instrument's relative calibration error, or −1 when it has none. */
  calibrationOf(instrument: Instrument | undefined): number {
    const relative = instrument?.calibration?.relative;
    if (instrument === undefined || relative === undefined || relative === 0 || !this.estimating) return -1;
    return this.offset(`calibration:${instrument.id}`, relative);
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
