// Published networks as problems for the reference twin, read from the tables of the tests.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { made } from './dense.ts';
import type { Problem } from './reconcile.ts';

interface NetworkFile {
  readonly names: readonly string[];
  /** Null: not measured. */
  readonly measured: readonly (number | null)[];
  readonly u?: readonly number[];
  readonly variance?: readonly number[];
  readonly u95?: readonly (number | null)[];
  readonly coverageFactor?: number;
  readonly correlations?: readonly (readonly [string, string, number])[];
  readonly balances: readonly Readonly<Record<string, number>>[];
  readonly truth?: readonly number[];
}

export interface NetworkData {
  readonly names: readonly string[];
  readonly isMeasured: readonly boolean[];
  readonly problem: Problem;
  readonly coverageFactor: number;
  readonly truth: readonly number[] | null;
}

export function publishedData<Data>(name: string): Data {
  const path = join(import.meta.dirname, '..', 'published', 'data', `${name}.json`);
  return JSON.parse(readFileSync(path, 'utf8')) as Data;
}

export function publishedNetwork(name: string): NetworkData {
  const file = publishedData<NetworkFile>(name);
  const { names, measured, balances, coverageFactor = 1.96 } = file;
  const u = names.map((_, at) => doubtOf(file, at, coverageFactor));
  const correlation = (a: number, b: number): number =>
    file.correlations?.find(
      ([one, other]) => [one, other].includes(names[a]!) && [one, other].includes(names[b]!),
    )?.[2] ?? 0;
  return {
    names,
    isMeasured: measured.map((value) => value !== null),
    problem: {
      measured: Float64Array.from(measured, (value) => value ?? Number.NaN),
      covariance: made(names.length, names.length, (a, b) =>
        a === b ? u[a]! * u[a]! : correlation(a, b) * u[a]! * u[b]!,
      ),
      balances: made(balances.length, names.length, (row, column) => balances[row]![names[column]!] ?? 0),
    },
    coverageFactor,
    truth: file.truth ?? null,
  };
}

function doubtOf(file: NetworkFile, at: number, coverageFactor: number): number {
  const [u, variance, u95] = [file.u?.[at], file.variance?.[at], file.u95?.[at]];
  if (u !== undefined) return u;
  if (variance !== undefined) return Math.sqrt(variance);
  return (u95 ?? 0) / coverageFactor;
}
