// Draws that a counter has inside, and doses: amounts that are small beside what they come out of or go into.
import type { Entry } from '../../book/index.ts';
import { msPerDay } from '../../ground/units/index.ts';
import type { Fold } from '../fold.ts';
import { believedAt } from './believed.ts';
import { expectedADay } from './expected-count.ts';
import { fittingReading } from './fitting.ts';
import { askFigure } from './question.ts';

/** A draw may be so much more than the counter usually counts in that time. Ours, no source: all of a day's use may fall into its daylight. */
const DRAW_FACTOR = 2;
const DRAW_SLACK_L = 0.5;
/** A dose of biocide is a small part of the water that it goes into. Ours, no source. */
const DOSE_SHARE = 0.004;

export function askDraw(fold: Fold, entry: Entry<'source-change'>): void {
  const { counter, store, sinceMs, amount } = entry.body;
  fold.habits.sourceTold.set(counter, entry.happenedAtMs);
  const instrument = fold.index.instruments.get(counter);
  const aDay = instrument === undefined ? null : expectedADay(fold, instrument, fold.peopleAboard);
  if (aDay === null) return;
  const days = Math.max(0, entry.happenedAtMs - sinceMs) / msPerDay;
  const high = aDay.highL * days * DRAW_FACTOR + DRAW_SLACK_L;
  const value = amount.massMg / fold.mgPerL;
  if (value <= high) return;
  const fit = fittingReading(value, { kgPerL: fold.mgPerL / 1_000_000 }, (other) => other <= high);
  askFigure(fold, entry, {
    ...{ code: 'amount-implausible', of: 'water drawn', value, unit: 'L', low: 0, high, fit },
    ...{ against: 'counter', name: instrument?.name ?? counter, store },
  });
}

export function askDose(fold: Fold, entry: Entry<'dose'>): void {
  const { stores, doseEach } = entry.body;
  const atMs = entry.happenedAtMs;
  const value = doseEach.massMg / fold.mgPerL;
  for (const store of stores) {
    const state = fold.stores.get(store);
    if (state === undefined) continue;
    const high = (believedAt(fold, state, atMs).massMg / fold.mgPerL) * DOSE_SHARE;
    if (value <= high) continue;
    const fit = fittingReading(value, { kgPerL: fold.mgPerL / 1_000_000 }, (other) => other <= high);
    askFigure(fold, entry, {
      ...{ code: 'amount-implausible', of: 'dose', value, unit: 'L', low: 0, high, fit },
      ...{ against: 'store', name: store, store },
    });
    return;
  }
}
