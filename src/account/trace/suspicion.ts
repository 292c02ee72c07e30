// What a bad sample speaks of: the stores whose water it was, and the way on which it was drawn.
import { type AccountAt, type FlowStep, placeOfStore, type SampleStep, type WaterHistory } from './step.ts';

export interface Suspicion {
  /** Ids of the stores whose water the sample was. */
  readonly sources: readonly string[];
  /** The hose that it was drawn from, if it was: what came by it is spoken of directly, what left the same store by others is not. */
  readonly hose: string | null;
  readonly takenAtMs: number;
  /** The entry of the sample; null while nobody has entered one. */
  readonly entry: string | null;
}

/** Where somebody may draw a sample. */
export type SamplingPoint =
  | { readonly store: string }
  | { readonly hose: string }
  | { readonly port: string }
  | { readonly unit: string };

/**
 * What a sample in the book speaks of: one of the contents speaks of its store, one drawn elsewhere of the store that
 * gave the last filling before it, and of the hose by which that went. Of several samples of one name it is the last.
 * @returns null for a name that no sample has
 * @example suspicionOfSample(history, 'SMP-03') // sources: FA, hose: H-1
 */
export function suspicionOfSample(history: WaterHistory, sample: string): Suspicion | null {
  const at = history.steps.findLastIndex((step) => step.what === 'sample' && step.sample === sample);
  const step = history.steps[at];
  if (step?.what !== 'sample') return null;
  const { takenFrom, hose } = spokenOf(history, at, step);
  const store = history.accounts[takenFrom]?.name ?? '';
  return { sources: [store], hose, takenAtMs: step.atMs, entry: step.entry };
}

/**
 * What a sample drawn at a point at an instant would speak of.
 * A hose: the store that gave what went through it last. A port: the store on it. A unit: the store that it fills, else the
 * stores that feed it.
 * @returns without sources where nothing was there
 */
export function suspicionAt(history: WaterHistory, point: SamplingPoint, takenAtMs: number): Suspicion {
  const suspicion = { hose: null, takenAtMs, entry: null };
  if ('store' in point) return { ...suspicion, sources: placesToNames(history, [point.store]) };
  if ('port' in point) return { ...suspicion, sources: storeOnPort(history, point.port, takenAtMs) };
  if ('hose' in point) {
    const fill = lastFlow(history, endAt(history, takenAtMs), ({ hose }) => hose === point.hose);
    return { ...suspicion, hose: point.hose, sources: fill === null ? [] : namesOf(history, [fill.from]) };
  }
  const ends = history.units.get(point.unit) ?? [];
  const sources = ends.flatMap((end) =>
    'port' in end ? storeOnPort(history, end.port, takenAtMs) : placesToNames(history, [end.store]),
  );
  return { ...suspicion, sources: [...new Set(sources)] };
}

/** The account of which a sample speaks, and the hose if it was drawn on the way. */
export function spokenOf(
  history: WaterHistory,
  at: number,
  { account, fromContents }: SampleStep,
): { readonly takenFrom: AccountAt; readonly hose: string | null } {
  if (fromContents) return { takenFrom: account, hose: null };
  const fill = lastFlow(history, at, ({ to }) => to === account);
  return fill === null ? { takenFrom: account, hose: null } : { takenFrom: fill.from, hose: fill.hose };
}

/** The youngest flow out of a store before a place in the history. */
function lastFlow(
  { steps, accounts }: WaterHistory,
  before: number,
  isIt: (flow: FlowStep) => boolean,
): FlowStep | null {
  for (let k = before - 1; k >= 0; k--) {
    const step = steps[k];
    if (step?.what !== 'flow' || step.massMg <= 0) continue;
    if (accounts[step.from]?.kind === 'store' && isIt(step)) return step;
  }
  return null;
}

function storeOnPort(history: WaterHistory, port: string, atMs: number): readonly string[] {
  const step = history.steps.findLast((one) => one.what === 'port' && one.port === port && one.atMs <= atMs);
  return step?.what === 'port' && step.account !== null ? namesOf(history, [step.account]) : [];
}

/**
 * How many steps had been made by an instant. What stands in for a count that is still missing bears an earlier time and
 * stands at the end: it is not looked at.
 */
export function endAt({ steps }: WaterHistory, atMs: number): number {
  const later = steps.findIndex((step) => step.atMs > atMs);
  return later < 0 ? steps.length : later;
}

function namesOf({ accounts }: WaterHistory, places: readonly AccountAt[]): readonly string[] {
  return places.flatMap((place) => accounts[place]?.name ?? []);
}

function placesToNames(history: WaterHistory, stores: readonly string[]): readonly string[] {
  return stores.filter((store) => placeOfStore(history, store) >= 0);
}
