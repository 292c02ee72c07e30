// How much water is in a tank that is shut off from its gas: a known amount is let out, and the fall of the pressure tells.
import { type Arithmetic, type Doubted, type Propagated, propagateTogether } from '../../maths/index.ts';
import { OPEN_END } from '../outside-range.ts';
import { stayAboveZero, stayWithin } from '../stay-within.ts';
import { type BudgetShare, doubtBudget } from './doubt-budget.ts';
import {
  stayGas,
  stayTank,
  TANK_GROUPS,
  type TankGroup,
  type TankReading,
  type TankTerm,
  tankGas,
  tankTerms,
  waterBeside,
} from './tank-gas.ts';

export type BlowDownInput = TankReading | TankTerm | 'tankM3' | 'drawnM3';

export type BlowDownTold = Readonly<
  Record<TankReading | 'tankM3' | 'drawnM3', Doubted> & Partial<Record<TankTerm, Doubted>>
>;

export interface BlowDownGauged {
  /** m³ of water before the draw. */
  readonly waterBeforeM3: Propagated<BlowDownInput>;
  /** m³ of water after it: what a keeper wants to know. */
  readonly waterM3: Propagated<BlowDownInput>;
  /** m³ of gas before the draw. */
  readonly gasM3: Propagated<BlowDownInput>;
  /** What makes the doubt of the water after it, the largest first. */
  readonly budget: readonly BudgetShare<TankGroup | 'drawn'>[];
}

/** V₁ = ΔV (p₂/T₂) / (p₁/T₁ − p₂/T₂), of dry gas. */
function gasBefore<Value>(on: Arithmetic<Value>, x: Readonly<Record<BlowDownInput, Value>>): Value {
  const { beforePa, afterPa, beforeK, afterK } = tankGas(on, x);
  const before = on.over(on.minus(beforePa, x.vapourPa), beforeK);
  const after = on.over(on.minus(afterPa, x.vapourPa), afterK);
  return on.over(on.times(x.drawnM3, after), on.minus(before, after));
}

/**
 * The water in a tank whose gas is shut in, from two pressures and what was drawn between them.
 *
 * V₁ = ΔV ((p₂ − p_v)/T₂) / ((p₁ − p_v)/T₁ − (p₂ − p_v)/T₂); water = tank + seating − solids − (V₁ − lines), less what was drawn.
 * Assumes that no gas is added, lost or dissolved between the readings, and that it has come back to its temperature.
 * @param told m³, Pa absolute and K, each with its u; `drawnM3` by strokes or by weighing
 * @throws OutsideRange for pressures outside 0 to 5 MPa, temperatures outside 200 to 400 K, a draw of nothing, a pressure that
 *   did not fall; RangeError for a doubt below 0
 * @source ideal-gas; gum, 5.1.2
 * @example gaugeByBlowDown(told).waterM3.value
 */
export function gaugeByBlowDown(told: BlowDownTold): BlowDownGauged {
  const inputs: Record<BlowDownInput, Doubted> = { ...told, ...tankTerms(told) };
  stayBlowDown(told, inputs.vapourPa.value);
  const { outputs } = propagateTogether({
    inputs,
    formulas: (on, x) => {
      const gasM3 = gasBefore(on, x);
      const waterBeforeM3 = waterBeside(on, x, gasM3);
      return { gasM3, waterBeforeM3, waterM3: on.minus(waterBeforeM3, x.drawnM3) };
    },
  });
  const budget = doubtBudget<BlowDownInput, TankGroup | 'drawn'>(outputs.waterM3, {
    ...TANK_GROUPS,
    drawnM3: 'drawn',
  });
  return { ...outputs, budget };
}

function stayBlowDown(told: BlowDownTold, vapourPa: number): void {
  const { tankBeforePa, tankAfterPa, tankBeforeK, tankAfterK, tankM3, drawnM3 } = told;
  const source = 'ideal-gas';
  stayGas('tank before', tankBeforePa.value, tankBeforeK.value);
  stayGas('tank after', tankAfterPa.value, tankAfterK.value);
  stayTank({ tankM3: tankM3.value, vapourPa, leastPa: Math.min(tankBeforePa.value, tankAfterPa.value) });
  stayAboveZero({ quantity: 'amount drawn', value: drawnM3.value, unit: 'm³', source });
  const fall =
    (tankBeforePa.value - vapourPa) / tankBeforeK.value - (tankAfterPa.value - vapourPa) / tankAfterK.value;
  stayWithin({
    ...{ quantity: 'fall of p/T in the tank', value: fall, unit: 'Pa/K', source },
    ...{ low: 0, lowIsOpen: true, high: OPEN_END },
  });
}
