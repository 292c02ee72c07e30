// Entering samples: of stores or of a point, each with its name, its bottles and what it is to be tested for.
import { behindPoint, type Fold, flowsThrough, rowsOfStores } from '../../account/index.ts';
import type { AnyDraft, Body } from '../../book/index.ts';
import type { KeptSheet } from '../../papers/index.ts';
import { type Answer, no, yes } from '../answer.ts';
import { type Desk, type Moment, viewOf } from '../desk.ts';
import { deskFinding } from '../desk-finding.ts';
import { questionsBefore } from '../log/ask-first.ts';
import { type Context, isSameName, readAmount } from '../log/context.ts';
import { type Drafts, keepTogether, wouldKeep } from '../log/keep-together.ts';
import type { RequestWith } from '../log/request.ts';
import { wordOf } from '../today.ts';
import { beginAct, draftOf } from './begin.ts';
import { nextNames } from './names.ts';
import { findParameter, parametersOf } from './parameters.ts';
import { type QualityPast, qualityPast } from './past.ts';
import { findPlace, nameOfPlace, type Place } from './sampled-place.ts';

export interface SampleRequest {
  /** Stores or a point; each gets a sample of its own. */
  readonly of: readonly string[];
  /** Its name; absent: the next one of the series. */
  readonly sample?: string;
  /** Parameters; absent: those that a release of this water needs. */
  readonly tests?: readonly string[];
  readonly bottles?: readonly string[];
  /** With its unit: `10mL`. */
  readonly volume?: string;
  /** Where it was drawn, when not from the contents. */
  readonly drawnFrom?: string;
  readonly batch?: string;
  readonly duplicateOf?: string;
}

export async function addSample(
  desk: Desk,
  moment: Moment,
  request: SampleRequest,
  more: RequestWith = {},
): Promise<Answer<KeptSheet>> {
  const begun = await beginAct(desk, moment);
  if (!begun.ok) return begun;
  const context = begun.value;
  const past = await qualityPast(desk.port, viewOf({ kind: 'now' }));
  const bodies = bodiesOf(context, past, request);
  if (!bodies.ok) return bodies;
  const drafts: AnyDraft[] = [];
  for (const body of bodies.value) {
    const draft = await draftOf(context, { kind: 'sample', body }, more);
    if (!draft.ok) return draft;
    drafts.push(draft.value);
  }
  const [first] = drafts;
  if (first === undefined) return no('wrong use', missing('store or point', 'a store or a point'));
  const isSure = more.sure === true || more.happened !== undefined;
  const questions = isSure
    ? []
    : await questionsBefore(context, { what: 'kind', kind: 'sample', body: first.body }, first);
  if (more.dryRun === true) {
    const sheet = await wouldKeep(context, drafts as unknown as Drafts);
    return yes({
      ...sheet,
      findings: [...questions.map((one) => wordOf(context.fold, one)), ...sheet.findings],
    });
  }
  if (questions.length > 0) return no('ask first', ...questions);
  return await keepTogether(context, drafts as unknown as Drafts);
}

function missing(field: string, expected: string) {
  return deskFinding('field-needed', { field, received: null, expected }, { where: { field } });
}

function bodiesOf(
  context: Context,
  past: QualityPast,
  request: SampleRequest,
): Answer<readonly Body<'sample'>[]> {
  const { fold } = context;
  const { of, sample, duplicateOf } = request;
  const known = knownSamples(fold, past);
  if (sample !== undefined && of.length > 1)
    return no(
      'wrong use',
      deskFinding('field-needed', { field: 'name', received: sample, expected: 'one store for one name' }),
    );
  const taken = sample === undefined ? undefined : known.find((name) => isSameName(name, sample));
  if (taken !== undefined)
    return no(
      'bad input',
      deskFinding('name-taken', { what: 'sample', name: taken }, { where: { field: 'name' } }),
    );
  const twin = duplicateOf === undefined ? yes(undefined) : findSample(known, duplicateOf);
  if (!twin.ok) return twin;
  const names =
    sample === undefined
      ? nextNames(
          { series: past.samples.map(({ body }) => body.sample), first: 'S-01', taken: known },
          of.length,
        )
      : [sample];
  const bodies: Body<'sample'>[] = [];
  for (const [k, typed] of of.entries()) {
    const place = findPlace(fold, typed);
    if (!place.ok) return place;
    const body = bodyOf(context, place.value, { request, name: names[k] ?? '', twin: twin.value });
    if (!body.ok) return body;
    bodies.push(body.value);
  }
  return yes(bodies);
}

/** Every name that a sample or a result has. */
export function knownSamples(fold: Fold, { samples, results }: QualityPast): readonly string[] {
  return [
    ...new Set([
      ...samples.map(({ body }) => body.sample),
      ...fold.samples.keys(),
      ...results.map(({ body }) => body.sample),
    ]),
  ];
}

export function findSample(known: readonly string[], typed: string): Answer<string> {
  const same = known.filter((name) => isSameName(name, typed));
  const [only] = same;
  if (only !== undefined && (same.length === 1 || same.includes(typed)))
    return yes(same.includes(typed) ? typed : only);
  const begun = known.filter((name) => name.toLowerCase().startsWith(typed.toLowerCase()));
  const nearest = begun.length > 0 ? begun.slice(-3) : known.slice(-3);
  return no(
    'not in book',
    deskFinding(
      'not-in-book',
      { what: 'sample', name: typed.slice(0, 80), nearest },
      { where: { field: 'sample' } },
    ),
  );
}

function bodyOf(
  context: Context,
  place: Place,
  of: { readonly request: SampleRequest; readonly name: string; readonly twin: string | undefined },
): Answer<Body<'sample'>> {
  const { request, name, twin } = of;
  const tests = testsOf(context.fold, place, request.tests);
  if (!tests.ok) return tests;
  const volume =
    request.volume === undefined ? yes(undefined) : readAmount(context, request.volume, { field: 'volume' });
  if (!volume.ok) return volume;
  return yes({
    ...place,
    sample: name,
    tests: [...tests.value],
    ...(volume.value !== undefined && { volumeMg: volume.value.massMg }),
    ...(request.drawnFrom !== undefined && { drawnFrom: request.drawnFrom }),
    ...(request.bottles !== undefined && request.bottles.length > 0 && { bottles: [...request.bottles] }),
    ...(request.batch !== undefined && { batch: request.batch }),
    ...(twin !== undefined && { duplicateOf: twin }),
  });
}

/** Those that were named; else those without which nobody releases this water. */
function testsOf(fold: Fold, place: Place, typed: readonly string[] | undefined): Answer<readonly string[]> {
  if (typed === undefined) return yes(neededTests(fold, place));
  const known = parametersOf(fold);
  const tests: string[] = [];
  for (const name of typed) {
    const found = findParameter(known, name);
    // A laboratory may be asked for anything.
    tests.push(found.ok ? found.value : name);
  }
  return yes(tests);
}

export function neededTests(fold: Fold, place: Place): readonly string[] {
  const stores = 'store' in place ? [place.store] : behindPoint(fold, nameOfPlace(place));
  const isThrough = stores.some((store) => flowsThrough(fold.index, store));
  const rows = rowsOfStores(fold, stores).filter(({ neededOf }) => neededOf === 'every store' || isThrough);
  return [...new Set(rows.map(({ parameter }) => parameter))];
}
