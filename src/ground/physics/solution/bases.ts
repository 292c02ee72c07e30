// One result in other words: nitrate as nitrogen or as the ion, hardness as calcium carbonate, a compound as its carbon.
import { atomsOf, molarMassKgPerMol } from '../molar.ts';
import { OutsideRange } from '../outside-range.ts';

/**
 * The share of a compound's mass that is one element: n M(element) / M(compound).
 * @param compound a formula such as `NO3`
 * @param element one of its elements
 * @returns of 1
 * @throws RangeError where the formula cannot be read or lacks the element
 * @source iupac-weights
 * @example massShare('NO3', 'N') // 0.2259
 */
export function massShare(compound: string, element: string): number {
  const count = atomsOf(compound).get(element);
  if (count === undefined) throw new RangeError(`${compound} holds no ${element}`);
  return (count * molarMassKgPerMol(element)) / molarMassKgPerMol(compound);
}

/**
 * A concentration told as another compound that holds the same amount of an element: c_to = c_from × w_from / w_to.
 *
 * `as NO3` to `as N` is a factor of 0.2259; confusing the two is a slip of 4.4.
 * @param told `value` in any unit of mass; `from` and `to` formulas; `element` what both hold
 * @returns in the unit of the value
 * @throws RangeError where a formula cannot be read or lacks the element
 * @source iupac-weights
 * @example toldAs({ value: 10, from: 'N', to: 'NO3', element: 'N' }) // 44.27
 */
export function toldAs(told: {
  readonly value: number;
  readonly from: string;
  readonly to: string;
  readonly element: string;
}): number {
  const { value, from, to, element } = told;
  return (value * massShare(from, element)) / massShare(to, element);
}

/**
 * An amount of charge told as calcium carbonate, as hardness and alkalinity are: c × z / M × M(CaCO₃) / 2.
 * @param told `value` in any unit of mass; `ion` a formula; `charge` its charge number without sign, 1 to 4
 * @returns in the unit of the value
 * @throws RangeError where the formula cannot be read or the charge is not such a number
 * @source standard-methods (2340 B; alkalinity as in 2320)
 * @example toldAsCalciumCarbonate({ value: 61.02, ion: 'HCO3', charge: 1 }) // 50.05
 */
export function toldAsCalciumCarbonate(told: {
  readonly value: number;
  readonly ion: string;
  readonly charge: number;
}): number {
  const { value, ion, charge } = told;
  if (![1, 2, 3, 4].includes(charge))
    throw new OutsideRange({
      quantity: `charge number of ${ion}`,
      value: charge,
      unit: 'charges',
      low: 1,
      high: 4,
      source: 'standard-methods',
    });
  return (value * charge * molarMassKgPerMol('CaCO3')) / (2 * molarMassKgPerMol(ion));
}
