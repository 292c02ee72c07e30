// Samples with what became of them: what was drawn, what came back, and how each stands.
import type { Fold } from '../../account/index.ts';
import type { Entry } from '../../book/index.ts';
import { dayOf, formatShortStamp, msPerDay } from '../../ground/units/index.ts';
import type { FigureLine, SampleLine, SampleState } from '../../papers/index.ts';
import { FAILS, figureLines } from './figure-lines.ts';
import { isSetAside, refOf } from './past.ts';
import type { Seen } from './seen.ts';

/** A sample whose result is not back after this is late. Ours, no source. */
const LATE_MS = 7 * msPerDay;
const MS_PER_HOUR = 3_600_000;

type LinesOf = Pick<Seen, 'fold' | 'position' | 'past'>;

/** Every sample in the order in which it was drawn; a result without a sample of its own stands for one. */
export function sampleLines(seen: LinesOf): readonly SampleLine[] {
  const { samples, results } = seen.past;
  const named = new Set(samples.map(({ body }) => body.sample));
  const alone = [...new Set(results.map(({ body }) => body.sample))].filter((name) => !named.has(name));
  const lines = [
    ...samples.map((sample) => ({ atMs: sample.happenedAtMs, line: lineOfSample(seen, sample) })),
    ...alone.map((name) => lineOfResults(seen, name)),
  ];
  return lines.sort((a, b) => a.atMs - b.atMs).map(({ line }) => line);
}

function resultsOf({ past }: LinesOf, sample: string): readonly Entry<'result'>[] {
  return past.results.filter(({ body }) => body.sample === sample);
}

function lineOfSample(seen: LinesOf, entry: Entry<'sample'>): SampleLine {
  const { body, happenedAtMs: takenAtMs } = entry;
  const results = resultsOf(seen, body.sample);
  return {
    ...fated(seen, { sample: body.sample, takenAtMs, results, tests: body.tests }),
    place: body.store ?? body.point ?? '',
    drawnFrom: body.drawnFrom ?? null,
    speaksOf: speaksOf(seen.fold, entry),
    bottles: body.bottles ?? [],
    batch: body.batch ?? null,
    duplicateOf: body.duplicateOf ?? null,
    ref: refOf(entry),
  };
}

/** The youngest sample of a name is what the account knows it by. */
function speaksOf(fold: Fold, { id, body }: Entry<'sample'>): readonly string[] {
  const known = fold.samples.get(body.sample);
  return known?.entry === id ? known.speaksOf : [];
}

function lineOfResults(seen: LinesOf, sample: string): { readonly atMs: number; readonly line: SampleLine } {
  const results = resultsOf(seen, sample);
  const [first] = results;
  const takenAtMs = first?.body.takenAtMs ?? first?.happenedAtMs ?? 0;
  const line = {
    ...fated(seen, { sample, takenAtMs, results, tests: [] }),
    place: first?.body.store ?? first?.body.point ?? '',
    drawnFrom: null,
    speaksOf: first?.body.store === undefined ? [] : [first.body.store],
    bottles: [],
    batch: null,
    duplicateOf: null,
    ref: null,
  };
  return { atMs: takenAtMs, line };
}

interface Fated {
  readonly sample: string;
  readonly takenAtMs: number;
  readonly results: readonly Entry<'result'>[];
  readonly tests: readonly string[];
}

function fated({ fold, position, past }: LinesOf, of: Fated) {
  const { sample, takenAtMs, results, tests } = of;
  const { atMs, dayRule } = position;
  const figures = results.flatMap((entry) => figureLines({ fold, past, nowMs: atMs }, entry));
  const measured = new Set(figures.map(({ parameter }) => parameter));
  const last = results.at(-1);
  return {
    sample,
    state: stateOf({ figures, isLate: atMs - takenAtMs > LATE_MS, isSetAside: isSetAside(past, sample) }),
    taken: formatShortStamp(takenAtMs, dayRule),
    takenDay: dayOf(takenAtMs, dayRule),
    age: (atMs - takenAtMs) / MS_PER_HOUR,
    tests,
    open: tests.filter((test) => !measured.has(test)),
    figures,
    result: last === undefined ? null : formatShortStamp(last.happenedAtMs, dayRule),
    resultRefs: results.map(refOf),
  };
}

function stateOf(of: {
  readonly figures: readonly FigureLine[];
  readonly isLate: boolean;
  readonly isSetAside: boolean;
}): SampleState {
  if (of.isSetAside) return 'set aside';
  const standing = of.figures.filter(({ setAside }) => !setAside);
  if (standing.length === 0) return of.figures.length > 0 ? 'set aside' : of.isLate ? 'late' : 'waits';
  if (standing.some(({ verdict }) => FAILS.has(verdict))) return 'failed';
  return standing.every(({ verdict }) => verdict !== 'within') ? 'not judged' : 'passed';
}
