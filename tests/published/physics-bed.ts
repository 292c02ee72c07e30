// What the tables of beds are held against.
import {
  breakTimeOfLengthS,
  type CurvePoint,
  logisticOfThomas,
  molarMassKgPerMol,
  patternThroughput,
  type Resistance,
  takenUpKgPerKg,
  thomasOfLogistic,
  unusedBed,
  unusedLengthM,
} from '../../src/ground/physics/index.ts';
import breakthroughs from './data/breakthroughs.json' with { type: 'json' };
import type { Subject } from './subject.ts';

const GAS_CONSTANT = 8.314462618;
const PA_PER_MMHG = 101_325 / 760;
const KG_PER_M2_S = 10 / 3600;

const { alcohol, copper } = breakthroughs;
const beds: Readonly<Record<string, { curve: readonly CurvePoint[]; lengthM: number }>> = {
  alcohol: {
    curve: alcohol.timeH.map((hours, at) => ({
      timeS: hours * 3600,
      share: alcohol.share[at] ?? Number.NaN,
    })),
    lengthM: alcohol.lengthM,
  },
  // Before the first point nothing came through.
  copper: {
    curve: [
      { timeS: 0, share: 0 },
      ...copper.timeS.map((timeS, at) => ({
        timeS,
        share: (copper.molPerL[at] ?? Number.NaN) / copper.feedMolPerL,
      })),
    ],
    lengthM: copper.lengthM,
  },
};

function breakthrough(name: string, limit: string) {
  const bed = beds[name];
  if (bed === undefined) throw new Error(`no breakthrough is called ${name}`);
  return unusedBed({ ...bed, limitShare: Number(limit) });
}

const unused = (used: string, stoichiometric: string, lengthCm: string): number =>
  unusedLengthM({
    lengthM: Number(lengthCm) / 100,
    usedS: Number(used) * 3600,
    stoichiometricS: Number(stoichiometric) * 3600,
  });

export const BED: Readonly<Record<string, Subject>> = {
  vapourFed: (cmPerS = '', ppm = '', celsius = '', mmHg = '') => {
    const molPerM3 = (Number(mmHg) * PA_PER_MMHG) / (GAS_CONSTANT * (Number(celsius) + 273.15));
    const kgPerM3 = molPerM3 * Number(ppm) * 1e-6 * molarMassKgPerMol('C4H10O');
    return ((Number(cmPerS) / 100) * kgPerM3) / KG_PER_M2_S;
  },
  takenUp: (fed = '', hours = '', lengthCm = '', gPerCm3 = '') =>
    takenUpKgPerKg({
      fedKgPerM2S: Number(fed) * KG_PER_M2_S,
      heldS: Number(hours) * 3600,
      lengthM: Number(lengthCm) / 100,
      bulkKgPerM3: Number(gPerCm3) * 1000,
    }),
  usedShareOf: (used = '', stoichiometric = '', lengthCm = '') =>
    1 - unused(used, stoichiometric, lengthCm) / (Number(lengthCm) / 100),
  unusedLength: (used = '', stoichiometric = '', lengthCm = '') =>
    unused(used, stoichiometric, lengthCm) * 100,
  breakOfLength: (used = '', stoichiometric = '', lengthCm = '', newCm = '') =>
    breakTimeOfLengthS({
      stoichiometricS: Number(stoichiometric) * 3600,
      lengthM: Number(lengthCm) / 100,
      unusedM: unused(used, stoichiometric, lengthCm),
      newLengthM: Number(newCm) / 100,
    }) / 3600,
  breakthrough: (name = '', limit = '', what = '') => {
    const { stoichiometricS, breakS, usedShare, unusedM } = breakthrough(name, limit);
    const told: Readonly<Record<string, number>> = {
      stoichiometric: stoichiometricS / 3600,
      break: breakS / 3600,
      share: usedShare,
      unused: unusedM * 100,
    };
    return told[what] ?? Number.NaN;
  },
  breakthroughSeconds: (name = '', limit = '', what = '') =>
    what === 'stoichiometric' ? breakthrough(name, limit).stoichiometricS : Number.NaN,
  alcoholCapacity: () =>
    takenUpKgPerKg({
      // For the whole section of the bed: its area cancels.
      fedKgPerM2S: 754e-6 * 1.15 * 600e-6,
      heldS: breakthrough('alcohol', '0.01').stoichiometricS,
      lengthM: alcohol.lengthM,
      bulkKgPerM3: 0.0792 / alcohol.lengthM,
    }),
  yoonNelsonRate: (thomas = '', mgPerL = '') =>
    logisticOfThomas({
      thomasM3PerKgS: Number(thomas) / 60,
      capacityKgPerKg: 1,
      sorbentKg: 1,
      feedKgPerM3: Number(mgPerL) / 1000,
      flowM3PerS: 1,
    }).ratePerS * 60,
  // The sorbent of which the half time is the one printed.
  impliedSorbent: (mgPerG = '', minutes = '', mLPerMin = '', mgPerL = '') => {
    const run = {
      bed: { ratePerS: 1, halfTimeS: Number(minutes) * 60 },
      sorbentKg: 1,
      feedKgPerM3: Number(mgPerL) / 1000,
      flowM3PerS: (Number(mLPerMin) * 1e-6) / 60,
    };
    return (thomasOfLogistic(run).capacityKgPerKg / (Number(mgPerG) / 1000)) * 1000;
  },
  patternThroughput: (resistance = '', separation = '', units = '', share = '') =>
    patternThroughput(
      {
        resistance: resistance as Resistance,
        separation: Number(separation),
        transferUnits: Number(units),
      },
      Number(share),
    ),
};
