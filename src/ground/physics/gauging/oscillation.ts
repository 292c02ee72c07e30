// Mass by how long a swing on a spring takes, where nothing weighs: the equations, on a fixed and on a floating frame.
import { type Arithmetic, NUMBERS } from '../../maths/index.ts';
import { OPEN_END } from '../outside-range.ts';
import { stayAboveZero, stayWithin } from '../stay-within.ts';

const FOUR_PI_SQUARED = 4 * Math.PI * Math.PI;
const SOURCE = 'spring-oscillation';

/** m = k T² / 4π². */
export function swinging<Value>(on: Arithmetic<Value>, stiffness: Value, period: Value): Value {
  return on.scaled(on.times(stiffness, on.times(period, period)), 1 / FOUR_PI_SQUARED);
}

/** m = μ M / (M − μ). */
export function besideFrame<Value>(on: Arithmetic<Value>, reduced: Value, frame: Value): Value {
  return on.over(on.times(reduced, frame), on.minus(frame, reduced));
}

/**
 * The mass that swings on a spring: m = k T² / 4π². On a floating frame it is the reduced mass, see `massBesideFrameKg`.
 * Assumes a spring that is light, straight in its force and hardly damped: small, free swings.
 * @param stiffnessNPerM N/m, above 0
 * @param periodS s of one full swing, above 0
 * @returns kg, chair or tray included
 * @throws OutsideRange outside those ranges and for NaN
 * @source spring-oscillation
 * @example swingingMassKg(605.6, 1.28195) // 25.21
 */
export function swingingMassKg(stiffnessNPerM: number, periodS: number): number {
  stayAboveZero({ quantity: 'stiffness of the spring', value: stiffnessNPerM, unit: 'N/m', source: SOURCE });
  stayAboveZero({ quantity: 'period of the swing', value: periodS, unit: 's', source: SOURCE });
  return swinging(NUMBERS, stiffnessNPerM, periodS);
}

/**
 * The stiffness of a spring from a known mass: k = 4π² m / T². The inverse of `swingingMassKg`.
 * @param massKg kg, above 0, chair or tray included
 * @param periodS s, above 0
 * @returns N/m
 * @throws OutsideRange outside those ranges and for NaN
 * @source spring-oscillation
 * @example springStiffnessNPerM(34.5, 1.499) // 606.1
 */
export function springStiffnessNPerM(massKg: number, periodS: number): number {
  stayAboveZero({ quantity: 'known mass', value: massKg, unit: 'kg', source: SOURCE });
  stayAboveZero({ quantity: 'period of the swing', value: periodS, unit: 's', source: SOURCE });
  return (FOUR_PI_SQUARED * massKg) / (periodS * periodS);
}

/**
 * The period to expect: T = 2π √(m / k).
 * @param massKg kg, above 0, chair or tray included
 * @param stiffnessNPerM N/m, above 0
 * @returns s
 * @throws OutsideRange outside those ranges and for NaN
 * @source spring-oscillation
 * @example swingPeriodS(34.5, 606) // 1.499
 */
export function swingPeriodS(massKg: number, stiffnessNPerM: number): number {
  stayAboveZero({ quantity: 'mass', value: massKg, unit: 'kg', source: SOURCE });
  stayAboveZero({ quantity: 'stiffness of the spring', value: stiffnessNPerM, unit: 'N/m', source: SOURCE });
  return Math.sqrt((FOUR_PI_SQUARED * massKg) / stiffnessNPerM);
}

/**
 * The mass on a frame that floats: m = μ M / (M − μ). The frame swings against it, so that the spring feels μ = m M / (m + M).
 * @param masses kg: `reducedKg` above 0, `frameKg` above it
 * @returns kg, chair or tray included
 * @throws OutsideRange outside those ranges and for NaN
 * @source spring-oscillation (reduced mass)
 * @example massBesideFrameKg({ reducedKg: 83.31, frameKg: 2001 }) // 86.93
 */
export function massBesideFrameKg(masses: { readonly reducedKg: number; readonly frameKg: number }): number {
  const { reducedKg, frameKg } = masses;
  stayReduced({ reducedKg, wholeKg: frameKg, what: 'frame' });
  return besideFrame(NUMBERS, reducedKg, frameKg);
}

/**
 * The mass of the frame, from a known mass and what the spring feels of it: M = μ m / (m − μ).
 * @param masses kg: `reducedKg` above 0, `massKg` above it
 * @returns kg
 * @throws OutsideRange outside those ranges and for NaN
 * @source spring-oscillation (reduced mass)
 * @example frameMassKg({ reducedKg: 24.896, massKg: 25.21 }) // about 2000
 */
export function frameMassKg(masses: { readonly reducedKg: number; readonly massKg: number }): number {
  const { reducedKg, massKg } = masses;
  stayReduced({ reducedKg, wholeKg: massKg, what: 'known mass' });
  return besideFrame(NUMBERS, reducedKg, massKg);
}

export function stayReduced(of: {
  readonly reducedKg: number;
  readonly wholeKg: number;
  readonly what: string;
}): void {
  const { reducedKg, wholeKg, what } = of;
  stayAboveZero({ quantity: 'reduced mass', value: reducedKg, unit: 'kg', source: SOURCE });
  stayWithin({
    ...{ quantity: `mass of the ${what}, which is above the reduced mass`, value: wholeKg, unit: 'kg' },
    ...{ low: reducedKg, lowIsOpen: true, high: OPEN_END, source: SOURCE },
  });
}
