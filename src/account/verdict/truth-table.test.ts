// Every combination of what can be known is walked, and the verdict is what the table of truth says; the page prints that table.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { asked, limitRow, loadersCertificate, NOW_MS, sampleResult } from '../../../tests/verdict/asked.ts';
import { allCases, type Case, lineFor, TRUTH, truthPage } from '../../../tests/verdict/truth-table.ts';
import { recordCounts } from '../../../tests/verification/record.ts';
import type { Certificate, SampleResult } from './sample-result.ts';
import { verdictOf } from './verdict.ts';

const FIGURES: Readonly<Record<Case['result'], readonly Partial<SampleResult>[]>> = {
  none: [],
  passes: [{}],
  above: [{ value: 0.41 }],
  below: [{ value: 0.03 }],
  'censored across': [{ value: 0.1, censored: 'below' }],
  'other unit': [{ unit: 'CFU/mL' }],
  'no figure': [{ value: Number.NaN }],
  future: [{ takenAtMs: NOW_MS + 1 }],
  contradictory: [{ value: 0.1 }, { id: 'r2', value: 0.3 }],
};

const CERTIFICATES: Readonly<Record<Case['certificate'], Certificate | null>> = {
  none: null,
  holds: loadersCertificate(),
  'not allowed': loadersCertificate({ allowedByPolicy: false }),
  over: loadersCertificate({ validUntilMs: NOW_MS }),
  'not for all water': loadersCertificate({ coversAllWater: false }),
};

function askedOf(each: Case) {
  const row = limitRow({ degassed: each.degassed !== 'not asked', duplicatesWithinShare: 0.2 });
  const results = FIGURES[each.result].map((figure) =>
    sampleResult({
      verified: each.verified === 'yes',
      degassed: each.degassed === 'yes',
      ...(each.valid === 'over' && { validUntilMs: NOW_MS }),
      ...(each.water === 'older' && { takenAtMs: NOW_MS - 7000 }),
      ...figure,
    }),
  );
  return asked({
    rows: [each.limit === 'off' ? { ...row, limit: null } : row],
    results,
    forReserve: each.use === 'reserve',
    certificate: CERTIFICATES[each.certificate],
  });
}

test('every combination is decided by one line of the table, and as it says', () => {
  const used = new Set<number>();
  for (const each of allCases()) {
    const line = lineFor(each);
    used.add(line);
    const truth = TRUTH[line];
    if (truth === undefined) throw new Error(`the table is silent on ${JSON.stringify(each)}`);
    const verdict = verdictOf(askedOf(each));
    const told = verdict.released ? [verdict.by] : verdict.reasons.map(({ code }) => code);
    expect(told, JSON.stringify(each)).toContain(truth.verdict);
    if (verdict.released) expect(told).toEqual([truth.verdict]);
  }
  expect(used.size).toBe(TRUTH.length);
  const releasing = allCases().filter((each) => verdictOf(askedOf(each)).released).length;
  recordCounts('release-verdict', import.meta.filename, {
    counts: { combinations: allCases().length, released: releasing, lines: TRUTH.length },
  });
});

test('the reserve is never released by a certificate', () => {
  const reserve = allCases().filter(({ use }) => use === 'reserve');
  const verdicts = reserve.map((each) => verdictOf(askedOf(each)));
  expect(verdicts.filter((each) => each.released && each.by === 'certificate')).toEqual([]);
  expect(verdicts.some((each) => each.released)).toBe(true);
});

test('the page prints this very table', () => {
  const page = readFileSync(join(import.meta.dirname, '../../../docs/methods/release-verdict.md'), 'utf8');
  expect(page).toContain(truthPage());
});
