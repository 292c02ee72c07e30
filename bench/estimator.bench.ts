// What the estimator costs: a reading and a movement at 100 states, beside the same update in C, and a book folded anew.
import { applyEntry, Estimator, Fold } from '../src/account/index.ts';
import { seededChance } from '../src/ground/maths/index.ts';
import { type BenchRow, quantileOf, row } from './bench-row.ts';
import { lateBook } from './estimator/late-entry.ts';
import { syntheticEntries, syntheticOutpost } from './estimator/synthetic-book.ts';
import { measuredOutside, type Work } from './estimator/yardstick.ts';

const STATES = 100;
const CALIBRATIONS = 25;
const READINGS = 60;
const ROUNDS = 400;
const ENTRIES = 60_000;
const FOLDS = 5;

export async function bench(): Promise<readonly BenchRow[]> {
  return [...updates(), ...folds(), ...(await lateEntries())];
}

/** An estimator in which every state shares something with every other, as after months. */
function wellMixed(): Estimator {
  const chance = seededChance({ seed: 2147 });
  const estimator = new Estimator();
  const stores = STATES - CALIBRATIONS;
  for (let at = 0; at < STATES; at += 1) estimator.add(at < stores ? 20 : 0, at < stores ? 4 : 2e-4);
  for (let count = 0; count < 40 * STATES; count += 1) {
    const [from, to] = [chance.integerBelow(stores), chance.integerBelow(stores)];
    const calibration = stores + chance.integerBelow(CALIBRATIONS);
    estimator.move({ from, to, calibration, massKg: 5 * chance.uniform(), uKg: 0.05 });
    if (count % 10 === 0) estimator.read({ places: [from], value: estimator.mean(from), u: 0.5 });
  }
  return estimator;
}

function updates(): BenchRow[] {
  const mixed = wellMixed();
  const zeros = triangleOf(mixed).filter((value) => value === 0).length;
  if (zeros > 0)
    throw new Error(`${zeros} pairs of states share nothing: the update would be cheaper than it is`);
  const readings = Array.from({ length: READINGS }, (_, at) => ({
    place: (at * 7) % STATES,
    value: 20.1,
    u: 0.3,
  }));
  const { usPerReading, after } = timeReadings(mixed, readings);
  const usPerMovement = timeMovements(mixed);
  const name = `a reading at ${STATES} states, p50`;
  const rows = [
    row({ name, value: usPerReading / 1000, unit: 'ms', goal: { most: 0.03 } }),
    row({ name: `a movement at ${STATES} states, p50`, value: usPerMovement / 1000, unit: 'ms' }),
  ];
  const work = { means: meansOf(mixed), triangle: triangleOf(mixed), readings, rounds: ROUNDS };
  return [...rows, ...outside(work, { usPerReading, after, name })];
}

/** Nothing but a line on the side where there is neither a compiler nor numpy: what was not measured has no figure. */
function outside(
  work: Work,
  own: { readonly usPerReading: number; readonly after: Estimator; readonly name: string },
): BenchRow[] {
  const other = measuredOutside(work);
  if (other === null) {
    console.error(
      'The ratio to the same update in C was not measured: neither gcc nor python3 with numpy was found.',
    );
    return [];
  }
  mustBeSame([...meansOf(own.after), ...triangleOf(own.after)], other.result);
  return [
    row({ name: other.name, value: other.nsPerReading / 1e6, unit: 'ms' }),
    row({
      name: own.name,
      value: (own.usPerReading * 1000) / other.nsPerReading,
      unit: '×',
      ratioOf: other.name,
    }),
  ];
}

/** Two programs that do not come to the same figures do not do the same work. */
function mustBeSame(own: readonly number[], other: readonly number[]): void {
  const furthest = own.reduce(
    (most, value, at) =>
      Math.max(most, Math.abs(value - (other[at] ?? Number.NaN)) / (Math.abs(value) + 1e-9)),
    0,
  );
  if (own.length !== other.length || !(furthest < 1e-6))
    throw new Error(`the yardstick came to other figures: ${furthest}`);
}

function timeReadings(
  mixed: Estimator,
  readings: Work['readings'],
): { usPerReading: number; after: Estimator } {
  const times: number[] = [];
  let after = mixed;
  for (let round = 0; round < ROUNDS; round += 1) {
    after = mixed.clone();
    const started = performance.now();
    for (const { place, value, u } of readings) after.read({ places: [place], value, u });
    times.push(((performance.now() - started) * 1000) / readings.length);
  }
  return { usPerReading: quantileOf(times, 0.5), after };
}

function timeMovements(mixed: Estimator): number {
  const stores = STATES - CALIBRATIONS;
  const times: number[] = [];
  for (let round = 0; round < ROUNDS; round += 1) {
    const estimator = mixed.clone();
    const started = performance.now();
    for (let at = 0; at < 10 * READINGS; at += 1) {
      const calibration = stores + (at % CALIBRATIONS);
      estimator.move({
        from: (at * 7) % stores,
        to: (at * 11 + 3) % stores,
        calibration,
        massKg: 0.5,
        uKg: 0.02,
      });
    }
    times.push(((performance.now() - started) * 1000) / (10 * READINGS));
  }
  return quantileOf(times, 0.5);
}

function meansOf(estimator: Estimator): number[] {
  return Array.from({ length: STATES }, (_, at) => estimator.mean(at));
}

function triangleOf(estimator: Estimator): number[] {
  return Array.from({ length: STATES }, (_, a) => a).flatMap((a) =>
    Array.from({ length: a + 1 }, (_, b) => estimator.covariance(a, b)),
  );
}

/** The whole account of a book, from its first entry; one entry in ten is a reading. */
function folds(): BenchRow[] {
  const outpost = syntheticOutpost();
  const entries = syntheticEntries(ENTRIES, 2147);
  const rates: number[] = [];
  let states = 0;
  for (let round = 0; round < FOLDS; round += 1) {
    const fold = new Fold(outpost);
    const started = performance.now();
    for (const entry of entries) applyEntry(fold, entry);
    rates.push(ENTRIES / ((performance.now() - started) / 1000));
    states = fold.estimator.size;
  }
  const readings = entries.filter(({ kind }) => kind === 'weigh').length;
  const what = `${ENTRIES} entries folded, ${states} states, ${((100 * readings) / ENTRIES).toFixed(1)} % readings`;
  return [
    row({
      name: `${what}, median of ${FOLDS}`,
      value: quantileOf(rates, 0.5),
      unit: 'entries/s',
      goal: { least: 60_000 },
    }),
    row({ name: `${what}, least`, value: Math.min(...rates), unit: 'entries/s' }),
  ];
}

const YEAR = { days: 365, aDay: 50 };
const LATE = { days: 30, rounds: 60 };

/** Found on paper after a month: everything since is reckoned anew, from the fold that was kept before it. */
async function lateEntries(): Promise<BenchRow[]> {
  const { states, entries, late } = await lateBook(YEAR);
  const times: number[] = [];
  for (let round = 0; round < LATE.rounds; round += 1) times.push(await late(LATE.days));
  const what = `an entry ${LATE.days} days late among ${entries}, ${YEAR.aDay} a day, ${states} states`;
  return [
    row({ name: `${what}, p50`, value: quantileOf(times, 0.5), unit: 'ms', goal: { most: 50 } }),
    row({ name: `${what}, p95`, value: quantileOf(times, 0.95), unit: 'ms' }),
  ];
}
