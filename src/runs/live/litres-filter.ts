// How much has moved so far and how fast, from a prediction and whatever is read: a Kalman filter whose readings are scalars.

/** How a way of telling litres errs; each one standard deviation. */
export interface MeansDoubt {
  /** New at every reading, L. */
  readonly randomL: number;
  /** The same share at every reading: its calibration. */
  readonly relative: number;
  /** The same litres at every reading: a tare. */
  readonly offsetL: number;
}

export interface Estimate {
  readonly value: number;
  readonly u: number;
}

/** Places in the state: litres so far, and the flow as a part of what was predicted. The errors of the means follow. */
const LITRES = 0;
const PACE = 1;

/**
 * State: V, litres so far; x, flow over predicted flow; for each means the errors c (calibration) and b (tare) that its readings
 * share. Between readings V grows by x times the litres that were predicted for that time, and x wanders a little; a reading is
 * m = V (1 + c) + b + e.
 * @source kalman-1960 in the form of Joseph; the wander of x is common practice, to be corrected by an outpost's own runs
 * @example const filter = new LitresFilter({ value: 1, u: 0.1 }, 0.01); filter.advance({ predictedL: 5, minutes: 4 });
 */
export class LitresFilter {
  readonly #wander: number;
  #mean: number[];
  /** Symmetric; rows as long as the mean. */
  #cov: number[][];
  readonly #means = new Map<string, { readonly share: number | null; readonly tare: number | null }>();

  /**
   * @param pace flow over predicted flow, with one standard deviation
   * @param wanderPerRootMinute by how much x may wander in a minute, one standard deviation, relative
   */
  constructor(pace: Estimate, wanderPerRootMinute: number) {
    mustBeAtLeast0('doubt of the pace', pace.u);
    mustBeAtLeast0('wander', wanderPerRootMinute);
    this.#wander = wanderPerRootMinute;
    this.#mean = [0, pace.value];
    this.#cov = [
      [0, 0],
      [0, pace.u * pace.u],
    ];
  }

  /** @param step litres predicted for the time that passed, and that time */
  advance(step: { readonly predictedL: number; readonly minutes: number }): void {
    const { predictedL, minutes } = step;
    mustBeAtLeast0('litres predicted', predictedL);
    mustBeAtLeast0('minutes', minutes);
    this.#mean[LITRES] = this.#at(LITRES) + predictedL * this.#at(PACE);
    // F P Fᵀ with F the identity but for one place: row and column of V take on that of x.
    const size = this.#mean.length;
    for (let k = 0; k < size; k += 1) this.#add(LITRES, k, predictedL * this.#covAt(PACE, k));
    for (let k = 0; k < size; k += 1) this.#add(k, LITRES, predictedL * this.#covAt(k, PACE));
    const wandered = this.#wander * this.#at(PACE);
    this.#add(PACE, PACE, wandered * wandered * minutes);
  }

  /** A reading of the litres so far. */
  read(means: string, litres: number, doubt: MeansDoubt): void {
    if (!Number.isFinite(litres)) throw new RangeError(`${litres} L is no reading`);
    const places = this.#placesOf(means, doubt);
    const size = this.#mean.length;
    const row = new Array<number>(size).fill(0);
    const share = places.share === null ? 0 : this.#at(places.share);
    row[LITRES] = 1 + share;
    if (places.share !== null) row[places.share] = this.#at(LITRES);
    if (places.tare !== null) row[places.tare] = 1;
    const expected = this.#at(LITRES) * (1 + share) + (places.tare === null ? 0 : this.#at(places.tare));
    this.#update(row, litres - expected, doubt.randomL * doubt.randomL);
  }

  litres(): Estimate {
    return { value: this.#at(LITRES), u: Math.sqrt(this.#covAt(LITRES, LITRES)) };
  }

  pace(): Estimate {
    return { value: this.#at(PACE), u: Math.sqrt(this.#covAt(PACE, PACE)) };
  }

  /** Covariance of litres and pace. */
  together(): number {
    return this.#covAt(LITRES, PACE);
  }

  #at(k: number): number {
    return this.#mean[k] ?? Number.NaN;
  }

  #covAt(i: number, k: number): number {
    return this.#cov[i]?.[k] ?? Number.NaN;
  }

  #add(i: number, k: number, by: number): void {
    const row = this.#cov[i];
    if (row !== undefined) row[k] = (row[k] ?? 0) + by;
  }

  /** An error that readings share has its place from the first of them on. */
  #placesOf(means: string, { randomL, relative, offsetL }: MeansDoubt) {
    for (const each of [randomL, relative, offsetL]) mustBeAtLeast0('doubt of a means', each);
    const known = this.#means.get(means);
    if (known !== undefined) return known;
    const places = {
      share: relative > 0 ? this.#grow(relative) : null,
      tare: offsetL > 0 ? this.#grow(offsetL) : null,
    };
    this.#means.set(means, places);
    return places;
  }

  #grow(u: number): number {
    const place = this.#mean.length;
    this.#mean.push(0);
    for (const row of this.#cov) row.push(0);
    const row = new Array<number>(place + 1).fill(0);
    row[place] = u * u;
    this.#cov.push(row);
    return place;
  }

  #update(row: readonly number[], innovation: number, variance: number): void {
    const size = row.length;
    const spread = this.#cov.map((own) => own.reduce((sum, each, k) => sum + each * (row[k] ?? 0), 0));
    const total = row.reduce((sum, each, k) => sum + each * (spread[k] ?? 0), variance);
    if (!(total > 0)) return;
    const gain = spread.map((each) => each / total);
    this.#mean = this.#mean.map((each, k) => each + (gain[k] ?? 0) * innovation);
    const kept = gain.map((own, i) => row.map((each, k) => (i === k ? 1 : 0) - own * each));
    const half = product(kept, this.#cov);
    const next = product(half, transposed(kept));
    for (let i = 0; i < size; i += 1)
      for (let k = 0; k < size; k += 1)
        (next[i] as number[])[k] = (next[i]?.[k] ?? 0) + (gain[i] ?? 0) * (gain[k] ?? 0) * variance;
    this.#cov = next;
  }
}

function product(a: readonly (readonly number[])[], b: readonly (readonly number[])[]): number[][] {
  return a.map((row) =>
    (b[0] ?? []).map((_, k) => row.reduce((sum, each, i) => sum + each * (b[i]?.[k] ?? 0), 0)),
  );
}

function transposed(a: readonly (readonly number[])[]): number[][] {
  return (a[0] ?? []).map((_, k) => a.map((row) => row[k] ?? 0));
}

function mustBeAtLeast0(what: string, value: number): void {
  if (!(value >= 0 && value < Number.POSITIVE_INFINITY))
    throw new RangeError(`${what}: ${value} is no such figure`);
}
