// What one person will use over the next days, by what was learned of the days behind.
import { pow } from '../ground/maths/index.ts';
import type { UseCase } from './use-model.ts';

export interface UsedAhead {
  readonly weight: number;
  readonly meanMg: number;
  readonly variance: number;
}

/**
 * Use over h days, one normal distribution a case:
 * mean = h m + L u with L = ρ(1−ρ^h)/(1−ρ); variance = h² P_mm + 2 h L P_mu + L² P_uu + A + h s², where
 * A = q/(1−ρ)² · (h − 2L + ρ²(1−ρ^2h)/(1−ρ²)) is what the days to come add to the mood.
 * @param days h, at least 0; a part of a day counts as its part
 * @param cases as learned
 * @returns mean and variance of each case, milligrams a person
 * @throws RangeError for days below 0 or none
 * @source derived from the model; held against simulated days in use-ahead.test.ts
 * @example usedAhead(10, [sureUse({ meanMg: 5, uMg: 0, dayUMg: 1 })])[0] // { weight: 1, meanMg: 50, variance: 10 }
 */
export function usedAhead(days: number, cases: readonly UseCase[]): readonly UsedAhead[] {
  if (!(days >= 0)) throw new RangeError(`a use was asked for ${days} days`);
  let memory = Number.NaN;
  let left = 1;
  return cases.map((one) => {
    // Cases of one memory stand together.
    if (one.memory !== memory) {
      memory = one.memory;
      left = pow(memory, days);
    }
    return caseAhead(days, left, one);
  });
}

function caseAhead(days: number, left: number, one: UseCase): UsedAhead {
  const rho = one.memory;
  const lasting = (rho * (1 - left)) / (1 - rho);
  const known =
    days * days * one.meanVariance +
    2 * days * lasting * one.covariance +
    lasting * lasting * one.moodVariance;
  const shape = days - 2 * lasting + (rho * rho * (1 - left * left)) / (1 - rho * rho);
  const added = (one.moodStepVariance / ((1 - rho) * (1 - rho))) * Math.max(0, shape);
  return {
    weight: one.weight,
    meanMg: days * one.meanMg + lasting * one.moodMg,
    variance: Math.max(0, known) + added + days * one.noiseVariance,
  };
}

/** A mean with its doubt and days that differ without a mood: one case, for a norm that stands in. */
export function sureUse(use: {
  readonly meanMg: number;
  readonly uMg: number;
  readonly dayUMg: number;
}): UseCase {
  return {
    weight: 1,
    memory: 0,
    moodStepVariance: 0,
    noiseVariance: use.dayUMg * use.dayUMg,
    meanMg: use.meanMg,
    moodMg: 0,
    meanVariance: use.uMg * use.uMg,
    moodVariance: 0,
    covariance: 0,
  };
}
