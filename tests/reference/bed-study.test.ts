// The band of a bed's date, on simulated beds: it holds the truth about as often as it says, and a file that is wrong is seen.
import { expect, test } from 'vitest';
import { BED_WORLDS, bedCoverage } from './bed-study.ts';

const BEDS = 40;

test(`P10 to P90 hold about 80 of 100 true throughputs at the limit: ${BEDS} beds`, () => {
  const row = bedCoverage({ world: BED_WORLDS.believed, beds: BEDS, firstSeed: 11 });
  console.log(JSON.stringify(row));
  expect(row.beds).toBe(BEDS);
  // Two standard errors of 80 % are 13 points here; the study of 1000 beds is held closer.
  expect(row.inside).toBeGreaterThan(0.67);
  expect(row.inside).toBeLessThan(0.93);
  expect(row.belowP50).toBeGreaterThan(0.34);
  expect(row.belowP50).toBeLessThan(0.66);
}, 60_000);

test('beds that last longer than the file says are seen by the same measure', () => {
  const row = bedCoverage({ world: BED_WORLDS.lateLife, beds: BEDS, firstSeed: 11 });
  expect(row.belowP50).toBeLessThan(0.34);
}, 60_000);
