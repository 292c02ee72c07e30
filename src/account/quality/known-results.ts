// Results of entries as a verdict reads them: each figure with its sample, its basis, and until when it counts.
import type { Body, Entry } from '../../book/index.ts';
import { msPerDay } from '../../ground/units/index.ts';
import { basisUnlessSaid, type OutpostIndex } from '../../outpost/index.ts';
import type { SampleResult } from '../verdict/sample-result.ts';

/** A result in a store, and how much water had come into it until its sample was drawn. */
export interface KnownResult extends SampleResult {
  readonly entry: string;
  readonly inflowMg: number;
}

/** What is known of a sample that has an entry. */
export interface SampleTaken {
  readonly sample: string;
  /** Stores whose water it is; nothing where nobody can say. */
  readonly speaksOf: readonly string[];
  /** Grades of that water when it was drawn. */
  readonly grades: readonly (string | null)[];
  readonly takenAtMs: number;
  readonly entry: string;
  readonly inflowMg: number;
}

/** How long a sample counts by the outpost's policy; for ever where it says nothing. */
export function validForMs({ outpost }: Pick<OutpostIndex, 'outpost'>): number {
  const ages = outpost.limits.flatMap(({ quantity, unit, atMost, status }) =>
    quantity === 'sample age' && unit === 'days' && status === 'policy' ? (atMost ?? []) : [],
  );
  return ages.length === 0 ? Number.POSITIVE_INFINITY : Math.min(...ages) * msPerDay;
}

type Values = Body<'result'>['values'];

interface Told {
  readonly values: Values;
  readonly sample: string;
  readonly entry: string;
  readonly takenAtMs: number;
  readonly inflowMg: number;
  readonly isProven: boolean;
  readonly method: string | null;
  readonly madeAt: SampleResult['madeAt'];
  readonly degassed: boolean | null;
}

/** The figures of one entry. Their ids tell entry and parameter, so that two figures of one parameter both stand. */
export function figuresOf(told: Told, index: OutpostIndex): readonly KnownResult[] {
  const validUntilMs = told.takenAtMs + validForMs(index);
  return told.values.map(({ parameter, value, unit, below, above, basis }, at) => ({
    id: `${told.entry} ${at} ${parameter}`,
    entry: told.entry,
    sample: told.sample,
    parameter,
    value,
    censored: below === true ? 'below' : above === true ? 'above' : 'no',
    unit,
    basis: basis ?? basisUnlessSaid(parameter) ?? null,
    method: told.method,
    madeAt: told.madeAt,
    takenAtMs: told.takenAtMs,
    verified: told.isProven,
    validUntilMs,
    degassed: told.degassed,
    inflowMg: told.inflowMg,
  }));
}

/** Figures of a result; its sample tells when they were true. */
export function figuresOfResult(
  entry: Entry<'result'>,
  taken: SampleTaken | undefined,
  index: OutpostIndex,
): readonly KnownResult[] {
  const { body } = entry;
  return figuresOf(
    {
      values: body.values,
      sample: body.sample,
      entry: entry.id,
      takenAtMs: taken?.takenAtMs ?? body.takenAtMs ?? entry.happenedAtMs,
      inflowMg: taken?.inflowMg ?? Number.NaN,
      isProven: body.preliminary !== true && body.custody !== 'broken',
      method: body.method ?? null,
      madeAt: body.madeAt ?? 'aboard',
      degassed: body.degassed ?? null,
    },
    index,
  );
}
