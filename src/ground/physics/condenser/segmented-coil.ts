// A wet coil cell by cell: the reference among the ways to reckon a condenser, with a part of it dry where it is.
import { rootBetween } from '../../maths/index.ts';
import { humidityRatio, moistEnthalpyJPerKg, temperatureOfEnthalpyC } from '../air/moist-air.ts';
import { stayWithin } from '../stay-within.ts';
import {
  type Coil,
  type CoilOutcome,
  holdCoil,
  moistCapacityJPerKgK,
  saturatedEnthalpyJPerKg,
  WATER_J_PER_KG_K,
} from './coil.ts';

export interface SegmentedOutcome extends CoilOutcome {
  /** Share of the surface on which water forms. */
  readonly wetShare: number;
  readonly cells: number;
}

const SOURCE = 'threlkeld-1970';
const CELLS = 200;
/** The end that is shot at may be missed by so much. */
const CLOSE_K = 1e-9;

/**
 * A coil in counterflow, in cells along the way of the air.
 *
 * In each cell U_i (T_s − T_w) = (U_o / c_pm)(h_a − h_s(T_s)) where W_s(T_s) < W, the surface being wet (Lewis number 1), else
 * U_o (T_a − T_s); m_a dW = −(U_o / c_pm)(W − W_s(T_s)) dA. Both sides are carried on with the midpoint rule from the end where the
 * air comes in; the coolant's temperature there is sought until it comes in at the other end as it does. The small heat that
 * the condensate carries away is counted as if it stayed in the coolant.
 * @param coil see `Coil`; temperatures −20 to 60 °C, the coldest surface too
 * @param options `cells`, a whole number from 10 to 2000; absent: 200
 * @throws OutsideRange where a temperature leaves the range of moist air, for flows and conductances that are not above 0, and
 *   for a coolant that is not colder than the air
 * @source Threlkeld's enthalpy potential, from memory: threlkeld-1970
 * @example segmentedCoil(coil).heatW // 643.3
 */
export function segmentedCoil(coil: Coil, options: { readonly cells?: number } = {}): SegmentedOutcome {
  holdCoil(coil, SOURCE);
  const cells = Math.round(options.cells ?? CELLS);
  stayWithin({ quantity: 'number of cells', value: cells, unit: '', low: 10, high: 2000, source: SOURCE });
  const march = new March(coil, cells);
  const missAt = (coolantOutC: number): number => {
    march.run(coolantOutC);
    return march.coolantC - coil.coolantInC;
  };
  // Coolant that leaves as cold as it came has taken up nothing; it cannot leave warmer than the air came.
  const ends = { low: coil.coolantInC, high: coil.airIn.temperatureC };
  const coolantOutC = rootBetween(missAt, ends, CLOSE_K);
  march.run(coolantOutC);
  const { airFlowKgPerS, airIn, air } = coil;
  const enthalpyIn = moistEnthalpyJPerKg(air, airIn.temperatureC, airIn.humidityRatio);
  return {
    heatW: airFlowKgPerS * (enthalpyIn - march.enthalpyJPerKg),
    condensateKgPerS: airFlowKgPerS * (airIn.humidityRatio - march.ratio),
    airOut: {
      temperatureC: temperatureOfEnthalpyC(air, march.enthalpyJPerKg, march.ratio),
      humidityRatio: march.ratio,
    },
    coolantOutC,
    wetShare: march.wetCells / cells,
    cells,
  };
}

/** One way through the coil with the air; its fields are what it carries, so that no step makes an object. */
class March {
  enthalpyJPerKg = 0;
  ratio = 0;
  coolantC = 0;
  wetCells = 0;
  readonly #coil: Coil;
  readonly #cells: number;
  readonly #coolantWPerK: number;
  #surfaceC = 0;
  // Slopes over the whole surface, of the state that was looked at last.
  #heatW = 0;
  #waterKgPerS = 0;

  constructor(coil: Coil, cells: number) {
    this.#coil = coil;
    this.#cells = cells;
    this.#coolantWPerK = coil.coolantFlowKgPerS * (coil.coolantJPerKgK ?? WATER_J_PER_KG_K);
  }

  run(coolantOutC: number): void {
    const { air, airIn, airFlowKgPerS } = this.#coil;
    this.enthalpyJPerKg = moistEnthalpyJPerKg(air, airIn.temperatureC, airIn.humidityRatio);
    this.ratio = airIn.humidityRatio;
    this.coolantC = coolantOutC;
    this.#surfaceC = coolantOutC;
    this.wetCells = 0;
    const step = 1 / this.#cells;
    for (let cell = 0; cell < this.#cells; cell += 1) {
      this.#slopes(this.enthalpyJPerKg, this.ratio, this.coolantC);
      const half = step / 2;
      const isWet = this.#slopes(
        this.enthalpyJPerKg - (half * this.#heatW) / airFlowKgPerS,
        this.ratio - (half * this.#waterKgPerS) / airFlowKgPerS,
        this.coolantC - (half * this.#heatW) / this.#coolantWPerK,
      );
      this.enthalpyJPerKg -= (step * this.#heatW) / airFlowKgPerS;
      this.ratio -= (step * this.#waterKgPerS) / airFlowKgPerS;
      this.coolantC -= (step * this.#heatW) / this.#coolantWPerK;
      if (isWet) this.wetCells += 1;
    }
  }

  /** Heat and water that the whole surface would take in this state; says whether it is wet. */
  #slopes(enthalpyJPerKg: number, ratio: number, coolantC: number): boolean {
    const { air, outerWPerK, innerWPerK } = this.#coil;
    const airC = temperatureOfEnthalpyC(air, enthalpyJPerKg, ratio);
    const dryC = (outerWPerK * airC + innerWPerK * coolantC) / (outerWPerK + innerWPerK);
    if (humidityRatio(air, dryC, 1) >= ratio) {
      this.#surfaceC = dryC;
      this.#heatW = innerWPerK * (dryC - coolantC);
      this.#waterKgPerS = 0;
      return false;
    }
    const exchange = outerWPerK / moistCapacityJPerKgK(air, ratio);
    this.#wetSurface(exchange, enthalpyJPerKg, coolantC);
    this.#heatW = innerWPerK * (this.#surfaceC - coolantC);
    this.#waterKgPerS = exchange * (ratio - humidityRatio(air, this.#surfaceC, 1));
    return true;
  }

  /** The wet surface by Newton's steps from where the last one was. */
  #wetSurface(exchange: number, enthalpyJPerKg: number, coolantC: number): void {
    const { air, innerWPerK } = this.#coil;
    const span = 1e-3;
    for (let step = 0; step < 30; step += 1) {
      const saturated = saturatedEnthalpyJPerKg(air, this.#surfaceC);
      const slope = (saturatedEnthalpyJPerKg(air, this.#surfaceC + span) - saturated) / span;
      const miss = innerWPerK * (this.#surfaceC - coolantC) - exchange * (enthalpyJPerKg - saturated);
      const change = miss / (innerWPerK + exchange * slope);
      this.#surfaceC -= change;
      if (Math.abs(change) < 1e-10) return;
    }
  }
}
