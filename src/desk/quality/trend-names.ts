// What a trend can be asked of: parameters, stores, sampling points and grades, by the names that people type.
import type { Fold, Measured, SeriesPlace } from '../../account/index.ts';
import { type Answer, no, yes } from '../answer.ts';
import { deskFinding } from '../desk-finding.ts';
import { findName } from '../log/context.ts';

export interface TrendQuery {
  /** Absent: what was measured at all. */
  readonly parameter?: string;
  /** One of these at the most; none: everywhere. */
  readonly store?: string;
  readonly point?: string;
  readonly grade?: string;
}

type Known = Pick<Fold, 'stores' | 'index'>;

/** What has a result, a limit or an instrument. */
export function findParameter(typed: string, fold: Known, { points }: Measured): Answer<string> {
  const { limits, instruments } = fold.index.outpost;
  const measures = instruments.flatMap(({ measures, quantity }) =>
    measures === 'quality' ? (quantity ?? []) : [],
  );
  const named = limits.map(({ quantity }) => quantity).filter((quantity) => measures.includes(quantity));
  const names = [...points.map(({ parameter }) => parameter), ...measures, ...named];
  return findName('parameter', typed, distinct(names));
}

export function findPlace(query: TrendQuery, fold: Known, { points }: Measured): Answer<SeriesPlace> {
  const asked = (['store', 'point', 'grade'] as const).filter((kind) => query[kind] !== undefined);
  const [kind, second] = asked;
  if (kind === undefined) return yes({ kind: 'everywhere' });
  if (second !== undefined)
    return no('wrong use', deskFinding('trend-places-clash', { first: kind, second }));
  const names = {
    store: [...fold.stores.keys()],
    point: distinct(points.flatMap(({ point }) => point ?? [])),
    grade: [...fold.index.grades.keys()],
  };
  const name = findName(kind, query[kind] ?? '', names[kind]);
  return name.ok ? yes({ kind, name: name.value }) : name;
}

const distinct = (names: readonly string[]): readonly string[] => [...new Set(names)];
