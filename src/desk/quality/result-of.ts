// What a result is of: a sample that was entered, one of its bottles, or a store or a point that was read without one.
import type { Entry } from '../../book/index.ts';
import { dayOf } from '../../ground/units/index.ts';
import { type Answer, no, yes } from '../answer.ts';
import { deskFinding } from '../desk-finding.ts';
import { type Context, isSameName } from '../log/context.ts';
import type { QualityPast } from './past.ts';
import { findSample, knownSamples } from './sample-add.ts';
import { findPlace, nameOfPlace, type Place } from './sampled-place.ts';

export interface ResultOf {
  readonly sample: string;
  /** The entry of the sample; null where it has none. */
  readonly entry: Entry<'sample'> | null;
  /** Store or point that the result itself names; null where its sample does. */
  readonly place: Place | null;
  /** Samples of that place that wait for a result of their own. */
  readonly waiting: readonly string[];
}

export function resultOf(
  { fold }: Context,
  past: QualityPast,
  asked: { readonly of: string; readonly atMs: number },
): Answer<ResultOf> {
  const { of, atMs } = asked;
  const byBottle = past.samples.find(({ body }) =>
    (body.bottles ?? []).some((bottle) => isSameName(bottle, of)),
  );
  const known = knownSamples(fold, past);
  const named = byBottle === undefined ? findSample(known, of) : yes(byBottle.body.sample);
  if (named.ok) return yes(ofSample(past, named.value));
  const place = findPlace(fold, of);
  if (!place.ok) return no('not in book', ...nearestOf(named, place, of));
  const stem = `${nameOfPlace(place.value)} D${dayOf(atMs, fold.dayRule)}`;
  const taken = new Set(known);
  let sample = stem;
  for (let k = 2; taken.has(sample); k++) sample = `${stem}-${k}`;
  return yes({ sample, entry: null, place: place.value, waiting: waitingAt(past, place.value) });
}

/** A sample that waits is what a result of its place most likely is of. */
function waitingAt({ samples, results }: QualityPast, place: Place): readonly string[] {
  const back = new Set(results.map(({ body }) => body.sample));
  const isHere = (body: Entry<'sample'>['body']) =>
    'store' in place
      ? body.store === place.store && body.drawnFrom === undefined
      : body.point === place.point;
  return samples.filter(({ body }) => isHere(body) && !back.has(body.sample)).map(({ body }) => body.sample);
}

function ofSample({ samples, results }: QualityPast, sample: string): ResultOf {
  const entry = samples.findLast(({ body }) => body.sample === sample) ?? null;
  if (entry !== null) return { sample, entry, place: null, waiting: [] };
  // Read before without a sample: of the same place as then.
  const body = results.find((one) => one.body.sample === sample)?.body;
  const place =
    body?.store !== undefined
      ? { store: body.store }
      : body?.point !== undefined
        ? { point: body.point }
        : null;
  return { sample, entry, place, waiting: [] };
}

type No = Extract<Answer<never>, { ok: false }>;

function nearestOf(sample: No, place: No, of: string) {
  const names = [...sample.findings, ...place.findings].flatMap(
    ({ data }) => (data['nearest'] as readonly string[] | undefined) ?? [],
  );
  const data = {
    what: 'sample, store or point',
    name: of.slice(0, 80),
    nearest: [...new Set(names)].slice(0, 6),
  };
  return [deskFinding('not-in-book', data, { where: { field: 'sample' } })];
}
