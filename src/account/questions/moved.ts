// Amounts that people moved, held against what the source has, what the hose passes, and what the other parts of the entry say.
import type { Amount, AnyEntry, Entry } from '../../book/index.ts';
import type { Fold } from '../fold.ts';
import type { StoreState } from '../store-state.ts';
import { unmeteredUnit } from '../unmetered.ts';
import { believedAt } from './believed.ts';
import { fittingReading } from './fitting.ts';
import { flowOf, usualFlowLPerMin } from './hoses.ts';
import { askFigure } from './question.ts';

/** More than a source has by this and three of its standard deviations is asked about. Ours, no source: two of the emptied containers' rests. */
const SLACK_L = 1;
/** A hose that passes so much more or less than usual is asked about. Ours, no source: air in a line and a warm compressor stay inside. */
const HOSE_FACTOR = 1.5;
/** A reading that is to fit keeps to the usual flow by this. Ours, no source. */
const HOSE_FIT = 1.15;
/** Legs and total of a push are rounded one by one. Ours, no source. */
const LEGS_SLACK_L = 0.5;

type Moved = Entry<'movement'> | Entry<'run-pause'> | Entry<'run-finish'>;

/**
 * Asks about the amount of a movement.
 * @returns whether nothing spoke against it
 */
export function askMoved(fold: Fold, entry: Moved): boolean {
  const { amount } = entry.body;
  const flow = flowOf(entry);
  const usual = flow === null ? null : usualFlowLPerMin(fold, flow.hose);
  const volumeL = amount.massMg / fold.mgPerL;
  const kgPerL = fold.mgPerL / 1_000_000;
  const source = entry.body.from === undefined ? undefined : fold.stores.get(entry.body.from);
  const mostL = source === undefined ? null : mostOf(fold, source, entry.happenedAtMs);
  const hoseL = usual === null || flow === null ? null : usual * flow.minutes;
  const fits = (value: number) =>
    (mostL === null || value <= mostL) &&
    (hoseL === null || (value <= hoseL * HOSE_FIT && value * HOSE_FIT >= hoseL));
  const said = { code: 'amount-implausible', of: 'water', value: volumeL, unit: 'L' } as const;
  const target = entry.body.to;
  if (hoseL !== null && flow !== null && (volumeL > hoseL * HOSE_FACTOR || volumeL * HOSE_FACTOR < hoseL)) {
    const fit = fittingReading(volumeL, { kgPerL }, fits);
    const range = { low: hoseL / HOSE_FIT, high: hoseL * HOSE_FIT };
    askFigure(fold, entry, { ...said, ...range, against: 'hose', name: flow.hose, fit, store: target });
    return false;
  }
  if (mostL === null || source === undefined || volumeL <= mostL) return true;
  const fit = fittingReading(volumeL, { kgPerL }, fits);
  if (fit === null && hoseL !== null) return true;
  askFigure(fold, entry, {
    ...said,
    ...{ low: 0, high: mostL, against: 'source', name: source.facts.id, fit, store: source.facts.id },
  });
  return false;
}

/** What a store can give at most; null where nothing counts what comes into it. */
function mostOf(fold: Fold, state: StoreState, atMs: number): number | null {
  if (unmeteredUnit(fold, state.facts.id) !== undefined) return null;
  const { massMg, uMg } = believedAt(fold, state, atMs);
  return Math.max(0, massMg + 3 * uMg) / fold.mgPerL + SLACK_L;
}

/** Asks about the parts of a push: each leg against its store, and their sums against each other and the total. */
export function askPush(fold: Fold, entry: Entry<'push'>): void {
  const { from, to, amount } = entry.body;
  const sumL = (legs: readonly { readonly amount: Amount }[]) =>
    legs.reduce((sum, leg) => sum + leg.amount.massMg, 0) / fold.mgPerL;
  const sums = [sumL(from), sumL(to), amount.massMg / fold.mgPerL];
  const [givenL = 0, gotL = 0, totalL = 0] = sums;
  if (Math.max(...sums) - Math.min(...sums) > LEGS_SLACK_L) {
    // Two of the three agree: the third one has the slip.
    const isTotal = Math.abs(givenL - gotL) <= LEGS_SLACK_L;
    const isGiven = !isTotal && Math.abs(gotL - totalL) <= LEGS_SLACK_L;
    const [saidL, otherL] = isTotal ? [totalL, givenL] : isGiven ? [givenL, totalL] : [gotL, totalL];
    const of = isTotal ? 'water pushed' : isGiven ? 'water given' : 'water received';
    askFigure(fold, entry, {
      ...{ code: 'amount-implausible', of, value: saidL, unit: 'L', against: 'other legs' },
      ...{ low: otherL - LEGS_SLACK_L, high: otherL + LEGS_SLACK_L },
      store: to[0]?.store,
    });
    return;
  }
  for (const leg of from) askLeg(fold, entry, leg);
}

function askLeg(fold: Fold, entry: AnyEntry, leg: { readonly store: string; readonly amount: Amount }): void {
  const state = fold.stores.get(leg.store);
  const mostL = state?.aboard === true ? mostOf(fold, state, entry.happenedAtMs) : null;
  const volumeL = leg.amount.massMg / fold.mgPerL;
  if (mostL === null || volumeL <= mostL) return;
  const fit = fittingReading(volumeL, { kgPerL: fold.mgPerL / 1_000_000 }, (value) => value <= mostL);
  askFigure(fold, entry, {
    ...{ code: 'amount-implausible', of: 'water given', value: volumeL, unit: 'L', against: 'source' },
    ...{ low: 0, high: mostL, name: leg.store, fit, store: leg.store },
  });
}
