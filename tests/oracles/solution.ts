// What is reckoned from samples with their doubt, doses, and water that is split, against python3-uncertainties and scipy.
import {
  electrolysisRates,
  readingAgainstIons,
  stockForTarget,
  wallLossFromSamples,
} from '../../src/ground/physics/index.ts';
import { between, type Oracle } from './oracle.ts';

const script = 'solution_values.py';
const sampled = ([value = Number.NaN, u = Number.NaN]: readonly number[]) => ({ value, u });

const wallLoss: Oracle<{
  first: readonly number[];
  second: readonly number[];
  timeS: number;
  areaPerVolumePerM: number;
}> = {
  subject: 'loss to walls from two samples',
  against: 'python3-uncertainties',
  answers: { script, ask: 'wallLoss' },
  count: 150,
  point: (chance) => {
    const value = between(chance, 1e-4, 5e-4);
    const left = value * between(chance, 0.2, 0.95);
    return {
      first: [value, value * between(chance, 0.01, 0.1)],
      second: [left, left * between(chance, 0.01, 0.1)],
      timeS: between(chance, 1e4, 3e6),
      areaPerVolumePerM: between(chance, 5, 400),
    };
  },
  ours: ({ first, second, timeS, areaPerVolumePerM }) => {
    const fitted = wallLossFromSamples({
      first: sampled(first),
      second: sampled(second),
      timeS,
      areaPerVolumePerM,
    });
    return [fitted.lossMPerS, fitted.uMPerS];
  },
  tolerance: { rel: 1e-12 },
  because: 'both take the first order; the logarithm of two near values loses two digits',
  control: {
    is: 'the doubt of the first sample forgotten',
    wrong: ({ first, second, timeS, areaPerVolumePerM }) => {
      const known = { value: sampled(first).value, u: 0 };
      const fitted = wallLossFromSamples({ first: known, second: sampled(second), timeS, areaPerVolumePerM });
      return [fitted.lossMPerS, fitted.uMPerS];
    },
  },
};

const against: Oracle<{ reading: readonly number[]; ions: readonly number[] }> = {
  subject: 'reading of conductivity against ions',
  against: 'python3-uncertainties',
  answers: { script, ask: 'against' },
  count: 100,
  point: (chance) => {
    const value = between(chance, 0.001, 0.05);
    return {
      reading: [value, value * between(chance, 0.005, 0.03)],
      ions: [value * between(chance, 0.8, 0.95), value * 0.02],
    };
  },
  ours: ({ reading, ions }) => {
    const found = readingAgainstIons({ reading: sampled(reading), ions: sampled(ions) });
    return [found.differenceSPerM, found.uSPerM, found.inU];
  },
  tolerance: { rel: 1e-12 },
  because: 'the same first order; a difference of near values',
  control: {
    is: 'doubts added and not their squares',
    wrong: ({ reading, ions }) => {
      const u = sampled(reading).u + sampled(ions).u;
      const difference = sampled(reading).value - sampled(ions).value;
      return [difference, u, difference / u];
    },
  },
};

const dose: Oracle<{ volume: number; holds: number; wanted: number; stock: number }> = {
  subject: 'dose of a stock solution',
  against: 'scipy, a search by Brent',
  answers: { script, ask: 'stockVolume' },
  count: 150,
  point: (chance) => {
    const holds = between(chance, 0, 1e-4);
    const wanted = holds + between(chance, 2e-5, 4e-4);
    return { volume: between(chance, 0.005, 0.4), holds, wanted, stock: between(chance, 0.01, 1) };
  },
  ours: ({ volume, holds, wanted, stock }) =>
    stockForTarget({
      water: { volumeM3: volume, concentrationKgPerM3: holds },
      wantedKgPerM3: wanted,
      stockKgPerM3: stock,
      greatestKgPerM3: null,
    }).stockVolumeM3,
  tolerance: { rel: 1e-10 },
  because: 'a search ends where the concentration no longer tells two doses apart',
  control: {
    is: 'the volume of the stock itself forgotten',
    wrong: ({ volume, holds, wanted, stock }) => (volume * (wanted - holds)) / stock,
  },
};

const split: Oracle<{ cells: number; currentA: number; currentEfficiency: number }> = {
  subject: 'water that a stack splits',
  against: 'scipy and python3-iapws, their constants',
  answers: { script, ask: 'waterSplitKgPerS' },
  count: 100,
  point: (chance) => ({
    cells: 1 + chance.integerBelow(60),
    currentA: between(chance, 1, 100),
    currentEfficiency: between(chance, 0.8, 1),
  }),
  ours: (stack) => electrolysisRates(stack).waterKgPerS,
  tolerance: { rel: 2e-5 },
  because: 'molar masses of water to five digits and to eight',
  control: {
    is: 'the efficiency forgotten',
    wrong: (stack) => electrolysisRates({ ...stack, currentEfficiency: 1 }).waterKgPerS,
  },
};

export const SOLUTION_ORACLES: readonly Oracle[] = [wallLoss, against, dose, split];
