// The storage of a whole book: one pass over it.
import type { BookPort } from '../../book/index.ts';
import { beginPass, type NoPass, type PassOptions } from '../pass.ts';
import type { Storage } from './storage.ts';
import { StorageRecorder } from './storage-recorder.ts';

export type StorageOutcome = { readonly ok: true; readonly storage: Storage } | NoPass;

/** Goes through the book once, with the estimator: how much wall there is for the water hangs on what is believed to be inside. */
export async function storageOf(port: BookPort, options: PassOptions = {}): Promise<StorageOutcome> {
  const recorder = new StorageRecorder();
  const begun = await beginPass(port, recorder.watcher, { ...options, estimating: true });
  if (!begun.ok) return begun;
  for await (const _ of begun.pass.batches);
  return { ok: true, storage: recorder.storage(begun.pass.fold) };
}
