// Friction over all flows of one hose: laminar, turbulent, and between them a smooth joint that is called transitional.
import { exp, log } from '../../maths/index.ts';
import {
  coilCriticalReynolds,
  laminarCoilFactor,
  laminarCoilSlope,
  turbulentCoilFactor,
  turbulentCoilSlope,
} from './coil.ts';
import { colebrookRoot, colebrookSlope, LAMINAR_TO, mustBeOfChart, TURBULENT_FROM } from './friction.ts';

export type FlowRegime = 'laminar' | 'transitional' | 'turbulent';

/** Schmidt's critical Reynolds number of a straight pipe: a coil moves both ends of the joint in proportion. */
const STRAIGHT_CRITICAL = 2300;

export interface HoseWall {
  /** Height of the roughness over the bore, 0 to 0.05. */
  readonly relativeRoughness: number;
  /** Bore over the diameter of the coil, 0 (straight) to 0.14. */
  readonly coilRatio?: number;
}

/**
 * The friction of one hose at any flow.
 *
 * Between the ends of the joint (2000 and 4000 in a straight hose) ln f is the cubic in ln Re that has value and slope of
 * laminar flow at one end and of turbulent flow at the other. No law is known there: flow may be either, and the figure is
 * a smooth guess with a name of its own.
 */
export class FrictionLaw {
  readonly laminarTo: number;
  readonly turbulentFrom: number;
  /** ε/D / 3.7, as it stands in Colebrook's law. */
  readonly rough: number;
  readonly #relativeRoughness: number;
  readonly #coilRatio: number;
  /** ln f and d ln f / d ln Re at both ends of the joint, once they are wanted. */
  #joint: Float64Array | null = null;

  /** @throws OutsideRange for a wall or a coil beyond the ranges of their sources */
  constructor({ relativeRoughness, coilRatio = 0 }: HoseWall) {
    mustBeOfChart(relativeRoughness, 'colebrook-1939');
    const stretch = coilRatio === 0 ? 1 : coilCriticalReynolds(coilRatio) / STRAIGHT_CRITICAL;
    this.laminarTo = LAMINAR_TO * stretch;
    this.turbulentFrom = TURBULENT_FROM * stretch;
    this.rough = relativeRoughness / 3.7;
    this.#relativeRoughness = relativeRoughness;
    this.#coilRatio = coilRatio;
  }

  regimeAt(reynolds: number): FlowRegime {
    if (reynolds <= this.laminarTo) return 'laminar';
    return reynolds < this.turbulentFrom ? 'transitional' : 'turbulent';
  }

  /** Writes f into `into[0]` and d ln f / d ln Re into `into[1]`; Re above 0. */
  at(reynolds: number, into: Float64Array): void {
    if (reynolds <= this.laminarTo) this.#laminar(reynolds, into);
    else if (reynolds >= this.turbulentFrom) this.#turbulent(reynolds, into);
    else this.#between(reynolds, into);
  }

  #laminar(reynolds: number, into: Float64Array): void {
    into[0] = 64 / reynolds;
    into[1] = -1;
    if (this.#coilRatio === 0) return;
    into[0] *= laminarCoilFactor(reynolds, this.#coilRatio);
    into[1] += laminarCoilSlope(reynolds, this.#coilRatio);
  }

  #turbulent(reynolds: number, into: Float64Array): void {
    const root = colebrookRoot(reynolds, this.#relativeRoughness);
    into[0] = 1 / (root * root);
    into[1] = colebrookSlope(reynolds, this.#relativeRoughness, root);
    if (this.#coilRatio === 0) return;
    into[0] *= turbulentCoilFactor(reynolds, this.#coilRatio);
    into[1] += turbulentCoilSlope(reynolds, this.#coilRatio);
  }

  #between(reynolds: number, into: Float64Array): void {
    this.#joint ??= this.#ends();
    const [low = 0, lowSlope = 0, high = 0, highSlope = 0] = this.#joint;
    const width = log(this.turbulentFrom / this.laminarTo);
    const t = log(reynolds / this.laminarTo) / width;
    const rest = 1 - t;
    const rise = high - low;
    const bendLow = width * lowSlope - rise;
    const bendHigh = rise - width * highSlope;
    into[0] = exp(low + t * rise + t * rest * (rest * bendLow + t * bendHigh));
    into[1] =
      (rise + (1 - 2 * t) * (rest * bendLow + t * bendHigh) + t * rest * (bendHigh - bendLow)) / width;
  }

  #ends(): Float64Array {
    const at = new Float64Array(2);
    this.#laminar(this.laminarTo, at);
    const ends = new Float64Array([log(at[0] as number), at[1] as number, 0, 0]);
    this.#turbulent(this.turbulentFrom, at);
    ends[2] = log(at[0] as number);
    ends[3] = at[1] as number;
    return ends;
  }
}

/**
 * The Darcy friction factor at any flow: 64/Re up to Re 2000, Colebrook from 4000 on, between them a smooth joint.
 * @param reynolds Reynolds number, above 0
 * @param wall `relativeRoughness` 0 to 0.05; `coilRatio`, bore over coil, 0 to 0.14 (a coil moves the joint to higher Re)
 * @returns f, without unit, and which flow it is
 * @throws OutsideRange for a wall or coil beyond its source; RangeError for a Reynolds number that is not above 0
 * @source white-fluid (chapter 6), colebrook-1939, schmidt-1967; the joint is our own
 * @example frictionFactor(3000, { relativeRoughness: 0 }) // { factor: 0.0352…, regime: 'transitional' }
 */
export function frictionFactor(
  reynolds: number,
  wall: HoseWall,
): { readonly factor: number; readonly regime: FlowRegime } {
  if (!(reynolds > 0 && Number.isFinite(reynolds)))
    throw new RangeError(`friction was asked at a Reynolds number of ${reynolds}`);
  const law = new FrictionLaw(wall);
  const into = new Float64Array(2);
  law.at(reynolds, into);
  return { factor: into[0] as number, regime: law.regimeAt(reynolds) };
}
