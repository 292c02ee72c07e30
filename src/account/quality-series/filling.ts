// What filled a store, as of an instant: where the water came from, by which hoses, on which days.

import { placeOfStore, type Step, type WaterHistory } from '../trace/step.ts';
import { endAt } from '../trace/suspicion.ts';

export interface Filling {
  /** Stores that gave it. */
  readonly sources: readonly string[];
  readonly hoses: readonly string[];
  /** When each part of it came, in UTC milliseconds. */
  readonly atMs: readonly number[];
  /** Visits that brought it as a content. */
  readonly visits: readonly string[];
}

const NOTHING: Filling = { sources: [], hoses: [], atMs: [], visits: [] };

/** The flows from stores since it was last told or stood at its usable remainder; none where nothing is known. */
export function fillingOf(history: WaterHistory, store: string, atMs: number): Filling {
  const place = placeOfStore(history, store);
  if (place < 0) return NOTHING;
  const steps = history.steps.slice(0, endAt(history, atMs));
  const begun = steps.findLastIndex((step) => beginsAt(step, place));
  const since = begun < 0 ? steps : steps.slice(begun);
  const flows = since.flatMap((step) => {
    const from = step.what === 'flow' && step.to === place && step.massMg > 0 ? step.from : null;
    const giver = from === null ? undefined : history.accounts[from];
    return step.what === 'flow' && giver?.kind === 'store' ? [{ ...step, source: giver.name }] : [];
  });
  return {
    sources: distinct(flows.map(({ source }) => source)),
    hoses: distinct(flows.flatMap(({ hose }) => hose ?? [])),
    atMs: flows.map((flow) => flow.atMs),
    visits: distinct(since.flatMap((step) => (isToldOf(step, place) ? (step.visit ?? []) : []))),
  };
}

function beginsAt(step: Step, place: number): boolean {
  if (step.what === 'told') return step.account === place;
  return step.what === 'flow' && step.to === place && step.begins;
}

function isToldOf(step: Step, place: number): step is Extract<Step, { what: 'told' }> {
  return step.what === 'told' && step.account === place;
}

const distinct = (names: readonly string[]): readonly string[] => [...new Set(names)].sort();
