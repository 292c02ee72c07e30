// What stands on a port: stores that are taken off where they do not stand, put on empty or full, or of another grade.
import type { AnyEntry, Entry } from '../../book/index.ts';
import { msPerMinute } from '../../ground/units/index.ts';
import type { Port } from '../../outpost/index.ts';
import type { Fold } from '../fold.ts';
import { noteEntry, refOf } from '../note.ts';
import type { StoreState } from '../store-state.ts';
import { believedAt } from './believed.ts';
import { askStore, storesThat } from './stores.ts';

/** A store with less than this above its rest is as good as empty; one with less room than this is as good as full. Ours, no source. */
const NEARLY_L = 1;
/** A port that stood empty for so long, and no longer than a day and a half, is asked about. Ours, no source: the next store stands ready. */
const EMPTY_FROM_MIN = 120;
const EMPTY_TO_MIN = 2160;

/** A store is said to be empty or full, and to come off its port. */
export function askTakenOff(fold: Fold, entry: Entry<'declared-empty'> | Entry<'declared-full'>): void {
  const { store } = entry.body;
  const state = fold.stores.get(store);
  const port = entry.body.port ?? (entry.kind === 'declared-full' ? sinkOf(fold) : undefined);
  if (state?.aboard !== true || port === undefined || !fold.ports.has(port)) return;
  const on = fold.storeOn(port);
  if (on?.facts.id === store) return;
  const changes = fold.ports.get(port) ?? [];
  const was = changes.findLastIndex((change) => change.store === store);
  const after = was < 0 ? undefined : changes[was + 1];
  // It stood there last, and another one was put in its place before it is said to have come off.
  if (after !== undefined && after.store !== null && was === changes.length - 2) {
    const hookup = fold.habits.putOn.get(port);
    const data = {
      why: 'off after on',
      port,
      other: after.store,
      otherAtMs: after.atMs,
      otherRef: hookup?.ref ?? null,
    };
    const entries = hookup === undefined ? [] : [hookup.entry];
    noteEntry(fold, entry, { code: 'order-impossible', severity: 'act-today', store, data, entries });
    return;
  }
  askStore(fold, entry, { why: 'not on port', store, port, candidates: on === null ? [] : [on.facts.id] });
}

/** The one port that takes what nothing comes back from. */
function sinkOf(fold: Fold): string | undefined {
  return fold.index.outpost.ports.find((port) => isSink(fold, port))?.id;
}

function isSink(fold: Fold, { takes }: Port): boolean {
  return takes !== undefined && fold.index.grades.get(takes)?.terminal === true;
}

export function askHookup(fold: Fold, entry: Entry<'hookup'>): void {
  const { store, port: name } = entry.body;
  const atMs = entry.happenedAtMs;
  const state = fold.stores.get(store);
  const port = fold.index.ports.get(name);
  if (state?.aboard !== true || port === undefined) return;
  askEmptyPort(fold, entry, port);
  fold.habits.putOn.set(name, { entry: entry.id, ref: refOf(entry) });
  if (port.takes === undefined) return;
  if (isSink(fold, port)) {
    if (roomL(fold, state, atMs) < NEARLY_L)
      askStore(fold, entry, {
        ...{ why: 'full on sink', store, port: name },
        candidates: storesThat(
          fold,
          state,
          (other) => roomL(fold, other, atMs) > NEARLY_L && fold.portOf(other.facts.id) === null,
        ),
      });
    return;
  }
  askFeed(fold, entry, { state, port: name, takes: port.takes });
}

function askFeed(
  fold: Fold,
  entry: Entry<'hookup'>,
  { state, port, takes }: { state: StoreState; port: string; takes: string },
): void {
  const atMs = entry.happenedAtMs;
  const isGood = (other: StoreState) =>
    other.grade === takes && other.hold === null && aboveRestL(fold, other, atMs) > NEARLY_L;
  const why =
    aboveRestL(fold, state, atMs) <= NEARLY_L
      ? 'empty on feed'
      : state.grade !== null && state.grade !== takes
        ? 'other grade'
        : state.hold !== null
          ? 'held'
          : null;
  if (why === null) return;
  const candidates = storesThat(
    fold,
    state,
    (other) => isGood(other) && fold.portOf(other.facts.id) === null,
  );
  askStore(fold, entry, { why, store: state.facts.id, port, other: takes, candidates });
}

/** Litres above the usable remainder, on the generous side. */
function aboveRestL(fold: Fold, state: StoreState, atMs: number): number {
  const { massMg, uMg } = believedAt(fold, state, atMs);
  return (massMg + 2 * uMg - state.facts.remainderMg) / fold.mgPerL;
}

/** Litres up to where it counts as full, on the generous side. */
function roomL(fold: Fold, state: StoreState, atMs: number): number {
  const { massMg, uMg } = believedAt(fold, state, atMs);
  const fullMg =
    (fold.index.stores.get(state.facts.id)?.fullAtL ?? state.facts.capacityMg / fold.mgPerL) * fold.mgPerL;
  return (fullMg - massMg + 2 * uMg) / fold.mgPerL;
}

/** Between two stores a port is empty for minutes: hours say that one of the two times is off, unless another source was told. */
function askEmptyPort(fold: Fold, entry: AnyEntry, port: Port): void {
  const last = fold.ports.get(port.id)?.at(-1);
  if (last === undefined || last.store !== null) return;
  const emptyMin = (entry.happenedAtMs - last.atMs) / msPerMinute;
  if (emptyMin < EMPTY_FROM_MIN || emptyMin > EMPTY_TO_MIN || otherSourceTold(fold, port.id, last.atMs))
    return;
  const store = entry.kind === 'hookup' ? entry.body.store : undefined;
  const data = { why: 'port empty', port: port.id, minutes: emptyMin, sinceMs: last.atMs };
  noteEntry(fold, entry, { code: 'time-implausible', severity: 'act-today', store, data });
}

function otherSourceTold(fold: Fold, port: string, sinceMs: number): boolean {
  return fold.index.outpost.instruments.some(({ id, route }) => {
    const told = fold.habits.sourceTold.get(id);
    const isFed = route?.from.some((end) => 'port' in end && end.port === port) === true;
    return isFed && told !== undefined && told >= sinceMs;
  });
}
