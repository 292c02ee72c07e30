// All that was measured in a book: one pass over it, with what was undone left out and what was corrected as it counts.
import type { BookPort } from '../../book/index.ts';
import { beginPass, type NoPass, type PassOptions } from '../pass.ts';
import type { Measured } from './measured-point.ts';
import { MeasuredWatch } from './measured-watch.ts';

export type MeasuredOutcome = { readonly ok: true; readonly measured: Measured } | NoPass;

/**
 * Every figure of every result in a view.
 * @example const outcome = await measuredOf(port); if (outcome.ok) outcome.measured.points …
 */
export async function measuredOf(port: BookPort, options: PassOptions = {}): Promise<MeasuredOutcome> {
  const watch = new MeasuredWatch();
  const begun = await beginPass(port, watch.watcher, { ...options, estimating: false });
  if (!begun.ok) return begun;
  for await (const _ of begun.pass.batches);
  return { ok: true, measured: watch.measured };
}
