// What a sample speaks of: by its own entry, or, where it has none, by the store or the point that its result names.
import { type Suspicion, suspicionAt, suspicionOfSample, type WaterHistory } from '../../account/index.ts';
import { pointOf } from './sampled-place.ts';
import type { Seen } from './seen.ts';

export function suspicionIn(
  { fold, past }: Pick<Seen, 'fold' | 'past'>,
  history: WaterHistory,
  sample: string,
): Suspicion | null {
  const suspicion = suspicionOfSample(history, sample);
  if (suspicion !== null) return suspicion;
  const result = past.results.find(({ body }) => body.sample === sample);
  if (result === undefined) return null;
  const { store, point = '', takenAtMs } = result.body;
  const of = pointOf(fold, store !== undefined ? { store } : { point });
  return of === null ? null : suspicionAt(history, of, takenAtMs ?? result.happenedAtMs);
}
