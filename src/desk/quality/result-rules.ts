// What speaks against a result before it is kept: another store, a sample of the future, a second word on the same figure.
import type { Entry } from '../../book/index.ts';
import type { Finding } from '../../ground/units/index.ts';
import { deskFinding } from '../desk-finding.ts';
import { type QualityPast, refOf } from './past.ts';
import type { ResultFigure } from './read-figure.ts';
import type { ResultOf } from './result-of.ts';

export interface ToldResult {
  readonly of: ResultOf;
  readonly atMs: number;
  /** When the sample was drawn, where the result says it. */
  readonly takenAtMs: number | undefined;
  /** The store that was named beside the sample. */
  readonly store: string | undefined;
  readonly values: readonly ResultFigure[];
}

export function resultRules(past: QualityPast, told: ToldResult): readonly Finding[] {
  return [...otherStore(told), ...beforeSample(told), ...twiceTold(told), ...contradicted(past, told)];
}

function otherStore({ of, store }: ToldResult): Finding[] {
  const own = of.entry?.body.store ?? (of.place !== null && 'store' in of.place ? of.place.store : undefined);
  if (store === undefined || own === store) return [];
  const place =
    own ?? of.entry?.body.point ?? (of.place !== null && 'point' in of.place ? of.place.point : '');
  const data = { sample: of.sample, of: place, told: store };
  return [deskFinding('sample-of-other', data, { where: { field: 'store' } })];
}

function beforeSample({ of, atMs, takenAtMs }: ToldResult): Finding[] {
  const drawnMs = of.entry?.happenedAtMs ?? takenAtMs;
  if (drawnMs === undefined || drawnMs <= atMs) return [];
  const data = { sample: of.sample, takenAtMs: drawnMs, atMs };
  return [
    deskFinding('result-before-sample', data, { where: { field: of.entry === null ? 'taken' : 'at' } }),
  ];
}

/** Two figures of one parameter in one result. */
function twiceTold({ of, values }: ToldResult): Finding[] {
  return values.flatMap((value, k) => {
    const first = values.slice(0, k).find(({ parameter }) => parameter === value.parameter);
    return first === undefined ? [] : [contradiction(of.sample, { first, second: value, ref: null })];
  });
}

/** A figure that is in the book already stands; one that was only preliminary gives way. */
function contradicted({ results }: QualityPast, { of, values }: ToldResult): Finding[] {
  const before = results.filter(({ body }) => body.sample === of.sample && body.preliminary !== true);
  return values.flatMap((value) =>
    before.flatMap((entry: Entry<'result'>) => {
      const first = entry.body.values.find(({ parameter }) => parameter === value.parameter);
      return first === undefined
        ? []
        : [contradiction(of.sample, { first, second: value, ref: refOf(entry) })];
    }),
  );
}

function contradiction(
  sample: string,
  {
    first,
    second,
    ref,
  }: { readonly first: ResultFigure; readonly second: ResultFigure; readonly ref: string | null },
): Finding {
  const { parameter } = second;
  const data = { sample, parameter, kept: saidFigure(first), told: saidFigure(second), ref };
  return deskFinding('result-contradicts', data, { where: { field: parameter } });
}

function saidFigure({ value, unit, below, above }: ResultFigure): string {
  return `${below === true ? '<' : above === true ? '>' : ''}${value} ${unit}`;
}
