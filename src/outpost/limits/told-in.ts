// A figure told in the unit and on the basis of a limit, or nothing where the two do not measure the same.
import { molarMassKgPerMol, toldAs } from '../../ground/physics/index.ts';
import {
  BASES_OF_LIMITS,
  type BasisOfLimit,
  fitTogether,
  UNITS_OF_LIMITS,
  type UnitOfLimit,
} from './limit-units.ts';

/** As words came in: nobody has checked yet that there is such a unit or basis. */
export interface Measure {
  readonly unit: string;
  readonly basis: string;
}

const MG_PER_KG = 1e6;
const MOL_PER_MMOL = 1e-3;

/**
 * Undefined where unit or basis is unknown or the two do not measure the same.
 *
 * A count in a small volume is not told for a larger one: nought in 1 mL says nothing of the other 99.
 * @param told a figure in any unit of the table
 * @param as the unit and basis wanted
 * @returns rounded to twelve digits where a factor was used, so that 57.3 µg/L is 0.0573 mg/L to the last bit
 * @example toldIn({ value: 10, unit: 'mg/L', basis: 'as N' }, { unit: 'mg/L', basis: 'as NO3' }) // 44.266...
 */
export function toldIn(told: Measure & { readonly value: number }, as: Measure): number | undefined {
  if (!fitTogether(as.unit, as.basis)) return undefined;
  if (told.unit === as.unit && told.basis === as.basis) return told.value;
  if (!fitTogether(told.unit, told.basis)) return undefined;
  const from = UNITS_OF_LIMITS.get(told.unit) as UnitOfLimit;
  const to = UNITS_OF_LIMITS.get(as.unit) as UnitOfLimit;
  if (told.basis === as.basis && from.kind === to.kind) return scaled(told.value, from, to);
  return byFormula(told.value, { unit: from, basis: told.basis }, { unit: to, basis: as.basis });
}

function scaled(value: number, from: UnitOfLimit, to: UnitOfLimit): number | undefined {
  if (from.kind === 'count' && from.per < to.per) return undefined;
  return inTwelveDigits((value * (from.times * to.per)) / (from.per * to.times));
}

interface Side {
  readonly unit: UnitOfLimit;
  readonly basis: string;
}

function byFormula(value: number, from: Side, to: Side): number | undefined {
  const [source, target]: (BasisOfLimit['told'] | undefined)[] = [from, to].map(
    ({ basis }) => BASES_OF_LIMITS.get(basis)?.told,
  );
  if (source === undefined || target === undefined || source.element !== target.element) return undefined;
  const mg = (value * from.unit.times * mgOfOne(from.unit, source)) / from.unit.per;
  const there =
    source.formula === target.formula
      ? mg
      : toldAs({ value: mg, from: source.formula, to: target.formula, element: source.element });
  return inTwelveDigits((there * to.unit.per) / (to.unit.times * mgOfOne(to.unit, target)));
}

/** Milligrams in one mg, mmol or mEq. */
function mgOfOne({ kind }: UnitOfLimit, { formula, charge }: { formula: string; charge: number }): number {
  if (kind === 'mass') return 1;
  const mgPerMmol = molarMassKgPerMol(formula) * MG_PER_KG * MOL_PER_MMOL;
  return kind === 'amount' ? mgPerMmol : mgPerMmol / charge;
}

/** Powers of ten up to 1e22 are exact, so that the last division gives the double nearest to the decimal. */
function inTwelveDigits(value: number): number {
  let power = 1;
  while (Math.abs(value) * power < 1e11 && power < 1e22) power *= 10;
  return Math.round(value * power) / power;
}
