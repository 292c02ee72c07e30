// A dose: its volume and its biocide as of old, and a hold where it makes more than the outpost allows.
import type { Entry } from '../../book/index.ts';
import { overdoseOf } from '../biocide/overdose.ts';
import type { Fold } from '../fold.ts';
import { putOnHold } from '../hold.ts';
import { ruleHold } from '../identity.ts';
import { noteEntry } from '../note.ts';
import { postDose } from './quality.ts';

/** A fact is kept, and the water of every store that got too much waits. */
export function postDoseAndHold(fold: Fold, entry: Entry<'dose'>): void {
  // By what was in the stores before it.
  const over = entry.body.stores.flatMap((store) => {
    const found = overdoseOf(fold, entry.body, { store, presentMgPerL: null });
    return found === null ? [] : [{ store, found }];
  });
  postDose(fold, entry);
  for (const { store, found } of over) {
    const state = fold.stores.get(store);
    if (state === undefined) continue;
    const { massMg } = entry.body.doseEach;
    const data = { ...found, massMg, mgPerL: fold.mgPerL, happened: entry.happened ?? null };
    noteEntry(fold, entry, { code: 'dose-above-maximum', severity: 'act-now', store, data });
    putOnHold(state, ruleHold(entry, 'dose-above-maximum'));
  }
}
