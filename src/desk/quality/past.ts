// Entries of a book about what water is fit for, read in one go: samples, results, what was set aside, holds, downgrades.
import {
  type AnyEntry,
  amend,
  amendmentsOf,
  type BookPort,
  type Entry,
  entryOf,
  type View,
} from '../../book/index.ts';

export interface QualityPast {
  readonly samples: readonly Entry<'sample'>[];
  readonly results: readonly Entry<'result'>[];
  readonly asides: readonly Entry<'result-set-aside'>[];
  readonly holds: readonly Entry<'hold'>[];
  readonly downgrades: readonly Entry<'downgrade'>[];
}

const KINDS = ['sample', 'result', 'result-set-aside', 'hold', 'downgrade'] as const;

/** As they count in a view: without what was undone, corrected ones as they are now. */
export async function qualityPast(port: BookPort, view: View): Promise<QualityPast> {
  const amendments = await amendmentsOf(port, view);
  const found: AnyEntry[] = [];
  for await (const rows of port.scan({ order: 'total', kinds: KINDS })) {
    for (const row of rows) {
      if (view.knownAtMs !== undefined && row.enteredAtMs > view.knownAtMs) continue;
      if (view.asOfMs !== undefined && row.happenedAtMs > view.asOfMs) continue;
      const entry = amend(entryOf(row), amendments);
      if (entry !== null) found.push(entry);
    }
  }
  const of = <K extends (typeof KINDS)[number]>(kind: K) =>
    found.filter((entry) => entry.kind === kind) as unknown as readonly Entry<K>[];
  return {
    samples: of('sample'),
    results: of('result'),
    asides: of('result-set-aside'),
    holds: of('hold'),
    downgrades: of('downgrade'),
  };
}

/** Whether the medic took a figure of a sample out of judgement; without a parameter, the whole result. */
export function isSetAside(
  { asides }: Pick<QualityPast, 'asides'>,
  sample: string,
  parameter?: string,
): boolean {
  return asides.some(
    ({ body }) =>
      body.sample === sample &&
      (body.parameter === undefined || (parameter !== undefined && body.parameter === parameter)),
  );
}

/** Results that still stand: a figure that was set aside is not among their values. */
export function standingResults(past: QualityPast): readonly Entry<'result'>[] {
  if (past.asides.length === 0) return past.results;
  return past.results.map((entry) => {
    const { sample, values } = entry.body;
    const left = values.filter(({ parameter }) => !isSetAside(past, sample, parameter));
    return left.length === values.length ? entry : { ...entry, body: { ...entry.body, values: left } };
  });
}

/** `corrie 54` */
export function refOf({ site, number }: Pick<AnyEntry, 'site' | 'number'>): string {
  return `${site} ${number}`;
}
