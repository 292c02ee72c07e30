// Findings that are true as long as a state lasts: holds, conditional reserve, negative stock, floors, silence.

import { chiSquareCdf, chiSquareUpper } from '../ground/maths/index.ts';
import { msPerDay } from '../ground/units/index.ts';
import { BODY_WATER } from './cabin-balance.ts';
import { isDrawnOn } from './drawn-on.ts';
import { type AccountFinding, type Fold, MG_PER_KG } from './fold.ts';
import { holdsOf } from './hold.ts';
import { doubtFactor } from './instrument-record.ts';
import { qualityFindings } from './quality/quality-findings.ts';
import type { StorePosition } from './store-position.ts';
import type { HoldState } from './store-state.ts';

/** Without a day line for this long the figures are said to be old before anything else is said. */
export const SILENCE_MS = 2 * msPerDay;

export function stateFindings(fold: Fold, stores: readonly StorePosition[], atMs: number): AccountFinding[] {
  return [
    ...silence(fold, atMs),
    ...holds(fold, stores, atMs),
    ...negative(fold, stores, atMs),
    ...overfull(fold, stores, atMs),
    ...reserve(fold, stores, atMs),
    ...wasteLimits(fold, stores, atMs),
    ...neverMeasured(fold, stores, atMs),
    ...misfits(fold, atMs),
    ...qualityFindings(fold, stores, atMs),
  ];
}

function silence(fold: Fold, atMs: number): AccountFinding[] {
  if (fold.openingMs === null) {
    return [{ code: 'opening-missing', severity: 'act-today', where: {}, data: {}, entries: [], atMs }];
  }
  const lastMs = fold.lastLineMs ?? fold.openingMs;
  if (atMs - lastMs < SILENCE_MS) return [];
  const days = Math.floor((atMs - lastMs) / msPerDay);
  return [
    { code: 'no-reading', severity: 'act-today', where: {}, data: { lastMs, days }, entries: [], atMs },
  ];
}

/** One line for a hold, however many stores it holds. */
function holds(fold: Fold, stores: readonly StorePosition[], atMs: number): AccountFinding[] {
  const found: AccountFinding[] = [];
  for (const [kind, code] of [
    ['hold', 'hold-open'],
    ['conditional', 'conditional-reserve'],
  ] as const) {
    const groups = new Map<string, { hold: HoldState; members: StorePosition[] }>();
    for (const store of stores) {
      for (const hold of openOn(fold, store, kind)) {
        const group = groups.get(hold.hold) ?? { hold, members: [] };
        group.members.push(store);
        groups.set(hold.hold, group);
      }
    }
    for (const { hold, members } of groups.values()) {
      const data = {
        hold: hold.hold,
        reason: hold.reason,
        sinceMs: hold.sinceMs,
        stores: members.map((store) => store.facts.id),
        massMg: members.reduce((sum, store) => sum + store.massMg, 0),
        u95Mg: u95MgOf(fold, members),
        mgPerL: fold.mgPerL,
      };
      found.push({ code, severity: 'act-now', where: {}, data, entries: [hold.entry], atMs });
    }
  }
  return found;
}

function openOn(fold: Fold, store: StorePosition, kind: 'hold' | 'conditional'): readonly HoldState[] {
  if (kind === 'conditional') return store.conditional === null ? [] : [store.conditional];
  const state = fold.stores.get(store.facts.id);
  return state === undefined ? [] : holdsOf(state);
}

/** ± at 95 % of a sum over stores, what they share in doubt inside. */
function u95MgOf(fold: Fold, members: readonly StorePosition[]): number {
  const places = members.flatMap(({ facts }) => fold.stores.get(facts.id)?.content ?? []);
  return Math.round(2 * Math.sqrt(Math.max(0, fold.estimator.sum(places).variance)) * MG_PER_KG);
}

/** Never clamped: less than nothing is evidence of an error, unless what flowed in has not been read yet. */
function negative(fold: Fold, stores: readonly StorePosition[], atMs: number): AccountFinding[] {
  return stores.flatMap((store): AccountFinding[] => {
    if (store.massMg >= -2 * store.uMg || store.massMg >= 0 || inflowWaits(fold, store)) return [];
    const data = { massMg: store.massMg, u95Mg: 2 * store.uMg, mgPerL: fold.mgPerL };
    return [
      {
        code: 'negative-stock',
        severity: gravityOf(fold, store),
        where: { store: store.facts.id },
        data,
        entries: store.because,
        atMs,
      },
    ];
  });
}

/** A headline hangs on water that somebody draws on. */
function gravityOf(fold: Fold, { grade }: StorePosition): 'act-now' | 'act-today' {
  const of = grade === null ? undefined : fold.index.grades.get(grade);
  return of !== undefined && isDrawnOn(of) ? 'act-now' : 'act-today';
}

/** As long as a store stands above full beyond its doubt, whatever brought it there. */
function overfull(fold: Fold, stores: readonly StorePosition[], atMs: number): AccountFinding[] {
  return stores.flatMap((store): AccountFinding[] => {
    const { capacityMg } = store.facts;
    if (store.massMg <= capacityMg + 2 * store.uMg) return [];
    const data = { massMg: store.massMg, u95Mg: 2 * store.uMg, capacityMg, mgPerL: fold.mgPerL };
    return [
      {
        code: 'stands-over-capacity',
        severity: gravityOf(fold, store),
        where: { store: store.facts.id },
        data,
        entries: store.because,
        atMs,
      },
    ];
  });
}

/** Water left the store after the counter of what flows in was last read. */
function inflowWaits(fold: Fold, store: StorePosition): boolean {
  const movedAtMs = fold.stores.get(store.facts.id)?.movedAtMs ?? null;
  return fold.index.outpost.instruments.some((instrument) => {
    const to = instrument.route?.to;
    const counter = fold.counters.get(instrument.id);
    if (to === undefined || !('store' in to) || to.store !== store.facts.id || counter === undefined)
      return false;
    return movedAtMs !== null && counter.sinceMs < movedAtMs;
  });
}

function reserve(fold: Fold, stores: readonly StorePosition[], atMs: number): AccountFinding[] {
  const policy = fold.index.outpost.policy.reserve;
  const members = stores.filter((store) => policy.counts.includes(store.facts.id));
  const massMg = members.reduce((sum, store) => sum + store.massMg, 0);
  const floorMg = Math.round(policy.floorL * fold.mgPerL);
  if (members.length === 0 || massMg >= floorMg || fold.openingMs === null) return [];
  const data = {
    massMg,
    u95Mg: u95MgOf(fold, members),
    floorMg,
    mgPerL: fold.mgPerL,
    stores: members.map((store) => store.facts.id),
  };
  return [{ code: 'reserve-below-floor', severity: 'act-now', where: {}, data, entries: [], atMs }];
}

function wasteLimits(fold: Fold, stores: readonly StorePosition[], atMs: number): AccountFinding[] {
  return stores.flatMap((store): AccountFinding[] => {
    const limitMg = store.facts.wasteLimitMg;
    const terminal = store.grade !== null && fold.index.grades.get(store.grade)?.terminal === true;
    if (limitMg === null || !terminal || store.massMg <= limitMg + 2 * store.uMg) return [];
    const data = { massMg: store.massMg, u95Mg: 2 * store.uMg, limitMg, mgPerL: fold.mgPerL };
    return [
      {
        code: 'waste-limit',
        severity: 'act-today',
        where: { store: store.facts.id },
        data,
        entries: store.because,
        atMs,
      },
    ];
  });
}

/** A doubt as wide as this part of the capacity says that nobody measured the content. Ours, no source. */
const NEVER_MEASURED_PART = 0.08;

/** Told at the opening with a wide doubt, and not read since: it closes itself at the first reading. */
function neverMeasured(fold: Fold, stores: readonly StorePosition[], atMs: number): AccountFinding[] {
  return stores.flatMap((store): AccountFinding[] => {
    const last = fold.stores.get(store.facts.id)?.lastReading;
    if (last?.how !== 'opening' || store.uMg < NEVER_MEASURED_PART * store.facts.capacityMg) return [];
    const data = { u95Mg: 2 * store.uMg, capacityMg: store.facts.capacityMg, mgPerL: fold.mgPerL };
    return [
      {
        code: 'never-weighed',
        severity: 'know',
        where: { store: store.facts.id },
        data,
        entries: [last.entry],
        atMs,
      },
    ];
  });
}

/** Fewer readings than this tell little of a scatter; and what chance does oftener than this is not said. Ours, no source. */
const FEWEST_READINGS = 20;
const BY_CHANCE = 0.01;
/** Between these the declared doubts are good enough. @source methods of sequential accountancy, simulated false alarms */
const FITS_FROM = 0.8;
const FITS_TO = 1.25;

/** Instruments whose readings scatter otherwise than their declared doubts say. */
function misfits(fold: Fold, atMs: number): AccountFinding[] {
  return [...fold.records].flatMap(([of, record]): AccountFinding[] => {
    const readings = record.length;
    const factor = doubtFactor(record);
    if (readings < FEWEST_READINGS || (factor >= FITS_FROM && factor <= FITS_TO)) return [];
    const squares = { value: factor * factor * readings, degrees: readings };
    if (Math.min(chiSquareCdf(squares), chiSquareUpper(squares)) > BY_CHANCE / 2) return [];
    const instrument = fold.index.instruments.get(of);
    const kind = instrument !== undefined ? 'instrument' : of === BODY_WATER ? 'assumption' : 'way';
    const data = { of: instrument?.name ?? of, kind, readings, factor };
    return [{ code: 'doubts-do-not-fit', severity: 'know', where: { field: of }, data, entries: [], atMs }];
  });
}
