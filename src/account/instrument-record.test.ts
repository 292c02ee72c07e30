// How readings keep their declared doubts: 1 where they are right, found where they are twice or half, seldom said for nothing.
import { expect, test } from 'vitest';
import { holmOpening, litres, Told } from '../../tests/journeys/told.ts';
import { seededChance } from '../ground/maths/index.ts';
import { doubtFactor, withReading } from './instrument-record.ts';

test('the root of the mean of squared innovations over their variances', () => {
  const record = [
    { innovation: 3, variance: 9 },
    { innovation: -2, variance: 1 },
    { innovation: 0, variance: 4 },
  ].reduce<readonly number[]>(withReading, []);
  expect(record).toEqual([1, 4, 0]);
  expect(doubtFactor(record)).toBeCloseTo(Math.sqrt(5 / 3), 15);
});

test('the youngest sixty count; a reading of what is known exactly says nothing', () => {
  let record: readonly number[] = [];
  for (let k = 1; k <= 75; k += 1) record = withReading(record, { innovation: Math.sqrt(k), variance: 1 });
  expect(record).toHaveLength(60);
  expect(record[0]).toBeCloseTo(16, 12);
  expect(record.at(-1)).toBeCloseTo(75, 12);
  expect(withReading(record, { innovation: 1, variance: 0 })).toBe(record);
  expect(doubtFactor([])).toBeNaN();
});

const READINGS = 60;

/** Sixty weighings of one container that nobody touches, on a balance that scatters so many times as widely as declared. */
function weighed(seed: number, times: number): { factor: number; saidAt: number | null; said: boolean } {
  const chance = seededChance({ seed });
  const told = new Told();
  const [trueL, offsetL] = [18 + 0.25 * chance.normal(), 0.1 * chance.normal()];
  const randomL = Math.sqrt(0.2 * 0.2 - 0.1 * 0.1);
  told.tell('opening', holmOpening());
  let saidAt: number | null = null;
  for (let k = 1; k <= READINGS; k += 1) {
    const value = Math.round(1000 * (trueL + offsetL + times * randomL * chance.normal())) / 1000;
    told.goTo(0, 21 + k / 60).tell('weigh', { store: 'C-04', amount: litres(value), method: 'balance' });
    if (saidAt === null && k >= 20 && k % 5 === 0 && told.findings('doubts-do-not-fit').length > 0)
      saidAt = k;
  }
  const factor = told.position().records.find(({ of }) => of === 'balance')?.factor ?? Number.NaN;
  return { factor, saidAt, said: told.findings('doubts-do-not-fit').length > 0 };
}

function runs(count: number, times: number, firstSeed: number) {
  const all = Array.from({ length: count }, (_, k) => weighed(firstSeed + k, times));
  const share = (of: (one: (typeof all)[number]) => boolean) => all.filter(of).length / count;
  return {
    meanSquare: all.reduce((sum, { factor }) => sum + factor * factor, 0) / count,
    said: share(({ said }) => said),
    ever: share(({ saidAt }) => saidAt !== null),
  };
}

test('well declared, twice and half: the factor, and how often it is said', { timeout: 120_000 }, () => {
  const [honest, twice, half] = [runs(300, 1, 1), runs(60, 2, 1001), runs(60, 0.5, 2001)];
  const percent = (value: number) => `${(100 * value).toFixed(1)} %`;
  console.log(
    [
      `well declared: mean square ${honest.meanSquare.toFixed(3)}, said after 60 readings ${percent(honest.said)}, ever ${percent(honest.ever)}`,
      `twice: mean square ${twice.meanSquare.toFixed(2)}, said ${percent(twice.said)}`,
      `half: mean square ${half.meanSquare.toFixed(3)}, said ${percent(half.said)}`,
    ].join('\n'),
  );
  expect(Math.abs(honest.meanSquare - 1)).toBeLessThan(0.05);
  expect(honest.said).toBeLessThan(0.02);
  expect(honest.ever).toBeLessThan(0.05);
  expect(twice.said).toBeGreaterThan(0.95);
  expect(half.said).toBeGreaterThan(0.95);
  // Readings beyond three standard deviations are asked about one by one, and left out of the record.
  expect(twice.meanSquare).toBeGreaterThan(1.25 * 1.25);
  expect(half.meanSquare).toBeLessThan(0.4);
});
