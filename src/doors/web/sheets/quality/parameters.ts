// Which parameters a result is asked for, and in which units: what the sample is tested for, what has a limit, what was measured.
import type { LimitLine, LimitsSheet, SamplesSheet, TrendSheet } from '../../../../papers/index.ts';
import { useSheet } from '../../api/cache.ts';

export interface ResultField {
  readonly parameter: string;
  readonly units: readonly string[];
  /** Rows in force; none: no limit. */
  readonly limits: readonly LimitLine[];
}

export interface ResultFields {
  readonly list: readonly ResultField[];
  readonly unitOf: (parameter: string) => string;
}

export function useFields(of: string): ResultFields {
  const limits = useSheet<LimitsSheet>('/api/limits').data;
  const trend = useSheet<TrendSheet>('/api/quality/trend').data;
  const samples = useSheet<SamplesSheet>('/api/samples').data?.samples ?? [];
  const sample = samples.find((each) => each.sample === of);
  const rows = limits?.sets.flatMap((set) => set.rows) ?? [];
  const told = new Map((trend?.parameters ?? []).map(({ parameter, last }) => [parameter, last.told.unit]));
  const asked = sample === undefined ? [] : sample.open.length > 0 ? sample.open : sample.tests;
  const names = [...new Set([...asked, ...rows.map(({ parameter }) => parameter), ...told.keys()])];
  const list = names.map((parameter): ResultField => {
    const mine = rows.filter((row) => row.parameter === parameter);
    const last = told.get(parameter);
    const units = [...mine.map(({ unit }) => unit), ...(last === undefined ? [] : [last])];
    return { parameter, limits: mine, units: [...new Set(units)] };
  });
  const unitOf = (parameter: string) => list.find((field) => field.parameter === parameter)?.units[0] ?? '';
  return { list, unitOf };
}
