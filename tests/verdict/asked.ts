// Rows, results and questions for the tests of the verdict, each sound until a test changes it.
import type { Certificate, SampleResult, VerdictAsked } from '../../src/account/index.ts';
import type { LimitRow } from '../../src/outpost/index.ts';

export const NOW_MS = 1_000_000;
export const DAY_MS = 86_400_000;

export function limitRow(change: Partial<LimitRow> = {}): LimitRow {
  return {
    id: 'silver range',
    parameter: 'silver',
    basis: 'as itself',
    unit: 'mg/L',
    limit: { atLeast: 0.05, atMost: 0.4 },
    remembered: null,
    evidence: 'policy',
    exposure: 'any',
    source: 'invented for the tests',
    locator: 'page 1',
    cause: '',
    consequence: '',
    firstAct: '',
    timeToActH: null,
    requiredFor: ['drink'],
    neededOf: 'every store',
    degassed: false,
    noneIfBelow: null,
    duplicatesWithinShare: null,
    note: '',
    typed: null,
    ...change,
  };
}

export function sampleResult(change: Partial<SampleResult> = {}): SampleResult {
  return {
    id: 'r1',
    sample: 's1',
    parameter: 'silver',
    value: 0.2,
    censored: 'no',
    unit: 'mg/L',
    basis: 'as itself',
    method: null,
    madeAt: 'aboard',
    takenAtMs: NOW_MS - 1000,
    verified: true,
    validUntilMs: NOW_MS + DAY_MS,
    degassed: null,
    ...change,
  };
}

export function loadersCertificate(change: Partial<Certificate> = {}): Certificate {
  const validUntilMs = NOW_MS + 2 * DAY_MS;
  return { id: 'berth', validUntilMs, allowedByPolicy: true, coversAllWater: true, ...change };
}

export function asked(change: Partial<VerdictAsked> = {}): VerdictAsked {
  return {
    rows: [limitRow()],
    results: [sampleResult()],
    water: { unchangedSinceMs: NOW_MS - 5000, badNewsCountsSinceMs: NOW_MS - 9000 },
    nowMs: NOW_MS,
    forReserve: false,
    certificate: null,
    ...change,
  };
}
