// Flow and pressure in one line, prepared once: what the pushes ask many times.
import { log10, newtonBetween, type ValueAndSlope } from '../../maths/index.ts';
import { OutsideRange } from '../outside-range.ts';
import { GREATEST_REYNOLDS_IN_COIL } from './coil.ts';
import { kvInSeries, lossOfKv } from './coupling.ts';
import { GREATEST_REYNOLDS } from './friction.ts';
import { FrictionLaw } from './friction-law.ts';
import { type FlowingWater, type HoseLine, mustBeSoundLine } from './hose-line.ts';

/** A step of Newton's that is as small as this is the last: the next would be its square. */
const NARROW = 1e-8;
/** A friction factor of the middle of the chart, to begin with. */
const USUAL_FRICTION = 0.03;
/** Turbulent flow is found in three or four steps; what takes more is not turbulent. */
const MOST_STEPS = 8;
/** Re √f of flow that is surely not turbulent. */
const STILL = 100;
/** Room for every search, one at a time, so that a search makes nothing new. */
const search = { low: 0, high: 0, start: 0, narrow: NARROW };
const found = new Float64Array(2);
const law = new Float64Array(2);

/**
 * Δp = w Re² (f L/D + ΣK), with w Re² = ρ V²/2: the couplings count as loss coefficients on the velocity in the bore.
 *
 * A laminar flow is the solution of a quadratic; as f is never below 64/Re, that is also a bound for every other flow. For a
 * turbulent flow the unknown is Re √f, with which Colebrook's law is explicit: Newton's steps on Re √(f L/D + ΣK), nearly a
 * straight line. Transitional flow, and flow in a coil, is found by Newton's steps on Re that are held in a bracket.
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
  #wanted = 0;
  #factor = Number.NaN;
  /** Made at the first search in a bracket, and kept for the next. */
  #miss: ValueAndSlope | null = null;

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
    this.friction.at(reynolds, law);
    return law[0] as number;
  }

  /** The flow in m³/s that a pressure drives; 0 for none and below. It makes nothing new. */
  drivenBy(drivingPa: number): number {
    return drivingPa > 0 ? this.flowAt(this.reynoldsBy(drivingPa)) : 0;
  }

  /** The Reynolds number of the flow that a pressure above 0 drives. Its friction factor is then at `frictionFound`. */
  reynoldsBy(drivingPa: number): number {
    const square = drivingPa / this.unitPa;
    const fixed = this.minorLoss + this.couplingsLoss;
    const linear = 64 * this.lengthOverBore;
    const laminar = (2 * square) / (linear + Math.sqrt(linear * linear + 4 * fixed * square));
    if (this.lengthOverBore === 0) return this.#found(laminar, Number.NaN);
    if (laminar <= this.friction.laminarTo && !this.#isCoiled) return this.#found(laminar, 64 / laminar);
    this.#wanted = Math.sqrt(square);
    if (!this.#isCoiled) {
      const turbulent = this.#turbulent(fixed);
      if (turbulent >= this.friction.turbulentFrom) return this.#inRange(turbulent);
    }
    return this.#found(this.#between(fixed, laminar), Number.NaN);
  }

  /** The Darcy friction factor of the flow that was found last. */
  get frictionFound(): number {
    return this.#factor;
  }

  #found(reynolds: number, factor: number): number {
    this.#factor = Number.isNaN(factor) ? this.frictionAt(reynolds) : factor;
    return this.#inRange(reynolds);
  }

  /** u = Re √f of √(P/w) = u √(L/D + ΣK x²), with x = 1/√f = −2 log10(ε/D / 3.7 + 2.51 / u). Returns Re = u x, or 0 if it is not turbulent. */
  #turbulent(fixed: number): number {
    const { rough } = this.friction;
    const pipe = this.lengthOverBore;
    let u = this.#wanted / Math.sqrt(pipe + fixed / USUAL_FRICTION);
    for (let step = 0; step < MOST_STEPS && u > STILL; step++) {
      const inside = rough + 2.51 / u;
      const x = -2 * log10(inside);
      const slope = (2 * Math.LOG10E * 2.51) / (u * u * inside);
      const root = Math.sqrt(pipe + fixed * x * x);
      const move = (u * root - this.#wanted) / (root + (u * fixed * x * slope) / root);
      u -= move;
      if (Math.abs(move) > NARROW * u) continue;
      const last = x - slope * move;
      this.#factor = 1 / (last * last);
      return u * last;
    }
    return 0;
  }

  #between(fixed: number, laminar: number): number {
    search.low = this.#isCoiled ? 0 : this.friction.laminarTo;
    search.high = laminar;
    const guess = this.#wanted / Math.sqrt(USUAL_FRICTION * this.lengthOverBore + fixed);
    search.start = Math.min(Math.max(guess, search.low), laminar);
    this.#miss ??= (reynolds, at) => this.#missAt(reynolds, at);
    return newtonBetween(this.#miss, search, found);
  }

  /** Re √(f L/D + ΣK) less what is wanted, and its slope. */
  #missAt(reynolds: number, at: Float64Array): void {
    this.friction.at(reynolds, law);
    const pipe = (law[0] as number) * this.lengthOverBore;
    const root = Math.sqrt(pipe + this.minorLoss + this.couplingsLoss);
    at[0] = reynolds * root - this.#wanted;
    at[1] = root + (pipe * (law[1] as number)) / (2 * root);
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
