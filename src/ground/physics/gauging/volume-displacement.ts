// How much water is in a tank: a known volume is pressed into its shut-in gas, and the rise of the pressure tells.
import { type Arithmetic, type Doubted, type Propagated, propagateTogether } from '../../maths/index.ts';
import { OPEN_END } from '../outside-range.ts';
import { stayAboveZero, stayWithin } from '../stay-within.ts';
import { type BudgetShare, doubtBudget } from './doubt-budget.ts';
import { NOTHING, stayGasPressure, stayTank, waterBeside } from './tank-gas.ts';

/** Ratio of the heats of air; what a fast compression follows. */
export const ADIABATIC_EXPONENT = 1.4;

type DisplacementReading = 'tankM3' | 'displacedM3' | 'beforePa' | 'afterPa' | 'exponent';
type DisplacementTerm = 'seatingM3' | 'solidsM3' | 'lineM3' | 'vapourPa';
export type DisplacementInput = DisplacementReading | DisplacementTerm;

export type DisplacementTold = Readonly<
  Record<Exclude<DisplacementReading, 'exponent'>, Doubted> & Partial<Record<DisplacementTerm, Doubted>>
> & {
  /** `settled`: the gas has come back to its temperature. Otherwise how it moved is not known, and is in doubt from 1 to 1.4. */
  readonly exponent: 'settled' | 'not settled' | Doubted;
};

export interface DisplacementGauged {
  /** m³ of water before the push. */
  readonly waterM3: Propagated<DisplacementInput>;
  readonly gasM3: Propagated<DisplacementInput>;
  readonly budget: readonly BudgetShare<'tank' | 'pressure' | 'displaced' | 'settling' | 'gas'>[];
}

/** From 1 to 1.4, all alike. */
const NOT_SETTLED: Doubted = {
  value: (1 + ADIABATIC_EXPONENT) / 2,
  u: (ADIABATIC_EXPONENT - 1) / Math.sqrt(12),
  shape: 'rectangular',
};
const SETTLED: Doubted = { value: 1, u: 0 };

/** V = ΔV / (1 − (p₁/p₂)^(1/k)). */
function gasBefore<Value>(on: Arithmetic<Value>, x: Readonly<Record<DisplacementInput, Value>>): Value {
  const ratio = on.over(on.minus(x.beforePa, x.vapourPa), on.minus(x.afterPa, x.vapourPa));
  const shrunk = on.exp(on.over(on.log(ratio), x.exponent));
  return on.over(x.displacedM3, on.shifted(on.scaled(shrunk, -1), 1));
}

/**
 * The water in a tank by displacement: V = ΔV / (1 − (p₁/p₂)^(1/k)), which for a small push is k p ΔV/Δp.
 *
 * k is 1 once the gas has settled and c_p/c_v = 1.4 while it is warm from the push: read too early, the gas looks up to 40 %
 * smaller than it is. Assumes that no gas is added, lost or dissolved.
 * @param told m³ and Pa absolute, each with its u; `exponent` 1 to 1.4
 * @throws OutsideRange for pressures outside 0 to 5 MPa, a pressure that did not rise, a volume of nothing, an exponent outside 1
 *   to 1.4; RangeError for a doubt below 0
 * @source displacement-patent; ideal-gas
 * @example gaugeByDisplacement({ ...told, exponent: 'settled' }).waterM3.value
 */
export function gaugeByDisplacement(told: DisplacementTold): DisplacementGauged {
  const { exponent, ...readings } = told;
  const k = exponent === 'settled' ? SETTLED : exponent === 'not settled' ? NOT_SETTLED : exponent;
  const inputs: Record<DisplacementInput, Doubted> = {
    ...{ seatingM3: NOTHING, solidsM3: NOTHING, lineM3: NOTHING, vapourPa: NOTHING },
    ...readings,
    exponent: k,
  };
  stayDisplacement(inputs);
  const { outputs } = propagateTogether({
    inputs,
    formulas: (on, x) => {
      const gasM3 = gasBefore(on, x);
      return { gasM3, waterM3: waterBeside(on, x, gasM3) };
    },
  });
  const budget = doubtBudget<DisplacementInput, DisplacementGauged['budget'][number]['of']>(outputs.waterM3, {
    ...{ tankM3: 'tank', seatingM3: 'tank', solidsM3: 'tank', lineM3: 'tank' },
    ...{ beforePa: 'pressure', afterPa: 'pressure', displacedM3: 'displaced' },
    ...{ exponent: 'settling', vapourPa: 'gas' },
  });
  return { ...outputs, budget };
}

function stayDisplacement(inputs: Readonly<Record<DisplacementInput, Doubted>>): void {
  const { tankM3, displacedM3, beforePa, afterPa, exponent, vapourPa } = inputs;
  const source = 'ideal-gas';
  stayGasPressure('tank before', beforePa.value);
  stayGasPressure('tank after', afterPa.value);
  stayTank({ tankM3: tankM3.value, vapourPa: vapourPa.value, leastPa: beforePa.value });
  stayAboveZero({ quantity: 'volume pressed in', value: displacedM3.value, unit: 'm³', source });
  stayWithin({
    ...{ quantity: 'rise of the tank pressure', value: afterPa.value - beforePa.value, unit: 'Pa', source },
    ...{ low: 0, lowIsOpen: true, high: OPEN_END },
  });
  stayWithin({
    ...{ quantity: 'exponent of the gas', value: exponent.value, unit: '1', source },
    ...{ low: 1, high: ADIABATIC_EXPONENT },
  });
}
