// The estimator: values and their full covariance in kilograms, moved by movements and drawn to readings.

/**
 * State: one value for each store, calibration error and gauge offset, and the covariance of them all.
 * Movements predict (order n), readings update (order n²); the same calls in the same order give the same bits.
 * @source Kalman 1960 in the scalar-reading form; Joseph's stabilised covariance, both from memory
 */
export class Estimator {
  #size = 0;
  #room: number;
  #mean: Float64Array;
  #covariance: Float64Array;
  readonly #gain: { row: Float64Array };

  constructor(room = 64) {
    this.#room = room;
    this.#mean = new Float64Array(room);
    this.#covariance = new Float64Array(room * room);
    this.#gain = { row: new Float64Array(room) };
  }

  get size(): number {
    return this.#size;
  }

  /** Adds a state that is independent of the others. Returns its place. */
  add(mean: number, variance: number): number {
    mustBeFinite(mean, variance);
    mustNotBeNegative(variance);
    if (this.#size === this.#room) this.#grow();
    const place = this.#size;
    this.#size += 1;
    this.#mean[place] = mean;
    this.#covariance[place * this.#room + place] = variance;
    return place;
  }

  mean(place: number): number {
    return this.#mean[place] ?? Number.NaN;
  }

  variance(place: number): number {
    return this.#covariance[place * this.#room + place] ?? Number.NaN;
  }

  covariance(a: number, b: number): number {
    return this.#covariance[a * this.#room + b] ?? Number.NaN;
  }

  /** Forgets what was known of one state: a new calibration, or a store that is newly told. */
  reset(place: number, mean: number, variance: number): void {
    mustBeFinite(mean, variance);
    mustNotBeNegative(variance);
    this.#mustBeThere(place);
    for (let i = 0; i < this.#size; i++) {
      this.#covariance[place * this.#room + i] = 0;
      this.#covariance[i * this.#room + place] = 0;
    }
    this.#mean[place] = mean;
    this.#covariance[place * this.#room + place] = variance;
  }

  /** Adds doubt to one state, as time does to a calibration. */
  widen(place: number, variance: number): void {
    mustBeFinite(variance);
    mustNotBeNegative(variance);
    this.#mustBeThere(place);
    const at = place * this.#room + place;
    this.#covariance[at] = (this.#covariance[at] ?? 0) + variance;
  }

  /**
   * Water moves: x_from −= m(1 + b), x_to += m(1 + b), with b the calibration error of what measured it.
   * @param flow `from`, `to`, `calibration`: places, −1 for none; `massKg` as read; `uKg` its random doubt (one standard deviation)
   */
  move(flow: { from: number; to: number; calibration: number; massKg: number; uKg: number }): void {
    const { from, to, calibration, massKg, uKg } = flow;
    mustBeFinite(massKg, uKg);
    for (const place of [from, to, calibration]) if (place !== -1) this.#mustBeThere(place);
    if (from === to) return;
    const bias = calibration < 0 ? 0 : this.mean(calibration);
    this.#shift(from, -massKg * (1 + bias));
    this.#shift(to, massKg * (1 + bias));
    if (calibration >= 0) this.#shear(from, to, { calibration, massKg });
    this.#spread(from, to, uKg * uKg);
  }

  /**
   * A reading of a sum of states: value = Σ weight · state + noise of standard deviation `u`.
   * @returns the innovation (reading − expected) and its variance before the update
   */
  read(reading: { places: readonly number[]; weights?: readonly number[]; value: number; u: number }): {
    innovation: number;
    variance: number;
  } {
    mustBeFinite(reading.value, reading.u);
    for (const place of reading.places) this.#mustBeThere(place);
    const n = this.#size;
    const row = this.#gain.row;
    row.fill(0, 0, n);
    let expected = 0;
    let variance = reading.u * reading.u;
    reading.places.forEach((place, k) => {
      const weight = reading.weights?.[k] ?? 1;
      expected += weight * this.mean(place);
      for (let i = 0; i < n; i++) row[i] = (row[i] ?? 0) + weight * this.covariance(i, place);
    });
    reading.places.forEach((place, k) => {
      variance += (reading.weights?.[k] ?? 1) * (row[place] ?? 0);
    });
    const innovation = reading.value - expected;
    if (variance > 0) this.#update(row, innovation, variance);
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
    const copy = new Estimator(this.#room);
    copy.#size = this.#size;
    copy.#mean = this.#mean.slice();
    copy.#covariance = this.#covariance.slice();
    return copy;
  }

  /** Joseph's form written out: P − K gᵀ − g Kᵀ + S K Kᵀ keeps P symmetric, and errors of K count only squared. */
  #update(g: Float64Array, innovation: number, variance: number): void {
    const n = this.#size;
    const room = this.#room;
    const p = this.#covariance;
    for (let i = 0; i < n; i++) {
      const gi = g[i] ?? 0;
      if (gi === 0) continue;
      const ki = gi / variance;
      this.#mean[i] = (this.#mean[i] ?? 0) + ki * innovation;
      for (let j = 0; j <= i; j++) {
        const gj = g[j] ?? 0;
        if (gj === 0) continue;
        const kj = gj / variance;
        const value = (p[i * room + j] ?? 0) - ki * gj - gi * kj + variance * ki * kj;
        p[i * room + j] = value;
        p[j * room + i] = value;
      }
    }
  }

  /** P ← F P Fᵀ for F = I + m (e_to − e_from) e_bᵀ: rows and columns together, so that P stays symmetric to the bit. */
  #shear(from: number, to: number, by: { calibration: number; massKg: number }): void {
    const b = by.calibration;
    const m = by.massKg;
    const bb = this.variance(b);
    const bFrom = from < 0 ? 0 : this.covariance(b, from);
    const bTo = to < 0 ? 0 : this.covariance(b, to);
    for (let i = 0; i < this.#size; i++) {
      if (i === from || i === to) continue;
      const moved = m * this.covariance(b, i);
      this.#addBoth(from, i, -moved);
      this.#addBoth(to, i, moved);
    }
    this.#addTo(from, from, m * (m * bb - 2 * bFrom));
    this.#addTo(to, to, m * (m * bb + 2 * bTo));
    this.#addBoth(from, to, m * (bFrom - bTo - m * bb));
  }

  /** What one end has too much the other has too little. */
  #spread(from: number, to: number, variance: number): void {
    this.#addTo(from, from, variance);
    this.#addTo(to, to, variance);
    this.#addBoth(from, to, -variance);
  }

  #shift(place: number, by: number): void {
    if (place >= 0) this.#mean[place] = (this.#mean[place] ?? 0) + by;
  }

  /** Adds to a pair of states, above and below the diagonal. */
  #addBoth(a: number, b: number, value: number): void {
    this.#addTo(a, b, value);
    this.#addTo(b, a, value);
  }

  #addTo(a: number, b: number, value: number): void {
    if (a < 0 || b < 0) return;
    const at = a * this.#room + b;
    this.#covariance[at] = (this.#covariance[at] ?? 0) + value;
  }

  #mustBeThere(place: number): void {
    if (!(place >= 0 && place < this.#size)) throw new RangeError(`the estimator has no state ${place}`);
  }

  #grow(): void {
    const room = this.#room * 2;
    const covariance = new Float64Array(room * room);
    for (let i = 0; i < this.#size; i++) {
      covariance.set(this.#covariance.subarray(i * this.#room, i * this.#room + this.#size), i * room);
    }
    const mean = new Float64Array(room);
    mean.set(this.#mean.subarray(0, this.#size));
    this.#room = room;
    this.#mean = mean;
    this.#covariance = covariance;
    this.#gain.row = new Float64Array(room);
  }
}

function mustBeFinite(...values: number[]): void {
  for (const value of values) if (!Number.isFinite(value)) throw new RangeError(`the estimator was given ${value}`);
}

function mustNotBeNegative(variance: number): void {
  if (variance < 0) throw new RangeError(`a variance of ${variance} is none`);
}
