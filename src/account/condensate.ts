// How much condensate every day should have brought, by what was known then, beside what it brought.
import type { BookPort } from '../book/index.ts';
import type { Condensate, NoExpectation } from './condensate-day.ts';
import { CondensateWatch, condensateNorms } from './condensate-watch.ts';
import { beginPass, type NoPass, type PassOptions } from './pass.ts';

export type CondensateOutcome =
  | { readonly ok: true; readonly condensate: Condensate }
  /** The outpost file does not tell what an expectation is made of. */
  | { readonly ok: false; readonly missing: NoExpectation }
  | (NoPass & { readonly missing?: undefined });

/**
 * The expectation of every day, what was collected, and the shortfall: one pass over the book, whole milligrams alone.
 *
 * People give off what the outpost file says until days have taught better; a day's expectation uses only lines that had been
 * entered when its own line was. See docs/methods/cabin-humidity.md.
 * @example const outcome = await condensateOf(port); if (outcome.ok) outcome.condensate.days …
 */
export async function condensateOf(port: BookPort, options: PassOptions = {}): Promise<CondensateOutcome> {
  const begun = await beginPass(port, {}, { ...options, estimating: false });
  if (!begun.ok) return begun;
  const { fold, batches } = begun.pass;
  const norms = condensateNorms(fold.index.outpost);
  if (typeof norms === 'string') return { ok: false, missing: norms };
  const watch = new CondensateWatch(norms);
  // Entries are posted only when they are asked for: the watcher hears the first of them.
  fold.watcher = watch.watcher;
  for await (const _ of batches);
  return { ok: true, condensate: watch.result };
}
