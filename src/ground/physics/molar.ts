// The mass of a mole of a substance, from its formula, and the charge of a mole of electrons.

/** C/mol, exact since 2019 to the digits that a double holds. @source si-brochure (section 2.3, e times N_A) */
export const FARADAY_C_PER_MOL = 96485.33212;

/** Conventional atomic weights, g/mol. @source iupac-weights */
const ATOMIC_WEIGHTS: ReadonlyMap<string, number> = new Map([
  ['H', 1.008],
  ['B', 10.81],
  ['C', 12.011],
  ['N', 14.007],
  ['O', 15.999],
  ['F', 18.998403],
  ['Na', 22.98977],
  ['Mg', 24.305],
  ['Al', 26.981538],
  ['Si', 28.085],
  ['P', 30.973762],
  ['S', 32.06],
  ['Cl', 35.45],
  ['K', 39.0983],
  ['Ca', 40.078],
  ['Mn', 54.938043],
  ['Fe', 55.845],
  ['Ni', 58.6934],
  ['Cu', 63.546],
  ['Zn', 65.38],
  ['Br', 79.904],
  ['Ag', 107.8682],
  ['I', 126.90447],
]);

/**
 * How many atoms of each element a formula has: `C2H6O` two of carbon, six of hydrogen, one of oxygen.
 *
 * @param formula elements and counts, as in `CaCO3`; no charge and no brackets.
 * @throws RangeError where it is not such a formula or names an element that is not in the table
 * @source iupac-weights
 * @example atomsOf('CaCO3').get('O') // 3
 */
export function atomsOf(formula: string): ReadonlyMap<string, number> {
  const atoms = new Map<string, number>();
  const parts = formula.match(/[A-Z][a-z]?\d*/g) ?? [];
  if (formula === '' || parts.join('') !== formula)
    throw new RangeError(`${formula} is not a formula of elements and counts, such as CaCO3`);
  for (const part of parts) {
    const [, element = '', digits = ''] = /^([A-Z][a-z]?)(\d*)$/.exec(part) ?? [];
    if (!ATOMIC_WEIGHTS.has(element))
      throw new RangeError(`${element} in ${formula} is no element that is known here`);
    atoms.set(element, (atoms.get(element) ?? 0) + wholeOf(digits, formula));
  }
  return atoms;
}

function wholeOf(digits: string, formula: string): number {
  if (digits === '') return 1;
  if (digits.startsWith('0') || digits.length > 3)
    throw new RangeError(`${formula} has a count of ${digits}`);
  return [...digits].reduce((sum, digit) => 10 * sum + '0123456789'.indexOf(digit), 0);
}

/**
 * The mass of a mole: the sum of the weights of its atoms.
 *
 * Its uncertainty is that of the conventional weights, below 0.03 % for everything in water.
 * @param formula elements and counts, as in `CaCO3`
 * @returns kg/mol
 * @throws RangeError as `atomsOf`
 * @source iupac-weights
 * @example molarMassKgPerMol('H2O') // 0.018015
 */
export function molarMassKgPerMol(formula: string): number {
  let grams = 0;
  for (const [element, count] of atomsOf(formula))
    grams += count * (ATOMIC_WEIGHTS.get(element) ?? Number.NaN);
  return grams / 1000;
}
