// Breakthrough of beds, against their differential equations and integrals.
import {
  bohartAdams,
  chainAfter,
  logisticBreakthrough,
  patternThroughput,
  type Resistance,
  unusedBed,
} from '../../src/ground/physics/index.ts';
import { between, type Oracle } from './oracle.ts';

const script = 'bed_values.py';

const fullForm: Oracle<{ ratePerS: number; halfTimeS: number; timeS: number }> = {
  subject: 'Bohart and Adams, full form',
  against: 'scipy, the two differential equations',
  answers: { script, ask: 'bohartAdams' },
  count: 100,
  point: (chance) => {
    const halfTimeS = between(chance, 1000, 5000);
    return {
      ratePerS: between(chance, 0.5, 12) / halfTimeS,
      halfTimeS,
      timeS: halfTimeS * between(chance, 0, 2),
    };
  },
  ours: (bed) => bohartAdams(bed, bed.timeS),
  tolerance: { rel: 1e-10 },
  because: 'its integration is asked for eleven digits along the time and has 48 nodes along the bed',
  control: { is: 'the logistic curve', wrong: (bed) => logisticBreakthrough(bed, bed.timeS) },
};

const logistic: Oracle<{ ratePerS: number; halfTimeS: number; timeS: number }> = {
  subject: 'logistic breakthrough',
  against: 'scipy, expit',
  answers: { script, ask: 'logistic' },
  count: 150,
  point: (chance) => {
    const halfTimeS = between(chance, 1000, 5000);
    return {
      ratePerS: between(chance, 5, 60) / halfTimeS,
      halfTimeS,
      timeS: halfTimeS * between(chance, 0, 2),
    };
  },
  ours: (bed) => logisticBreakthrough(bed, bed.timeS),
  tolerance: { rel: 1e-13 },
  because: 'an exponential of up to sixty keeps its digits less two',
  control: {
    is: 'the full form of a short bed',
    wrong: (bed) => bohartAdams({ ...bed, ratePerS: bed.ratePerS / 2 }, bed.timeS),
  },
};

const KINDS: readonly Resistance[] = ['film', 'solid', 'reaction'];

const pattern: Oracle<{ resistance: number; separation: number; transferUnits: number; share: number }> = {
  subject: 'constant pattern',
  against: 'scipy, integrals of the rate and of the balance of mass',
  answers: { script, ask: 'patternThroughput' },
  count: 150,
  point: (chance) => ({
    resistance: chance.integerBelow(3),
    separation: between(chance, 0.02, 0.5),
    transferUnits: between(chance, 30, 200),
    share: between(chance, 0.01, 0.99),
  }),
  ours: ({ resistance, share, ...bed }) =>
    patternThroughput({ ...bed, resistance: KINDS[resistance] ?? 'film' }, share),
  tolerance: { rel: 1e-11 },
  because: 'its integrals end where the rate is nothing, and lose digits there',
  control: {
    is: 'film and grain taken for one another',
    wrong: ({ resistance, share, ...bed }) =>
      patternThroughput({ ...bed, resistance: KINDS[(resistance + 1) % 3] ?? 'film' }, share),
  },
};

const row: Oracle<{ capacities: readonly number[]; steepnesses: readonly number[]; fed: number }> = {
  subject: 'two beds in a row',
  against: 'scipy, the integral over the lead',
  answers: { script, ask: 'behindBoth' },
  count: 150,
  point: (chance) => ({
    capacities: [between(chance, 0.01, 0.05), between(chance, 0.01, 0.05)],
    steepnesses: [between(chance, 3, 60), between(chance, 3, 60)],
    fed: between(chance, 0.01, 0.12),
  }),
  ours: ({ capacities, steepnesses, fed }) => {
    const [lead, lag] = [0, 1].map((at) => ({
      capacityKg: capacities[at] ?? Number.NaN,
      steepness: steepnesses[at] ?? Number.NaN,
      fedKg: 0,
    }));
    if (lead === undefined || lag === undefined) throw new Error('two beds');
    const after = chainAfter({ lead, lag }, { volumeM3: fed, feedKgPerM3: 1 });
    return [after.leadKgPerM3, after.lagKgPerM3, after.chain.lag.fedKg];
  },
  tolerance: { rel: 1e-10 },
  because: 'what passes a fresh steep bed is a tiny tail, of which the integral keeps fewer digits',
  control: {
    is: 'a lag that is fed as much as the lead',
    wrong: ({ capacities, steepnesses, fed }) => {
      const lead = { capacityKg: capacities[0] ?? 1, steepness: steepnesses[0] ?? 1, fedKg: 0 };
      const alone = chainAfter({ lead, lag: lead }, { volumeM3: fed, feedKgPerM3: 1 });
      return [alone.leadKgPerM3, alone.leadKgPerM3 * alone.leadKgPerM3, fed];
    },
  },
};

const unused: Oracle<{ times: readonly number[]; shares: readonly number[]; limit: number }> = {
  subject: 'unused bed of a measured curve',
  against: 'numpy, trapz and interp',
  answers: { script, ask: 'unusedBed' },
  count: 100,
  point: (chance) => {
    const times = Array.from({ length: 12 }, (_, at) => 100 * at + between(chance, 0, 80));
    const shares = times.map((timeS, at) =>
      at === 0 ? 0 : logisticBreakthrough({ ratePerS: 0.02, halfTimeS: 600 }, timeS),
    );
    return { times, shares, limit: between(chance, 0.02, 0.6) };
  },
  ours: ({ times, shares, limit }) => {
    const curve = times.map((timeS, at) => ({ timeS, share: shares[at] ?? Number.NaN }));
    const found = unusedBed({ curve, limitShare: limit, lengthM: 1 });
    return [found.stoichiometricS, found.breakS, found.usedS];
  },
  tolerance: { rel: 1e-12 },
  because: 'sums of a dozen trapezoids in another order',
  control: {
    is: 'points instead of lines between them',
    wrong: ({ times, limit }) => [600, times[5] ?? 0, 600 * limit],
  },
};

export const BED_ORACLES: readonly Oracle[] = [fullForm, logistic, pattern, row, unused];
