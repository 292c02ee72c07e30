// Friction in a straight round pipe: laminar flow, and three forms of the law of Colebrook for turbulent flow.
import { log10, pow } from '../../maths/index.ts';
import { stayWithin } from '../stay-within.ts';

/** Below this flow is laminar, above the next turbulent. */
export const LAMINAR_TO = 2000;
export const TURBULENT_FROM = 4000;
/** The chart of Moody ends here. */
export const GREATEST_REYNOLDS = 1e8;
const ROUGHEST = 0.05;

const PER_LN_TEN = Math.LOG10E;
/** Newton's steps double the digits; after Serghides' five two are enough, four are never wanted. */
const MOST_STEPS = 4;
const NARROW = 4e-16;

/**
 * The Darcy friction factor of laminar flow: f = 64 / Re.
 * @param reynolds Reynolds number ρ V D / μ, above 0 to 2000
 * @returns f, without unit
 * @throws OutsideRange beyond that range and for NaN
 * @source white-fluid (section 6.4)
 * @example laminarFriction(128) // 0.5
 */
export function laminarFriction(reynolds: number): number {
  stayWithin({
    quantity: 'Reynolds number of laminar flow',
    value: reynolds,
    unit: '',
    low: 0,
    lowIsOpen: true,
    high: LAMINAR_TO,
    source: 'white-fluid',
  });
  return 64 / reynolds;
}

/**
 * The Darcy friction factor of turbulent flow by Colebrook: 1/√f = −2 log10(ε/D / 3.7 + 2.51 / (Re √f)).
 *
 * Serghides' explicit form is the start; Newton's steps on 1/√f take it to the last digits.
 * @param reynolds Reynolds number, 4000 to 1e8
 * @param relativeRoughness height of the wall's roughness over the bore, 0 to 0.05
 * @returns f, without unit
 * @throws OutsideRange beyond those ranges and for NaN
 * @source colebrook-1939 (equation as in white-fluid, 6.48); range: chart of Moody
 * @example colebrookFriction(1e5, 1e-4) // 0.01851386607747…
 */
export function colebrookFriction(reynolds: number, relativeRoughness: number): number {
  mustBeTurbulent(reynolds, relativeRoughness, 'colebrook-1939');
  const root = colebrookRoot(reynolds, relativeRoughness);
  return 1 / (root * root);
}

/**
 * Serghides' explicit form of Colebrook's law, within 0.004 % of it over the whole chart.
 *
 * A, B and C are three rounds of −2 log10(ε/D / 3.7 + 2.51 x / Re), the first with 12 / Re; f = (A − (B − A)² / (C − 2B + A))⁻².
 * @param reynolds Reynolds number, 4000 to 1e8
 * @param relativeRoughness 0 to 0.05
 * @returns f, without unit
 * @throws OutsideRange beyond those ranges and for NaN
 * @source serghides-1984 (three-step form)
 * @example serghidesFriction(1e5, 1e-4) // 0.0185135898318…
 */
export function serghidesFriction(reynolds: number, relativeRoughness: number): number {
  mustBeTurbulent(reynolds, relativeRoughness, 'serghides-1984');
  const root = serghidesRoot(reynolds, relativeRoughness);
  return 1 / (root * root);
}

/**
 * Haaland's explicit form, within 1.5 % of Colebrook's law: 1/√f = −1.8 log10((ε/D / 3.7)^1.11 + 6.9 / Re).
 * @param reynolds Reynolds number, 4000 to 1e8
 * @param relativeRoughness 0 to 0.05
 * @returns f, without unit
 * @throws OutsideRange beyond those ranges and for NaN
 * @source haaland-1983
 * @example haalandFriction(1e5, 1e-4) // 0.01826505301479…
 */
export function haalandFriction(reynolds: number, relativeRoughness: number): number {
  mustBeTurbulent(reynolds, relativeRoughness, 'haaland-1983');
  const rough = relativeRoughness === 0 ? 0 : pow(relativeRoughness / 3.7, 1.11);
  const root = -1.8 * log10(rough + 6.9 / reynolds);
  return 1 / (root * root);
}

/** 1/√f by Serghides, without a look at the range. */
function serghidesRoot(reynolds: number, relativeRoughness: number): number {
  const rough = relativeRoughness / 3.7;
  const a = -2 * log10(rough + 12 / reynolds);
  const b = -2 * log10(rough + (2.51 * a) / reynolds);
  const c = -2 * log10(rough + (2.51 * b) / reynolds);
  const bend = c - 2 * b + a;
  return bend === 0 ? c : a - ((b - a) * (b - a)) / bend;
}

/** x = 1/√f by Colebrook, without a look at the range. */
export function colebrookRoot(reynolds: number, relativeRoughness: number): number {
  const rough = relativeRoughness / 3.7;
  const smooth = 2.51 / reynolds;
  let x = serghidesRoot(reynolds, relativeRoughness);
  for (let step = 0; step < MOST_STEPS; step++) {
    const inside = rough + smooth * x;
    const move = (x + 2 * log10(inside)) / (1 + (2 * PER_LN_TEN * smooth) / inside);
    x -= move;
    if (Math.abs(move) <= NARROW * x) break;
  }
  return x;
}

/** d ln f / d ln Re of Colebrook's law at its root x: −2c / (1 + c), with c = 2/ln 10 × b / (a + b x). */
export function colebrookSlope(reynolds: number, relativeRoughness: number, root: number): number {
  const smooth = 2.51 / reynolds;
  const c = (2 * PER_LN_TEN * smooth) / (relativeRoughness / 3.7 + smooth * root);
  return (-2 * c) / (1 + c);
}

function mustBeTurbulent(reynolds: number, relativeRoughness: number, source: string): void {
  stayWithin({
    quantity: 'Reynolds number of turbulent flow',
    value: reynolds,
    unit: '',
    low: TURBULENT_FROM,
    high: GREATEST_REYNOLDS,
    source,
  });
  mustBeOfChart(relativeRoughness, source);
}

/** Refuses a wall that is rougher than any on Moody's chart. */
export function mustBeOfChart(relativeRoughness: number, source: string): void {
  stayWithin({
    quantity: 'roughness of the wall over the bore',
    value: relativeRoughness,
    unit: '',
    low: 0,
    high: ROUGHEST,
    source,
  });
}
