// The opening stock, and stores that come aboard: contents told for the first time.
import type { AnyEntry, Entry } from '../../book/index.ts';
import type { Store } from '../../outpost/index.ts';
import { closeCounter } from '../counter-state.ts';
import type { Fold } from '../fold.ts';
import { putOnHold } from '../hold.ts';
import { endsFirst, ruleHold, weakerRelease } from '../identity.ts';
import { OUTSIDE, storeAccount } from '../ledger.ts';
import { noteEntry } from '../note.ts';
import { startContent } from '../opening-error.ts';
import {
  holdsNow,
  type Release,
  type ReleaseRecord,
  ranDry,
  rememberReading,
  type StoreFacts,
  type StoreState,
} from '../store-state.ts';

/** What is first told of a store. */
export interface FirstContent {
  readonly massMg: number;
  readonly uMg: number;
  readonly grade: string | null;
  readonly release: Release;
}

export function postOpening(fold: Fold, entry: Entry<'opening'>): void {
  const { body } = entry;
  noteEarlier(fold, body.asOfMs);
  const isFirst = fold.openingMs === null;
  fold.openingMs = body.asOfMs;
  fold.normsUntilMs = body.asOfMs;
  fold.lastLineMs = body.asOfMs;
  fold.peopleAboard = body.peopleAboard;
  if (body.dayOneMs !== undefined) fold.dayRule = { ...fold.dayRule, dayOneUtcMs: body.dayOneMs };
  for (const told of body.stores) {
    const state = storeNamed(fold, entry, told.store);
    if (state === null) continue;
    // What happened before the first opening is inside its figures.
    if (isFirst) Object.assign(state, { grade: null, emptied: true, setAside: false });
    tellContent(fold, entry, state, {
      massMg: told.amount.massMg,
      uMg: told.amount.uMg ?? 0,
      grade: told.grade,
      release: 'opening',
    });
    state.lastReading = { atMs: body.asOfMs, how: 'opening', entry: entry.id };
  }
  for (const { port, store } of body.ports) fold.setPort(port, store, body.asOfMs);
  // What counters had in their open intervals is inside the stocks that are told.
  for (const state of fold.counters.values())
    closeCounter(state, state.last ?? 0, { ms: body.asOfMs, running: true, dayLine: true });
  for (const { instrument, value } of body.counters) fold.counter(instrument, body.asOfMs).last = value;
  for (const visit of body.visits) {
    const { visit: name, berthDay, departDay } = visit;
    fold.visits.set(name, { visit: name, berthDay, departDay: departDay ?? null, aboard: false });
  }
  for (const grade of fold.index.grades.keys()) fold.usage.start(grade, body.asOfMs);
}

/** What happened before the opening is inside its figures: entries that were folded before it counted for nothing. */
function noteEarlier(fold: Fold, openingMs: number): void {
  for (const earlier of fold.beforeOpening) {
    if (earlier.happenedAtMs < openingMs)
      noteEntry(fold, earlier, { code: 'before-opening', severity: 'act-today', data: { openingMs } });
  }
  fold.beforeOpening = [];
}

function storeNamed(fold: Fold, entry: AnyEntry, id: string): StoreState | null {
  const known = fold.stores.get(id);
  if (known !== undefined) return known;
  const store: Store | undefined = fold.index.stores.get(id);
  if (store !== undefined) return fold.addStore(fold.factsOf(store), store.holds ?? null);
  noteEntry(fold, entry, {
    code: 'store-unknown',
    severity: 'act-today',
    field: 'stores',
    data: { name: id, nearest: [] },
  });
  return null;
}

/** Puts the first content into a store: from outside, with its doubt and nothing shared with others. */
export function tellContent(fold: Fold, entry: AnyEntry, state: StoreState, told: FirstContent): void {
  const account = storeAccount(state.facts.id);
  fold.watcher?.onTold?.(fold, entry, state, told);
  fold.ledger.post(OUTSIDE, account, told.massMg - fold.ledger.balanceMg(account));
  startContent(fold, state, { ...told, atMs: entry.happenedAtMs });
  rememberReading(state, { atMs: entry.happenedAtMs, how: 'opening', entry: entry.id });
  tellWord(entry, state, told.release);
  holdBetter(fold, entry, state, told.grade);
  state.setAside = false;
  state.waterSinceMs = entry.happenedAtMs;
  // What is known to be bad of water that is there stays known.
  if (ranDry(state)) state.badNewsSinceMs = entry.happenedAtMs;
  if (told.grade === null) {
    state.grade = null;
    state.emptied = told.massMg <= state.facts.remainderMg;
    return;
  }
  holdsNow(state, told.grade);
  state.emptied = told.massMg <= state.facts.remainderMg;
  const biocide = fold.index.grades.get(told.grade)?.biocide ?? 'none';
  if (biocide !== 'none' && told.massMg > 0) state.biocides = [...new Set([...state.biocides, biocide])];
}

/** Water that waits is no better for being told of again; only an empty store begins anew. */
function tellWord(entry: AnyEntry, state: StoreState, release: Release): void {
  const word = wordOf(entry, release);
  const isNew = ranDry(state);
  state.release = isNew ? release : weakerRelease(state.release, release);
  state.released = isNew ? word : endsFirst(state.released, word);
}

/** A grade that is told anew makes water no better than it was: that takes a treatment. */
function holdBetter(fold: Fold, entry: AnyEntry, state: StoreState, grade: string | null): void {
  if (grade === null || (state.grade === null && ranDry(state))) return;
  const rank = (id: string) => fold.index.grades.get(id)?.rank ?? 0;
  const isBetter = state.grade !== null && rank(grade) < rank(state.grade);
  if (state.grade !== null && !isBetter) return;
  putOnHold(state, ruleHold(entry, isBetter ? 'grade-went-up' : 'grade-unknown'));
  state.release = 'none';
  state.released = null;
}

/** An opening, and a loader's certificate, hold until something else is known. */
function wordOf({ by, happenedAtMs: atMs, id: entry }: AnyEntry, release: Release): ReleaseRecord | null {
  return release === 'none' ? null : { by, atMs, samples: [], untilMs: null, entry };
}

type NewStore = Entry<'store-added'>['body'];

/** A store that an entry brings: what the outpost file knows of it, and what the entry says. */
export function bringStore(fold: Fold, entry: AnyEntry, told: NewStore, visit: string | null): void {
  const written = fold.index.stores.get(told.store);
  const mg = (litres: number) => Math.round(litres * fold.mgPerL);
  const facts: StoreFacts =
    written === undefined
      ? {
          id: told.store,
          name: told.name ?? told.store,
          kind: isStoreKind(told.kind) ? told.kind : 'container',
          place: told.place ?? visit ?? 'unplaced',
          capacityMg: mg(told.capacityL),
          fillMg: told.fillL === undefined ? null : mg(told.fillL),
          remainderMg: mg(told.usableRemainderL),
          remainderUMg: mg(told.usableRemainderUL ?? told.usableRemainderL / 3),
          reserve: false,
          wasteLimitMg: told.wasteLimitL === undefined ? null : mg(told.wasteLimitL),
          emptyNeedsFlowStopped: told.kind === 'vehicleTank',
          visit,
        }
      : fold.factsOf(written);
  const there = fold.stores.get(told.store);
  const state = fold.addStore(facts, told.grade);
  if (there?.aboard === true) keepDoubts(there, state);
  // Nobody has said yet what came by hand: it waits for a sample, like any water without a word for it.
  const release: Release = visit === null ? 'none' : 'loader’s certificate';
  const { amount } = told;
  tellContent(fold, entry, state, {
    massMg: amount?.massMg ?? 0,
    uMg: amount?.uMg ?? 0,
    grade: told.grade,
    release,
  });
  state.lastReading = {
    atMs: entry.happenedAtMs,
    how: visit === null ? 'opening' : 'loader’s figure',
    entry: entry.id,
  };
}

/** A store that is told of anew while it is aboard: what was said against its water stands. */
function keepDoubts(there: StoreState, state: StoreState): void {
  const { hold, holdsBehind, conditional, conditionalsBehind, waived, biocides } = there;
  const { grade, gradeHistory, emptied, setAside, release, released, results, treated, badNewsSinceMs } =
    there;
  Object.assign(state, { hold, holdsBehind, conditional, conditionalsBehind, waived, biocides });
  Object.assign(state, { grade, gradeHistory, emptied, setAside, release, released, results, treated });
  state.badNewsSinceMs = badNewsSinceMs;
}

const storeKinds: ReadonlySet<string> = new Set([
  'tank',
  'container',
  'softBag',
  'buffer',
  'vehicleTank',
  'wasteContainer',
]);

function isStoreKind(kind: string): kind is Store['kind'] {
  return storeKinds.has(kind);
}
