// The sample sheet: of a sample that the book knows, or blank for a store or a point.
import { behindPoint, type Fold, rowsOfStores } from '../../account/index.ts';
import { type PaperDocument, type SamplePaperSheet, sampleSheetPaper } from '../../papers/index.ts';
import { type Answer, yes } from '../answer.ts';
import type { Desk, Moment, Sight } from '../desk.ts';
import { parametersOf } from '../quality/parameters.ts';
import { findSample, knownSamples, testsOf } from '../quality/sample-add.ts';
import { findPlace, nameOfPlace } from '../quality/sampled-place.ts';
import { sampleShow } from '../quality/samples.ts';
import { type Seen, seenAt } from '../quality/seen.ts';
import { headOf } from '../today.ts';
import { bookSeal } from './book-seal.ts';
import { paperRows } from './paper-rows.ts';

export interface SamplePaperQuery {
  /** A sample, or a store or a point for a blank one. */
  readonly of: string;
  /** Of a blank one; absent: what a release needs. */
  readonly tests?: readonly string[];
}

export async function sampleSheet(
  desk: Desk,
  query: SamplePaperQuery,
  sight: Sight,
  moment: Moment,
): Promise<Answer<PaperDocument>> {
  const looked = await seenAt(desk, sight, moment);
  if (!looked.ok) return looked;
  const seen = looked.value;
  const found = findSample(knownSamples(seen.fold, seen.past), query.of);
  if (found.ok) return ofSample(seen, found.value, moment);
  const place = findPlace(seen.fold, query.of);
  if (!place.ok) return { ...place, findings: [...found.findings, ...place.findings] };
  const tests = testsOf(seen.fold, place.value, query.tests);
  if (!tests.ok) return tests;
  const name = nameOfPlace(place.value);
  const speaksOf = 'store' in place.value ? [name] : behindPoint(seen.fold, name);
  return yes(
    sampleSheetPaper({
      head: headOf(desk, sight, seen.position),
      book: await bookSeal(desk),
      sample: null,
      place: name,
      method: [],
      volumeL: null,
      ...testedOf(seen.fold, speaksOf, tests.value),
    }),
  );
}

async function ofSample(seen: Seen, name: string, moment: Moment): Promise<Answer<PaperDocument>> {
  const { desk, sight, fold } = seen;
  const shown = await sampleShow(desk, { sample: name }, sight, moment);
  if (!shown.ok) return shown;
  const { head, sample, method, volume } = shown.value;
  const measured = sample.figures.map(({ parameter }) => parameter);
  return yes(
    sampleSheetPaper({
      ...{ head, sample, method },
      book: await bookSeal(desk),
      place: sample.place,
      volumeL: volume?.value ?? null,
      ...testedOf(fold, sample.speaksOf, [...new Set([...measured, ...sample.tests])]),
    }),
  );
}

function testedOf(
  fold: Fold,
  speaksOf: readonly string[],
  tests: readonly string[],
): Pick<SamplePaperSheet, 'tests' | 'speaksOf' | 'biocides'> {
  const rows = paperRows(fold, rowsOfStores(fold, speaksOf), { stores: speaksOf, measured: tests });
  const units = new Map(parametersOf(fold).map(({ name, units: [unit = ''] }) => [name, unit]));
  const biocides = speaksOf.flatMap((store) => fold.stores.get(store)?.biocides ?? []);
  return {
    speaksOf,
    biocides: [...new Set(biocides)],
    tests: tests.map((parameter) => {
      const own = rows.filter((row) => row.parameter === parameter);
      return { parameter, unit: own[0]?.unit ?? units.get(parameter) ?? '', rows: own };
    }),
  };
}
