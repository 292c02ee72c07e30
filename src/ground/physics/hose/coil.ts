// What a coil adds to the friction of a hose: Schmidt's correlations.
import { pow } from '../../maths/index.ts';
import { stayWithin } from '../stay-within.ts';

/** Schmidt's correlations are recommended up to this ratio of bore to coil. */
const TIGHTEST_COIL = 0.14;
/** The turbulent one ends here. */
export const GREATEST_REYNOLDS_IN_COIL = 1.5e5;
/** Here one turbulent form takes over from the other, with a step up of about 1 % to 6 %. */
const SECOND_FORM_FROM = 2.2e4;

/**
 * Where flow in a coil becomes turbulent: Re = 2300 (1 + 8.6 (D/D_coil)^0.45).
 * @param coilRatio bore over the diameter of the coil from the middle of the hose to the middle, 0 to 0.14
 * @returns Reynolds number
 * @throws OutsideRange beyond that range and for NaN
 * @source schmidt-1967 (as a public package cites it)
 * @example coilCriticalReynolds(1 / 7.5) // 10288.2
 */
export function coilCriticalReynolds(coilRatio: number): number {
  mustBeOfCoil(coilRatio);
  return 2300 * (1 + 8.6 * pow(coilRatio, 0.45));
}

/**
 * By how much laminar friction grows in a coil: 1 + 0.14 r^0.97 Re^(1 − 0.644 r^0.312), r the ratio of bore to coil.
 *
 * The source starts at Re 100; below, the addition only fades, and is used on.
 * @param reynolds Reynolds number, above 0
 * @param coilRatio 0 to 0.14
 * @returns a factor of at least 1
 * @source schmidt-1967
 * @example laminarCoilFactor(1000, 0.04) // 2.209
 */
export function laminarCoilFactor(reynolds: number, coilRatio: number): number {
  mustBeOfCoil(coilRatio);
  return 1 + laminarAddition(reynolds, coilRatio);
}

function laminarAddition(reynolds: number, coilRatio: number): number {
  if (coilRatio === 0) return 0;
  return 0.14 * pow(coilRatio, 0.97) * pow(reynolds, laminarPower(coilRatio));
}

function laminarPower(coilRatio: number): number {
  return 1 - 0.644 * pow(coilRatio, 0.312);
}

/** d ln (factor) / d ln Re of the laminar factor. */
export function laminarCoilSlope(reynolds: number, coilRatio: number): number {
  const addition = laminarAddition(reynolds, coilRatio);
  return (laminarPower(coilRatio) * addition) / (1 + addition);
}

/**
 * By how much turbulent friction grows in a coil: 1 + 28 800 r^0.62 / Re below Re 22 000, 1 + 0.0823 (1 + r) r^0.53 Re^¼ from
 * there on, r the ratio of bore to coil.
 * @param reynolds Reynolds number, from the critical one to 150 000
 * @param coilRatio 0 to 0.14
 * @returns a factor of at least 1
 * @throws OutsideRange for a tighter coil and for NaN
 * @source schmidt-1967
 * @example turbulentCoilFactor(2e4, 0.04) // 1.1957
 */
export function turbulentCoilFactor(reynolds: number, coilRatio: number): number {
  mustBeOfCoil(coilRatio);
  return 1 + turbulentAddition(reynolds, coilRatio);
}

function turbulentAddition(reynolds: number, coilRatio: number): number {
  if (coilRatio === 0) return 0;
  if (reynolds < SECOND_FORM_FROM) return (28_800 / reynolds) * pow(coilRatio, 0.62);
  return 0.0823 * (1 + coilRatio) * pow(coilRatio, 0.53) * Math.sqrt(Math.sqrt(reynolds));
}

/** d ln (factor) / d ln Re of the turbulent factor. */
export function turbulentCoilSlope(reynolds: number, coilRatio: number): number {
  const addition = turbulentAddition(reynolds, coilRatio);
  return ((reynolds < SECOND_FORM_FROM ? -1 : 0.25) * addition) / (1 + addition);
}

function mustBeOfCoil(coilRatio: number): void {
  stayWithin({
    quantity: 'bore of the hose over the diameter of its coil',
    value: coilRatio,
    unit: '',
    low: 0,
    high: TIGHTEST_COIL,
    source: 'schmidt-1967',
  });
}
