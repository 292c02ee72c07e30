// What the release verdict of all stores of a large outpost costs.
import { type SampleResult, type VerdictAsked, verdictOf } from '../src/account/index.ts';
import type { LimitRow } from '../src/outpost/index.ts';
import { asked, limitRow, NOW_MS, sampleResult } from '../tests/verdict/asked.ts';
import { type BenchRow, quantileOf, row } from './bench-row.ts';

const STORES = 500;
const ROWS = 8;
const RESULTS_OF_A_ROW = 4;
const ROUNDS = 60;

/** Every store with results of two samples and their duplicates, in two units; each hundredth has one that fails. */
function questions(): readonly VerdictAsked[] {
  const rows = Array.from({ length: ROWS }, (_, no) =>
    limitRow({
      id: `row ${no}`,
      parameter: `metal ${no}`,
      limit: { atMost: 0.5 },
      duplicatesWithinShare: 0.5,
    }),
  );
  return Array.from({ length: STORES }, (_, store) =>
    asked({ rows, results: rows.flatMap((each) => resultsOf(each, store)) }),
  );
}

function resultsOf({ parameter }: LimitRow, store: number): readonly SampleResult[] {
  return Array.from({ length: RESULTS_OF_A_ROW }, (_, no) =>
    sampleResult({
      id: `${parameter} ${no}`,
      sample: `s${no % 2}`,
      parameter,
      unit: no < 2 ? 'µg/L' : 'mg/L',
      value: no < 2 ? 257.3 : store % 100 === 0 ? 0.6 : 0.2573,
      takenAtMs: NOW_MS - 1000 - no,
    }),
  );
}

export function bench(): Promise<readonly BenchRow[]> {
  const all = questions();
  const times: number[] = [];
  for (let round = 0; round < ROUNDS; round += 1) {
    const started = performance.now();
    const released = all.filter((question) => verdictOf(question).released).length;
    times.push(performance.now() - started);
    if (released !== STORES - STORES / 100) throw new Error(`${released} stores were released`);
  }
  const name = `verdict of ${STORES} stores, ${ROWS} rows and ${ROWS * RESULTS_OF_A_ROW} results each`;
  return Promise.resolve([
    row({ name: `${name}, p50 of ${ROUNDS}`, value: quantileOf(times, 0.5), unit: 'ms', goal: { most: 20 } }),
    row({ name: `${name}, p95 of ${ROUNDS}`, value: quantileOf(times, 0.95), unit: 'ms' }),
  ]);
}
