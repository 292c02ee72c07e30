// How much water people give the condensers, learned from the days before: a rate for each of them, less on rest days.
import { Estimator } from './estimator.ts';

/** What the outpost file says of it, kilograms; every u is one standard deviation. */
export interface CondensateNorms {
  readonly rateKg: number;
  readonly rateU: number;
  /** How much one day differs from another, relative. */
  readonly betweenDays: number;
  /** By how much a rest day brings less, for everybody together. */
  readonly restLessKg: number;
  readonly restLessU: number;
}

/** An interval between two lines at which the condensers were read. */
export interface CrewDays {
  readonly days: number;
  readonly personDays: number;
  /** Of those who came last: their rate is not known yet. */
  readonly newcomerDays: number;
  readonly restDays: number;
}

export interface CrewCondensate {
  readonly kg: number;
  /** Of the learned rates: the same error on every day. */
  readonly sharedU: number;
  /** New on every day. */
  readonly ownU: number;
}

/** Slow change of habits: so much of the rate, one standard deviation, after one day. Ours, no source. */
const DRIFT_RELATIVE_PER_SQRT_DAY = 0.002;
/** The declared spread between days weighs as much as this many days of learning. Ours, no source. */
const DECLARED_SPREAD_DAYS = 8;
/** A day farther off than this many doubts teaches nothing: something else was at work. */
const FAR_OFF = 3;
/** The first days teach whatever they say: else a norm that is far from this crew would never be mended. Ours, no source. */
const FIRST_DAYS = 3;

export class CondensateRate {
  readonly #norms: CondensateNorms;
  readonly #estimator = new Estimator(3);
  readonly #places: readonly [rate: number, rest: number, newcomers: number];
  #spreadDays = DECLARED_SPREAD_DAYS;
  #spreadSum = DECLARED_SPREAD_DAYS;
  #taught = 0;

  constructor(norms: CondensateNorms) {
    this.#norms = norms;
    const add = (mean: number, u: number): number => this.#estimator.add(mean, u * u);
    this.#places = [
      add(norms.rateKg, norms.rateU),
      add(norms.restLessKg, norms.restLessU),
      add(0, norms.rateU),
    ];
  }

  /** Days that taught. */
  get taught(): number {
    return this.#taught;
  }

  /** Of the declared spread between days; 1 where days differ as the file says. */
  get spreadFactor(): number {
    return Math.sqrt(this.#spreadSum / this.#spreadDays);
  }

  /** Of one person and day, kilograms. */
  get rate(): { readonly kg: number; readonly u: number } {
    const [rate] = this.#places;
    return { kg: this.#estimator.mean(rate), u: Math.sqrt(this.#estimator.variance(rate)) };
  }

  expect(crew: CrewDays): CrewCondensate {
    const weights = weightsOf(crew);
    const places = this.#places;
    let [kg, variance] = [0, 0];
    for (const [at, weight] of weights.entries()) {
      kg += weight * this.#estimator.mean(places[at] as number);
      for (const [other, more] of weights.entries())
        variance += weight * more * this.#estimator.covariance(places[at] as number, places[other] as number);
    }
    return {
      kg,
      sharedU: Math.sqrt(Math.max(0, variance)),
      ownU: this.spreadFactor * this.#declaredSpread(crew),
    };
  }

  #declaredSpread({ personDays, days }: CrewDays): number {
    return (this.#norms.betweenDays * this.#norms.rateKg * personDays) / Math.sqrt(days);
  }

  /**
   * A day teaches what its people gave.
   * @param kg what was collected, with what the air took up and without what else went into it; `u` its doubt beside the spread
   * @returns false where it was too far off to teach
   */
  teach(crew: CrewDays, { kg, u }: { readonly kg: number; readonly u: number }): boolean {
    const { kg: expected, sharedU, ownU } = this.expect(crew);
    const other = sharedU * sharedU + u * u;
    const off = kg - expected;
    const isFarOff = off * off > FAR_OFF * FAR_OFF * (other + ownU * ownU);
    if (isFarOff && this.#taught >= FIRST_DAYS) return false;
    this.#estimator.read({
      places: this.#places,
      weights: weightsOf(crew),
      value: kg,
      u: Math.sqrt(u * u + ownU * ownU),
    });
    const declared = this.#declaredSpread(crew);
    this.#spreadSum += Math.min(FAR_OFF * FAR_OFF, (off * off) / (other + declared * declared));
    this.#spreadDays += 1;
    this.#taught += 1;
    return true;
  }

  /** Time goes by. */
  walk(days: number): void {
    const drift = DRIFT_RELATIVE_PER_SQRT_DAY * this.#norms.rateKg;
    this.#estimator.widen(this.#places[0], drift * drift * days);
  }

  /** Others come aboard: what was learned of earlier newcomers is not theirs. */
  greetNewcomers(): void {
    this.#estimator.reset(this.#places[2], 0, this.#norms.rateU * this.#norms.rateU);
  }

  /** So great a share of those who stay are others than before. */
  changeCrew(share: number): void {
    const u = share * this.#norms.rateU;
    this.#estimator.widen(this.#places[0], u * u);
  }
}

function weightsOf({ personDays, newcomerDays, restDays }: CrewDays): readonly number[] {
  return [personDays, -restDays, newcomerDays];
}
