// The estimator: values and their full covariance in kilograms, moved by movements and drawn to readings.
import { addTimes, type Innovation, rowsOfRead, type Term } from './joseph.ts';

/** A variance of this share of what it is a difference of is rounding: a gain made of it would be chance. */
const ROUNDING = 1e-13;

/** Values, and the lower triangle of their covariance row after row. */
export interface EstimatorData {
  readonly mean: Float64Array;
  readonly covariance: Float64Array;
}

/**
 * State: one value for each store, calibration error and gauge offset, and the covariance of them all.
 * Movements predict (order n), readings update (order n²); the same calls in the same order give the same bits,
 * whatever the order in which the states were added.
 * Masses are in kilograms, calibration errors are relative; the weights of a reading carry its units.
 * @source kalman-1960 in the scalar-reading form; joseph for the covariance
 */
export class Estimator {
  #size = 0;
  #mean: Float64Array;
  /** The lower triangle, row after row: one side of the diagonal cannot differ from the other. */
  #covariance: Float64Array;

  constructor(room = 64) {
    this.#mean = new Float64Array(room);
    this.#covariance = new Float64Array(triangle(room));
  }

  get size(): number {
    return this.#size;
  }

  /** Adds a state that is independent of the others. Returns its place. */
  add(mean: number, variance: number): number {
    mustBeFinite(mean, variance);
    mustNotBeNegative(variance);
    if (this.#size === this.#mean.length) this.#grow();
    const place = this.#size;
    this.#size += 1;
    this.#mean[place] = mean;
    this.#covariance[at(place, place)] = variance;
    return place;
  }

  mean(place: number): number {
    return this.#isThere(place) ? (this.#mean[place] as number) : Number.NaN;
  }

  variance(place: number): number {
    return this.covariance(place, place);
  }

  covariance(a: number, b: number): number {
    return this.#isThere(a) && this.#isThere(b) ? (this.#covariance[at(a, b)] as number) : Number.NaN;
  }

  /** Forgets what was known of one state: a new calibration, or a store that is newly told. */
  reset(place: number, mean: number, variance: number): void {
    mustBeFinite(mean, variance);
    mustNotBeNegative(variance);
    this.#mustBeThere(place);
    for (let i = 0; i < this.#size; i++) this.#covariance[at(place, i)] = 0;
    this.#mean[place] = mean;
    this.#covariance[at(place, place)] = variance;
  }

  /** Adds doubt to one state, as time does to a calibration. */
  widen(place: number, variance: number): void {
    mustBeFinite(variance);
    mustNotBeNegative(variance);
    this.#mustBeThere(place);
    this.#addTo(place, place, variance);
  }

  /**
   * Time passes over a state that forgets: x ← φ x + noise.
   * @param factor φ, what is left of the state, 0 to 1
   * @param variance of the noise that came in meanwhile
   */
  fade(place: number, factor: number, variance: number): void {
    mustBeFinite(factor, variance);
    mustNotBeNegative(variance);
    this.#mustBeThere(place);
    this.#mean[place] = (this.#mean[place] as number) * factor;
    const own = this.variance(place);
    for (let i = 0; i < this.#size; i++) {
      const index = at(place, i);
      this.#covariance[index] = (this.#covariance[index] as number) * factor;
    }
    this.#covariance[at(place, place)] = own * factor * factor + variance;
  }

  /** One state takes in another: x_place += factor · x_on, and both go on. P ← F P Fᵀ with F = I + factor e_place e_onᵀ. */
  lean(place: number, on: number, factor: number): void {
    mustBeFinite(factor);
    this.#mustBeThere(place);
    this.#mustBeThere(on);
    if (place === on) throw new RangeError('a state cannot lean on itself');
    this.#shift(place, factor * this.mean(on));
    this.#shear(-1, place, { calibration: on, massKg: factor });
  }

  /** Forgets the state that was added last: what is known of the others stays (it is marginalised out). */
  dropLast(): void {
    this.#mustBeThere(this.#size - 1);
    this.#size -= 1;
    const start = triangle(this.#size);
    this.#covariance.fill(0, start, start + this.#size + 1);
    this.#mean[this.#size] = 0;
  }

  /**
   * Water moves: x_from −= m(1 + b), x_to += m(1 + b), with b the calibration error of what measured it.
   * @param flow `from`, `to`, `calibration`: places, −1 for none; `massKg` as read; `uKg` its random doubt (one standard deviation)
   */
  move(flow: { from: number; to: number; calibration: number; massKg: number; uKg: number }): void {
    const { from, to, calibration, massKg, uKg } = flow;
    mustBeFinite(massKg, uKg);
    if (from !== -1) this.#mustBeThere(from);
    if (to !== -1) this.#mustBeThere(to);
    if (calibration !== -1) this.#mustBeThere(calibration);
    if (from === to) return;
    const bias = calibration < 0 ? 0 : this.mean(calibration);
    this.#shift(from, -massKg * (1 + bias));
    this.#shift(to, massKg * (1 + bias));
    if (calibration >= 0) this.#shear(from, to, { calibration, massKg });
    this.#spread(from, to, uKg * uKg);
  }

  /**
   * A reading of a sum of states: value = Σ weight · state + noise of standard deviation `u`.
   * A reading without doubt of what is known without doubt changes nothing.
   * @returns the innovation (reading − expected) and its variance before the update
   */
  read(reading: { places: readonly number[]; weights?: readonly number[]; value: number; u: number }): {
    innovation: number;
    variance: number;
  } {
    const { places, value, u } = reading;
    mustBeFinite(value, u);
    for (const place of places) this.#mustBeThere(place);
    const terms = places.map((place, k) => ({
      place,
      weight: reading.weights?.[k] ?? 1,
      row: this.#row(place),
    }));
    const shared = this.#sharedWith(terms);
    const noise = u * u;
    let expected = 0;
    let known = 0;
    let scale = 0;
    for (const { place, weight } of terms) {
      expected += weight * this.mean(place);
      known += weight * (shared[place] as number);
      scale += weight * weight * this.variance(place);
    }
    const innovation = value - expected;
    const variance = known + noise;
    if (variance > ROUNDING * scale) this.#update(terms, shared, { innovation, variance, noise });
    return { innovation, variance };
  }

  /** Mean and variance of a weighted sum of states. */
  sum(places: readonly number[], weights?: readonly number[]): { mean: number; variance: number } {
    let mean = 0;
    let variance = 0;
    places.forEach((a, i) => {
      const wa = weights?.[i] ?? 1;
      mean += wa * this.mean(a);
      places.forEach((b, j) => {
        variance += wa * (weights?.[j] ?? 1) * this.covariance(a, b);
      });
    });
    // Rounding can leave a hair below zero where the sum is known exactly.
    return { mean, variance: Math.max(0, variance) };
  }

  clone(): Estimator {
    return Estimator.of(this.data());
  }

  /** Values and covariances as they stand, copied. */
  data(): EstimatorData {
    return {
      mean: this.#mean.slice(0, this.#size),
      covariance: this.#covariance.slice(0, triangle(this.#size)),
    };
  }

  static of({ mean, covariance }: EstimatorData): Estimator {
    const made = new Estimator(0);
    made.#size = mean.length;
    made.#mean = mean.slice();
    made.#covariance = covariance.slice();
    return made;
  }

  /** One row of the covariance, whole. */
  #row(place: number): Float64Array {
    const p = this.#covariance;
    const row = new Float64Array(this.#size);
    const start = triangle(place);
    for (let i = 0; i <= place; i++) row[i] = p[start + i] as number;
    for (let i = place + 1, below = start + i; i < this.#size; i++, below += i)
      row[i] = p[below + place] as number;
    return row;
  }

  /** g = P h: what each state has in common with the sum that is read. */
  #sharedWith(terms: readonly Term[]): Float64Array {
    const shared = new Float64Array(this.#size);
    for (const { row, weight } of terms) addTimes(shared, row, weight);
    return shared;
  }

  /**
   * Joseph's form P ← A P Aᵀ + R K Kᵀ, with A = I − K hᵀ and K = g / S.
   *
   * For two states that were not read it comes to P − g gᵀ / S. The rows of those that were read are made with the
   * factors 1 − K h worked out first: where a good scale meets a wide guess, a subtraction would leave mostly rounding.
   */
  #update(terms: readonly Term[], shared: Float64Array, by: Innovation): void {
    const n = this.#size;
    const p = this.#covariance;
    const rows = rowsOfRead(terms, shared, by);
    const pull = by.innovation / by.variance;
    const perRoot = 1 / Math.sqrt(by.variance);
    const scaled = new Float64Array(n);
    for (let i = 0; i < n; i++) {
      const g = shared[i] as number;
      this.#mean[i] = (this.#mean[i] as number) + g * pull;
      scaled[i] = g * perRoot;
    }
    for (let i = 0; i < n; i++) {
      const gi = scaled[i] as number;
      if (gi === 0) continue;
      const start = triangle(i);
      for (let j = 0; j <= i; j++) p[start + j] = (p[start + j] as number) - gi * (scaled[j] as number);
      // Rounding can leave a hair below zero.
      if ((p[start + i] as number) < 0) p[start + i] = 0;
    }
    terms.forEach(({ place }, k) => {
      const row = rows[k] as Float64Array;
      for (let i = 0; i < n; i++) p[at(place, i)] = row[i] as number;
    });
  }

  /**
   * P ← F P Fᵀ for F = I + m (e_to − e_from) e_bᵀ.
   * Nine of ten entries move water, so the places are counted on here instead of being worked out for each.
   */
  #shear(from: number, to: number, by: { calibration: number; massKg: number }): void {
    const b = by.calibration;
    const m = by.massKg;
    const bb = this.variance(b);
    const bFrom = from < 0 ? 0 : this.covariance(b, from);
    const bTo = to < 0 ? 0 : this.covariance(b, to);
    const p = this.#covariance;
    const [startFrom, startTo, startB] = [triangle(from), triangle(to), triangle(b)];
    for (let i = 0, start = 0; i < this.#size; i++, start += i) {
      if (i === from || i === to) continue;
      const moved = m * (p[i <= b ? startB + i : start + b] as number);
      if (from >= 0) {
        const index = i < from ? startFrom + i : start + from;
        p[index] = (p[index] as number) - moved;
      }
      if (to >= 0) {
        const index = i < to ? startTo + i : start + to;
        p[index] = (p[index] as number) + moved;
      }
    }
    this.#addTo(from, from, m * (m * bb - 2 * bFrom));
    this.#addTo(to, to, m * (m * bb + 2 * bTo));
    this.#addTo(from, to, m * (bFrom - bTo - m * bb));
  }

  /** What one end has too much the other has too little. */
  #spread(from: number, to: number, variance: number): void {
    this.#addTo(from, from, variance);
    this.#addTo(to, to, variance);
    this.#addTo(from, to, -variance);
  }

  #shift(place: number, by: number): void {
    if (place >= 0) this.#mean[place] = (this.#mean[place] as number) + by;
  }

  #addTo(a: number, b: number, value: number): void {
    if (a < 0 || b < 0) return;
    const index = at(a, b);
    this.#covariance[index] = (this.#covariance[index] as number) + value;
  }

  #isThere(place: number): boolean {
    return place >= 0 && place < this.#size;
  }

  #mustBeThere(place: number): void {
    if (!this.#isThere(place)) throw new RangeError(`the estimator has no state ${place}`);
  }

  #grow(): void {
    const room = Math.max(16, 2 * this.#mean.length);
    const mean = new Float64Array(room);
    mean.set(this.#mean);
    const covariance = new Float64Array(triangle(room));
    covariance.set(this.#covariance);
    this.#mean = mean;
    this.#covariance = covariance;
  }
}

/** Length of a triangle of so many rows, and so the place at which the next row starts. */
function triangle(rows: number): number {
  return (rows * (rows + 1)) >> 1;
}

/** Where the covariance of two states is kept. */
function at(a: number, b: number): number {
  return a >= b ? triangle(a) + b : triangle(b) + a;
}

function mustBeFinite(...values: number[]): void {
  for (const value of values)
    if (!Number.isFinite(value)) throw new RangeError(`the estimator was given ${value}`);
}

function mustNotBeNegative(variance: number): void {
  if (variance < 0) throw new RangeError(`a variance of ${variance} is none`);
}
