// How often the band of a bed's date holds the truth: simulated beds of several kinds, the product's fit and its date.
import {
  type BedPrior,
  type BedStory,
  curveAt,
  type FitReading,
  fitBed,
  readingOf,
} from '../../src/account/index.ts';
import { bedDate, dailyUse, type FeedAhead } from '../../src/forecast/index.ts';
import { type Chance, exp, log, seededChance } from '../../src/ground/maths/index.ts';
import { patternBreakthrough } from '../../src/ground/physics/index.ts';
import { msPerDay } from '../../src/ground/units/index.ts';

const PRIOR: BedPrior = { lifeL: 850, lifeUL: 120, limit: 3 };
const DOUBT = { random: 0.085, calibration: 0.05 };
const LITRES = 7;
/** Relative, from day to day. */
const DAY_U = 0.06;
const LONGEST_DAYS = 400;

/** What comes through a bed over its throughput, in mg/L. */
type Truth = (throughputL: number) => number;

export interface BedWorld {
  readonly what: string;
  readonly truthOf: (chance: Chance) => Truth;
  /** Water differs so much from day to day beside the instrument, relative. */
  readonly ownScatter: number;
  /** Part of yesterday's difference that is left today. */
  readonly memory: number;
}

const uniform = (chance: Chance, low: number, high: number): number => low + (high - low) * chance.uniform();
const inLogs = (chance: Chance, low: number, high: number): number =>
  exp(uniform(chance, log(low), log(high)));

/** Exactly what the fit believes before any reading. */
function asBelieved(chance: Chance): Truth {
  for (;;) {
    const curve = curveAt(
      Float64Array.from([chance.normal(), chance.normal(), chance.normal(), chance.normal()]),
      PRIOR,
    );
    if (curve !== null) return readingOf(curve, PRIOR.limit);
  }
}

/** The front of a long bed in which the film or the grain is slow: no logistic curve. */
function constantPattern(chance: Chance): Truth {
  const bed = {
    resistance: chance.uniform() < 0.5 ? ('film' as const) : ('solid' as const),
    separation: uniform(chance, 0.05, 0.4),
    transferUnits: uniform(chance, 8, 40),
  };
  const base = uniform(chance, 0, 1);
  const ceiling = PRIOR.limit * inLogs(chance, 1.3, 15);
  const limitAtL = Math.max(100, PRIOR.lifeL + PRIOR.lifeUL * chance.normal());
  const curve = (t: number): number => base + (ceiling - base) * patternBreakthrough(bed, t);
  const atLimit = passage(curve, PRIOR.limit, 4);
  return (throughputL) => curve((throughputL / limitAtL) * atLimit);
}

export const BED_WORLDS = {
  believed: {
    what: 'a logistic front, as the fit believes it',
    truthOf: asBelieved,
    ownScatter: 0.05,
    memory: 0,
  },
  pattern: {
    what: 'a front of constant pattern, film or grain slow',
    truthOf: constantPattern,
    ownScatter: 0.05,
    memory: 0,
  },
  moods: {
    what: 'a feed whose strength stays for days (10 %, memory 0.8)',
    truthOf: asBelieved,
    ownScatter: 0.1,
    memory: 0.8,
  },
  lateLife: {
    what: 'beds that last a fifth longer than the file says',
    truthOf: (chance: Chance) => {
      const truth = asBelieved(chance);
      return (throughputL: number) => truth(throughputL / 1.2);
    },
    ownScatter: 0.05,
    memory: 0,
  },
} as const satisfies Readonly<Record<string, BedWorld>>;

export interface BedCovered {
  readonly what: string;
  readonly beds: number;
  /** Beds whose litres to the limit lay inside P10 to P90, and below P10, P50. */
  readonly inside: number;
  readonly belowP10: number;
  readonly belowP50: number;
  /** The same for the date, of beds that had not reached the limit when they were looked at. */
  readonly dateInside: number;
  readonly dates: number;
  /** Mean width of P10 to P90 in days. */
  readonly widthDays: number;
}

/**
 * Looks at every bed once, at a throughput that was drawn before anything was known of it: what is known must not choose the moment.
 */
export function bedCoverage(of: {
  readonly world: BedWorld;
  readonly beds: number;
  readonly firstSeed: number;
}): BedCovered {
  const looks = Array.from({ length: of.beds }, (_, k) =>
    lookAt(of.world, seededChance({ seed: of.firstSeed + k })),
  );
  const share = (list: readonly Look[], test: (look: Look) => boolean): number =>
    list.filter(test).length / Math.max(1, list.length);
  const ahead = looks.filter(({ trueDays }) => trueDays > 0);
  return {
    what: of.world.what,
    beds: looks.length,
    inside: share(looks, ({ trueL, q10L, q90L }) => trueL >= q10L && trueL <= q90L),
    belowP10: share(looks, ({ trueL, q10L }) => trueL < q10L),
    belowP50: share(looks, ({ trueL, q50L }) => trueL < q50L),
    dateInside: share(ahead, ({ trueDays, q10Days, q90Days }) => trueDays >= q10Days && trueDays <= q90Days),
    dates: ahead.length,
    widthDays:
      ahead.reduce((sum, { q10Days, q90Days }) => sum + q90Days - q10Days, 0) / Math.max(1, ahead.length),
  };
}

interface Look {
  readonly trueL: number;
  readonly trueDays: number;
  readonly q10L: number;
  readonly q50L: number;
  readonly q90L: number;
  readonly q10Days: number;
  readonly q90Days: number;
}

function lookAt(world: BedWorld, chance: Chance): Look {
  const truth = world.truthOf(chance);
  const lookDay = Math.round(uniform(chance, 40, 130));
  const days: number[] = [];
  const readings: FitReading[] = [];
  const factor = 1 + DOUBT.calibration * chance.normal();
  let throughputL = 0;
  let mood = 0;
  let nextReading = 7;
  let lookL = 0;
  let crossingDay: number | null = null;
  const limitL = passage(truth, PRIOR.limit, 3000);
  for (let day = 1; day <= LONGEST_DAYS; day++) {
    const fed = Math.max(0.5, LITRES * (1 + DAY_U * chance.normal()));
    if (crossingDay === null && throughputL + fed >= limitL)
      crossingDay = day - 1 + (limitL - throughputL) / fed;
    throughputL += fed;
    mood = world.memory * mood + Math.sqrt(1 - world.memory * world.memory) * chance.normal();
    if (day > lookDay) continue;
    days.push(fed);
    lookL = throughputL;
    if (day < nextReading) continue;
    const value = readingAt(truth(throughputL) * (1 + world.ownScatter * mood) * factor, chance);
    readings.push({ throughputL, value: Math.max(0.05, value), below: value < 0.05 });
    // Every week, and every three days once it is raised.
    nextReading = day + (value > 0.2 * PRIOR.limit ? 3 : 7);
  }
  const fit = fitBed(readings, DOUBT, PRIOR);
  const { leftL, ms } = bedDate(fit, storyAt(lookL), feedOf(days));
  return {
    trueL: limitL - lookL,
    trueDays: (crossingDay ?? LONGEST_DAYS) - lookDay,
    q10L: leftL.q10,
    q50L: leftL.q50,
    q90L: leftL.q90,
    q10Days: (ms.q10 ?? Number.POSITIVE_INFINITY) / msPerDay,
    q90Days: (ms.q90 ?? Number.POSITIVE_INFINITY) / msPerDay,
  };
}

/** The instrument tells tenths. */
function readingAt(value: number, chance: Chance): number {
  return Math.round((value + 0.08 * chance.normal()) * 10) / 10;
}

/** Where a rising curve passes a level; the end where it does not. */
function passage(curve: (x: number) => number, level: number, end: number): number {
  let [low, high] = [0, end];
  for (let k = 0; k < 60; k++) {
    const middle = (low + high) / 2;
    if (curve(middle) < level) low = middle;
    else high = middle;
  }
  return high;
}

/** A story that tells no more than what the date asks of it. */
function storyAt(usedL: number): BedStory {
  return {
    standing: { leadStartL: 0, leadStartUL: 0 },
    fedL: usedL,
    fedUL: 0,
    countedToMs: 0,
  } as BedStory;
}

function feedOf(litres: readonly number[]): FeedAhead {
  const usage = litres.map((netMg, k) => ({
    day: k,
    endMs: (k + 1 - litres.length) * msPerDay,
    days: 1,
    peopleAboard: 1,
    netMg: netMg * 1e6,
    entry: '',
  }));
  const use = dailyUse(usage, null, 0);
  if (use === null) throw new Error('no use was learned');
  return {
    use,
    people: [{ fromMs: 0, people: 1 }],
    litresPerDay: use.meanMg / 1e6,
    litresPerDayU: use.meanUMg / 1e6,
    mgPerL: 1e6,
  };
}
