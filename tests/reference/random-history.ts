// Random networks of stores, movements and readings from a seed, with instruments that share their calibration errors.
import { type Chance, seededChance } from '../../src/ground/maths/index.ts';
import type { Act, History } from './history.ts';

export interface Network {
  readonly stores: number;
  readonly calibrations: number;
  readonly offsets: number;
  readonly history: History;
}

/** 5 to 30 stores, 50 to 400 movements, a reading after every third to twelfth, in bursts of several stores. */
export function randomNetwork(seed: number): Network {
  const chance = seededChance({ seed });
  const stores = 5 + chance.integerBelow(26);
  const calibrations = 2 + chance.integerBelow(5);
  const offsets = 1 + chance.integerBelow(3);
  const movements = 50 + chance.integerBelow(351);
  const every = 3 + chance.integerBelow(10);
  const priors = Array.from({ length: stores + calibrations + offsets }, (_, at) =>
    priorOf(at, { stores, calibrations, chance }),
  );
  const acts: Act[] = [];
  let sinceReading = 0;
  for (let movement = 0; movement < movements; movement += 1) {
    acts.push(moveOf(chance, { stores, calibrations }));
    sinceReading += 1;
    if (sinceReading < every) continue;
    sinceReading = 0;
    if (chance.uniform() < 0.2) acts.push(rareOf(chance, { stores, calibrations }));
    acts.push(...readingsOf(chance, { stores, calibrations, offsets }));
  }
  // The last movement is always followed by a reading.
  acts.push(...readingsOf(chance, { stores, calibrations, offsets }));
  return { stores, calibrations, offsets, history: { priors, acts } };
}

interface Sizes {
  readonly stores: number;
  readonly calibrations: number;
  readonly offsets: number;
}

function priorOf(
  at: number,
  { stores, calibrations, chance }: { stores: number; calibrations: number; chance: Chance },
) {
  if (at < stores) return { mean: 10 + 200 * chance.uniform(), variance: (0.1 + 5 * chance.uniform()) ** 2 };
  const isCalibration = at < stores + calibrations;
  return {
    mean: 0,
    variance: ((isCalibration ? 0.002 : 0.2) + (isCalibration ? 0.03 : 2) * chance.uniform()) ** 2,
  };
}

function moveOf(chance: Chance, { stores, calibrations }: Omit<Sizes, 'offsets'>): Act {
  const end = (): number => chance.integerBelow(stores + 1) - 1;
  const massKg = 0.2 + 20 * chance.uniform();
  return {
    act: 'move',
    from: end(),
    to: end(),
    // One in five was measured by nothing that repeats its error.
    calibration: chance.uniform() < 0.2 ? -1 : stores + chance.integerBelow(calibrations),
    massKg,
    uKg: chance.uniform() < 0.1 ? 0 : 0.02 + 0.01 * massKg,
  };
}

/** A calibration drifts or is made anew, or a store is newly told. */
function rareOf(chance: Chance, { stores, calibrations }: Omit<Sizes, 'offsets'>): Act {
  const place = stores + chance.integerBelow(calibrations);
  const kind = chance.integerBelow(3);
  if (kind === 0) return { act: 'drift', place, variance: 1e-5 };
  if (kind === 1) return { act: 'told', place, prior: { mean: 0, variance: 4e-4 } };
  return {
    act: 'told',
    place: chance.integerBelow(stores),
    prior: { mean: 50 * chance.uniform(), variance: 1 },
  };
}

/** Up to four stores at one moment; every third reading repeats the error of a gauge, some weigh two stores together. */
function readingsOf(chance: Chance, { stores, calibrations, offsets }: Sizes): Act[] {
  return Array.from({ length: 1 + chance.integerBelow(4) }, (): Act => {
    const places = [chance.integerBelow(stores)];
    const weights = [1];
    if (chance.uniform() < 0.33) {
      places.push(stores + calibrations + chance.integerBelow(offsets));
      weights.push(0.5 + chance.uniform());
    }
    if (chance.uniform() < 0.1) {
      places.push((places[0]! + 1) % stores);
      weights.push(1);
    }
    // Readings go wherever they like: agreement is a matter of algebra, not of good measuring.
    return { act: 'read', places, weights, value: 150 * chance.uniform(), u: 0.03 + 0.5 * chance.uniform() };
  });
}

/** The same history with the readings of one moment in another order. */
export function withReadingsShuffled({ priors, acts }: History, seed: number): History {
  const chance = seededChance({ seed, stream: 7 });
  const shuffled = [...acts];
  for (let start = 0; start < shuffled.length; start += 1) {
    let end = start;
    while (shuffled[end]?.act === 'read') end += 1;
    for (let at = end - 1; at > start; at -= 1) {
      const other = start + chance.integerBelow(at - start + 1);
      [shuffled[at], shuffled[other]] = [shuffled[other]!, shuffled[at]!];
    }
    start = Math.max(start, end);
  }
  return { priors, acts: shuffled };
}
