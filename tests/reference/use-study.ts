// How often a band of what a crew will use holds what it then uses: simulated crews, the product's learner and simpler ones.
import type { UsageDay } from '../../src/account/index.ts';
import { dailyUse, usedAhead } from '../../src/forecast/index.ts';
import { normalCdf, normalQuantile, rootBetween, seededChance } from '../../src/ground/maths/index.ts';
import { msPerDay } from '../../src/ground/units/index.ts';

/** A world of crews. Litres a person and day; every ± is one standard deviation. */
export interface UseWorld {
  readonly people: number;
  /** Use of crews in general, between crews, and between the people of one crew. */
  readonly meanL: number;
  readonly crewUL: number;
  readonly personUL: number;
  /** A person's mood: its spread, and what is left of it after a day. */
  readonly moodUL: number;
  readonly memory: number;
  /** Noise of a person's day. */
  readonly noiseUL: number;
  /** What the outpost file says of the mean, as a multiple of the true mean of crews. */
  readonly normTimes: number;
}

export const FIVE_PEOPLE: UseWorld = {
  people: 5,
  meanL: 2.5,
  crewUL: 0.625,
  personUL: 0.3,
  moodUL: 0.2,
  memory: 0.8,
  noiseUL: 0.15,
  normTimes: 1,
};

/** A band of 90 %: chance of less use than this, and half the width. */
interface Band {
  readonly below: (usedMg: number) => number;
  readonly halfWidthMg: number;
}

export type Learner = (usage: readonly UsageDay[], normMg: number) => (days: number) => Band;

const normal = (meanMg: number, uMg: number): Band => ({
  below: (usedMg) => normalCdf((usedMg - meanMg) / uMg),
  halfWidthMg: normalQuantile(0.95) * uMg,
});

/** The product's own: Bayes on a grid of memories, moods and noises. */
const bayes: Learner = (usage, normMg) => {
  const use = dailyUse(usage, { netMg: normMg, grossMg: normMg });
  if (use === null) throw new Error('nothing was learned');
  return (days) => {
    const ahead = usedAhead(days, use.cases);
    const below = (usedMg: number) =>
      ahead.reduce(
        (sum, one) => sum + one.weight * normalCdf((usedMg - one.meanMg) / Math.sqrt(one.variance)),
        0,
      );
    const far = 1e3 * days * Math.abs(use.meanMg);
    const at = (share: number) => rootBetween((x) => below(x) - share, { low: -far, high: far }, 1e-9);
    return { below, halfWidthMg: (at(0.95) - at(0.05)) / 2 };
  };
};

/** Mean, day-to-day spread, and lag-one correlation of a person's share. */
function plain(usage: readonly UsageDay[]) {
  const values = usage.map((day) => day.netMg / day.peopleAboard);
  const n = values.length;
  const mean = values.reduce((sum, value) => sum + value, 0) / n;
  const off = values.map((value) => value - mean);
  const squares = off.reduce((sum, value) => sum + value * value, 0);
  const products = off.reduce((sum, value, k) => sum + value * (off[k + 1] ?? 0), 0);
  return { n, mean, variance: squares / (n - 1), memory: products / squares };
}

/** The days' spread alone, as if the mean were known. */
const daysAlone: Learner = (usage) => {
  const { mean, variance } = plain(usage);
  return (days) => normal(days * mean, Math.sqrt(days * variance));
};

/** The doubt of the mean besides, as if each day were a new one. */
const meanToo: Learner = (usage) => {
  const { n, mean, variance } = plain(usage);
  return (days) => normal(days * mean, Math.sqrt(days * variance + (days * days * variance) / n));
};

/** An effective number of days by the lag-one correlation, drawn towards 0 while days are few. */
const fewerDays: Learner = (usage) => {
  const { n, mean, variance, memory } = plain(usage.slice(-28));
  const rho = Math.min(0.8, Math.max(0, (memory * n) / (n + 10)));
  const longRun = (variance * (1 + rho)) / (1 - rho);
  const meanVariance = (longRun / n) * ((n - 1) / (n - 3));
  return (days) => normal(days * mean, Math.sqrt(days * longRun + days * days * meanVariance));
};

export const LEARNERS = { bayes, fewerDays, meanToo, daysAlone } as const;

export interface UseStudy {
  readonly crews: number;
  readonly firstSeed: number;
  readonly learnedDays: number;
  readonly horizons: readonly number[];
  readonly world?: UseWorld;
  readonly learner: Learner;
}

export interface UseCovered {
  readonly days: number;
  /** Share of crews inside the band of 90 %, with its standard error. */
  readonly share: number;
  readonly shareU: number;
  /** Mean half-width of the band, litres for the whole crew. */
  readonly halfWidthL: number;
}

const MG = 1_000_000;

export function useCoverage(study: UseStudy): readonly UseCovered[] {
  const { crews, firstSeed, horizons, world = FIVE_PEOPLE } = study;
  const inside = horizons.map(() => 0);
  const width = horizons.map(() => 0);
  for (let seed = firstSeed; seed < firstSeed + crews; seed++) {
    const crew = crewDays(world, study.learnedDays + Math.max(...horizons), seed);
    const usage = crew.slice(0, study.learnedDays).map((litres, k) => usageDay(litres, k, world.people));
    const bandOf = study.learner(usage, world.meanL * world.normTimes * MG);
    horizons.forEach((days, k) => {
      const used = crew
        .slice(study.learnedDays, study.learnedDays + days)
        .reduce((sum, litres) => sum + litres, 0);
      const band = bandOf(days);
      const chance = band.below((used * MG) / world.people);
      if (chance >= 0.05 && chance <= 0.95) inside[k] = (inside[k] ?? 0) + 1;
      width[k] = (width[k] ?? 0) + (band.halfWidthMg * world.people) / MG;
    });
  }
  return horizons.map((days, k) => {
    const share = (inside[k] ?? 0) / crews;
    return {
      days,
      share,
      shareU: Math.sqrt((share * (1 - share)) / crews),
      halfWidthL: (width[k] ?? 0) / crews,
    };
  });
}

/** Litres that one crew uses, day by day. */
function crewDays(world: UseWorld, days: number, seed: number): readonly number[] {
  const chance = seededChance({ seed });
  const crewL = world.meanL + world.crewUL * chance.normal();
  const people = Array.from({ length: world.people }, () => ({
    meanL: crewL + world.personUL * chance.normal(),
    moodL: world.moodUL * chance.normal(),
  }));
  const step = world.moodUL * Math.sqrt(1 - world.memory * world.memory);
  return Array.from({ length: days }, () =>
    people.reduce((sum, person) => {
      person.moodL = world.memory * person.moodL + step * chance.normal();
      return sum + person.meanL + person.moodL + world.noiseUL * chance.normal();
    }, 0),
  );
}

function usageDay(litres: number, k: number, people: number): UsageDay {
  return {
    day: k + 1,
    endMs: k * msPerDay,
    days: 1,
    peopleAboard: people,
    netMg: litres * MG,
    entry: `day ${k + 1}`,
  };
}
