// Flow and pressure in one line, prepared once: what the pushes ask many times.
import { newtonBetween } from '../../maths/index.ts';
import { OutsideRange } from '../outside-range.ts';
import { GREATEST_REYNOLDS_IN_COIL } from './coil.ts';
import { kvInSeries, lossOfKv } from './coupling.ts';
import { GREATEST_REYNOLDS } from './friction.ts';
import { FrictionLaw } from './friction-law.ts';
import { type FlowingWater, type HoseLine, mustBeSoundLine } from './hose-line.ts';

/** Newton's steps stop here; the friction law itself is known to 1e-15. */
const NARROW = 1e-14;
/** A friction factor of the middle of the chart, to begin with. */
const USUAL_FRICTION = 0.03;

/**
 * Δp = w Re² (f L/D + ΣK), with w Re² = ρ V²/2: the couplings count as loss coefficients on the velocity in the bore.
 *
 * A flow is found by Newton's steps on Re √(f L/D + ΣK), which is nearly a straight line; laminar flow is the solution of
 * a quadratic. As f is never below 64/Re, that solution is also a bound for every other flow.
 */
export class LineFlow {
  readonly friction: FrictionLaw;
  /** f is multiplied by this. */
  readonly lengthOverBore: number;
  readonly minorLoss: number;
  readonly couplingsLoss: number;
  /** Dynamic pressure in Pa at Re 1. */
  readonly unitPa: number;
  readonly #greatestReynolds: number;
  readonly #boreM: number;
  readonly #viscosityPerDensity: number;
  readonly #isCoiled: boolean;
  readonly #at = new Float64Array(2);
  readonly #law = new Float64Array(2);
  /** Set anew for every search, so that a search makes nothing new. */
  readonly #search = { low: 0, high: 0, start: 0, narrow: NARROW };
  #wanted = 0;
  readonly #miss = (reynolds: number, at: Float64Array): void => {
    this.friction.at(reynolds, this.#law);
    const pipe = (this.#law[0] as number) * this.lengthOverBore;
    const root = Math.sqrt(pipe + this.minorLoss + this.couplingsLoss);
    at[0] = reynolds * root - this.#wanted;
    at[1] = root + (pipe * (this.#law[1] as number)) / (2 * root);
  };

  /** @throws OutsideRange for a line or water that no source covers */
  constructor(line: HoseLine, water: FlowingWater) {
    mustBeSoundLine(line, water);
    const { boreM, coilDiameterM } = line;
    this.#isCoiled = coilDiameterM !== undefined;
    this.friction = new FrictionLaw({
      relativeRoughness: line.roughnessM / boreM,
      coilRatio: coilDiameterM === undefined ? 0 : boreM / coilDiameterM,
    });
    this.#greatestReynolds = this.#isCoiled ? GREATEST_REYNOLDS_IN_COIL : GREATEST_REYNOLDS;
    this.lengthOverBore = line.lengthM / boreM;
    this.minorLoss = line.minorLoss;
    this.couplingsLoss = line.couplingsKv.length === 0 ? 0 : lossOfKv(kvInSeries(line.couplingsKv), boreM);
    this.#boreM = boreM;
    this.#viscosityPerDensity = water.viscosityPaS / water.densityKgPerM3;
    const unitVelocity = this.#viscosityPerDensity / boreM;
    this.unitPa = (water.densityKgPerM3 * unitVelocity * unitVelocity) / 2;
  }

  /** Whether anything at all holds the water back. */
  get isOpen(): boolean {
    return this.lengthOverBore === 0 && this.minorLoss + this.couplingsLoss === 0;
  }

  velocityAt(reynolds: number): number {
    return (reynolds * this.#viscosityPerDensity) / this.#boreM;
  }

  flowAt(reynolds: number): number {
    return (this.velocityAt(reynolds) * Math.PI * this.#boreM * this.#boreM) / 4;
  }

  /** The Reynolds number of a flow in m³/s. */
  reynoldsOf(flowM3PerS: number): number {
    return this.#inRange((4 * flowM3PerS) / (Math.PI * this.#boreM * this.#viscosityPerDensity));
  }

  /** The Darcy friction factor. */
  frictionAt(reynolds: number): number {
    this.friction.at(reynolds, this.#law);
    return this.#law[0] as number;
  }

  /** The flow in m³/s that a pressure drives; 0 for none and below. It makes nothing new. */
  drivenBy(drivingPa: number): number {
    return drivingPa > 0 ? this.flowAt(this.reynoldsBy(drivingPa)) : 0;
  }

  /** The Reynolds number of the flow that a pressure above 0 drives. */
  reynoldsBy(drivingPa: number): number {
    const square = drivingPa / this.unitPa;
    const fixed = this.minorLoss + this.couplingsLoss;
    const linear = 64 * this.lengthOverBore;
    const laminar = (2 * square) / (linear + Math.sqrt(linear * linear + 4 * fixed * square));
    const isLaminar = laminar <= this.friction.laminarTo && !this.#isCoiled;
    if (isLaminar || this.lengthOverBore === 0) return this.#inRange(laminar);
    this.#wanted = Math.sqrt(square);
    const search = this.#search;
    search.low = this.#isCoiled ? 0 : this.friction.laminarTo;
    search.high = laminar;
    const guess = this.#wanted / Math.sqrt(USUAL_FRICTION * this.lengthOverBore + fixed);
    search.start = Math.min(Math.max(guess, search.low), laminar);
    return this.#inRange(newtonBetween(this.#miss, search, this.#at));
  }

  #inRange(reynolds: number): number {
    if (!(reynolds <= this.#greatestReynolds))
      throw new OutsideRange({
        quantity: 'Reynolds number of the flow',
        value: reynolds,
        unit: '',
        low: 0,
        high: this.#greatestReynolds,
        source: this.#isCoiled ? 'schmidt-1967' : 'colebrook-1939',
      });
    return reynolds;
  }
}
