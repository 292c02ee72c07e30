// A Kalman filter of the mean, the mood and the sum of an open interval, for one assumption of memory, mood and noise.
import { log } from '../ground/maths/index.ts';

export interface UsePrior {
  /** Mean use of crews in general, and its spread between crews, one standard deviation. */
  readonly meanMg: number;
  readonly uMg: number;
  /** About the size of the differences from day to day. */
  readonly scaleMg: number;
}

export interface UseAssumed {
  readonly memory: number;
  /** Of the mood in the long run. */
  readonly moodVariance: number;
  /** Of a day. */
  readonly noiseVariance: number;
}

/** Between these the product of variances cannot leave the range of doubles at the next reading. */
const LARGEST_PRODUCT = 1e100;

/**
 * State: mean m, mood u, and s, the sum of m + u over the days since the last reading. In names of covariances `Mm` is the
 * variance of the mean, `Mu` its covariance with the mood, and so on.
 */
export class UseFilter {
  readonly #assumed: UseAssumed;
  readonly #stepVariance: number;
  readonly #unit: number;
  #m: number;
  #u = 0;
  #s = 0;
  #mm: number;
  #mu = 0;
  #uu: number;
  #ms = 0;
  #us = 0;
  #ss = 0;
  #squares = 0;
  #logs = 0;
  #product = 1;

  constructor(prior: UsePrior, assumed: UseAssumed) {
    const { meanMg, uMg, scaleMg } = prior;
    if (!(scaleMg > 0 && uMg > 0)) throw new RangeError('a use was learned without a spread or a scale');
    this.#assumed = assumed;
    this.#stepVariance = assumed.moodVariance * (1 - assumed.memory * assumed.memory);
    this.#unit = scaleMg * scaleMg;
    this.#m = meanMg;
    this.#mm = uMg * uMg;
    this.#uu = assumed.moodVariance;
  }

  /** Days go by. */
  pass(days: number): void {
    const { memory } = this.#assumed;
    for (let day = 0; day < days; day++) {
      this.#u *= memory;
      this.#mu *= memory;
      this.#us *= memory;
      this.#uu = memory * memory * this.#uu + this.#stepVariance;
      this.#ss += 2 * (this.#ms + this.#us) + this.#mm + 2 * this.#mu + this.#uu;
      this.#ms += this.#mm + this.#mu;
      this.#us += this.#mu + this.#uu;
      this.#s += this.#m + this.#u;
    }
  }

  /** The next so many days go by, and then it is told how much was used in them. */
  read(usedMg: number, days: number): void {
    this.#s = this.#ms = this.#us = this.#ss = 0;
    this.pass(days);
    const variance = this.#ss + days * this.#assumed.noiseVariance;
    const innovation = usedMg - this.#s;
    const gainM = this.#ms / variance;
    const gainU = this.#us / variance;
    this.#m += gainM * innovation;
    this.#u += gainU * innovation;
    this.#mm -= gainM * this.#ms;
    this.#mu -= gainM * this.#us;
    this.#uu -= gainU * this.#us;
    this.#squares += (innovation * innovation) / variance;
    this.#product *= variance / this.#unit;
    if (this.#product < LARGEST_PRODUCT && this.#product > 1 / LARGEST_PRODUCT) return;
    this.#logs += log(this.#product);
    this.#product = 1;
  }

  /** But for a part that all assumptions share. */
  logLikelihood(): number {
    return -0.5 * (this.#squares + this.#logs + log(this.#product));
  }

  state() {
    const { memory, noiseVariance } = this.#assumed;
    return {
      memory,
      noiseVariance,
      moodStepVariance: this.#stepVariance,
      meanMg: this.#m,
      moodMg: this.#u,
      meanVariance: Math.max(0, this.#mm),
      moodVariance: Math.max(0, this.#uu),
      covariance: this.#mu,
    };
  }
}
