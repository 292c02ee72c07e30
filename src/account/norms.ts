// Flows that no meter sees, by the outpost's norm: so much per person and day, up to an instant.
import type { AnyEntry } from '../book/index.ts';
import { msPerDay } from '../ground/units/index.ts';
import { flow } from './flow.ts';
import type { Fold } from './fold.ts';
import { resolve } from './route.ts';

/** A norm may be off for this crew by this part, one standard deviation, until readings have taught better. Ours, no source. */
export const NORM_RELATIVE_U = 0.1;

/** Posts what the norms say since the last time. Called before anything that changes a port or the number of people. */
export function postNorms(fold: Fold, entry: AnyEntry): void {
  const fromMs = fold.normsUntilMs;
  const toMs = entry.happenedAtMs;
  if (fromMs === null || toMs <= fromMs) return;
  fold.normsUntilMs = toMs;
  const personDays = (fold.peopleAboard * (toMs - fromMs)) / msPerDay;
  for (const norm of fold.normFlows) {
    const from = resolve(fold, norm.from);
    const to = resolve(fold, norm.to);
    if (from === null || to === null) continue;
    const massMg = Math.round(norm.litresPerPersonDay * personDays * fold.mgPerL);
    const dayMg = norm.litresPerPersonDay * fold.peopleAboard * fold.mgPerL;
    const days = (toMs - fromMs) / msPerDay;
    // Day noise is independent from day to day, so its variance grows with the time.
    const uMg = Math.round((norm.betweenDaysRelative ?? 0) * dayMg * Math.sqrt(days));
    const calibration = fold.estimating ? fold.error('norm', norm.id, NORM_RELATIVE_U).place : -1;
    flow(fold, entry, { from, to, massMg, uMg, calibration, plumbing: true });
  }
}
