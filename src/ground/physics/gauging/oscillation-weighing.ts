// What is in a container, weighed by swinging it on a spring; and the calibration of that balance by two known masses.
import {
  type Arithmetic,
  type Correlation,
  type Doubted,
  type Propagated,
  propagate,
  propagateTogether,
} from '../../maths/index.ts';
import { OPEN_END } from '../outside-range.ts';
import { stayAboveZero, stayAtLeastZero, stayWithin } from '../stay-within.ts';
import { type BudgetShare, doubtBudget } from './doubt-budget.ts';
import { besideFrame, stayReduced, swinging, swingingMassKg } from './oscillation.ts';

const SOURCE = 'spring-oscillation';
const NOTHING: Doubted = { value: 0, u: 0 };
const FOUR_PI_SQUARED = 4 * Math.PI * Math.PI;

export type WeighingInput = 'periodS' | 'stiffnessNPerM' | 'carriageKg' | 'tareKg' | 'frameKg' | 'slosh';

export interface WeighingTold {
  /** Of one full swing: the time of many, over their count. */
  readonly periodS: Doubted;
  readonly stiffnessNPerM: Doubted;
  /** Chair or tray that swings along. */
  readonly carriageKg: Doubted;
  /** The empty container; absent: what swings is all content. */
  readonly tareKg?: Doubted;
  /** Mass of a frame that floats; absent: the frame is fast. */
  readonly frameKg?: Doubted;
  /** Water that does not swing with its container, as a part of the content: 1 to 5 % unless the bag is tight (from memory). */
  readonly slosh?: Doubted;
  /** What the calibration's results have in common, see `calibratedBalance`. */
  readonly correlations?: readonly Correlation<WeighingInput>[];
}

export interface Weighed {
  /** kg of what is in it. */
  readonly contentKg: Propagated<WeighingInput>;
  readonly budget: readonly BudgetShare<'period' | 'spring' | 'tare' | 'frame' | 'slosh'>[];
}

function content<Value>(
  on: Arithmetic<Value>,
  x: Readonly<Record<WeighingInput, Value>>,
  isFloating: boolean,
): Value {
  const felt = swinging(on, x.stiffnessNPerM, x.periodS);
  const whole = isFloating ? besideFrame(on, felt, x.frameKg) : felt;
  const net = on.minus(on.minus(whole, x.carriageKg), x.tareKg);
  return on.times(net, on.shifted(x.slosh, 1));
}

/**
 * The content of a container on a spring: m = k T² / 4π² − carriage − tare, on a floating frame with m_whole = μ M / (M − μ);
 * slosh enters as a factor 1 + s, its value 0 unless it is known.
 *
 * u(m)/m_whole = √((2 u_T/T)² + (u_k/k)²) where nothing else is in doubt.
 * @param told s, N/m and kg, each with its u; period, stiffness above 0; carriage and tare from 0; frame above what the spring feels
 * @throws OutsideRange outside those ranges and for NaN; RangeError for a doubt below 0 or correlations that contradict each other
 * @source spring-oscillation; gum, 5.2.2
 * @example
 * weighByOscillation({
 *   periodS: { value: 1.4991, u: 0.0005 }, stiffnessNPerM: { value: 606, u: 0 }, carriageKg: { value: 12.5, u: 0 },
 * }).contentKg.u // 0.023
 */
export function weighByOscillation(told: WeighingTold): Weighed {
  const { correlations = [], frameKg, periodS, stiffnessNPerM, carriageKg } = told;
  const { tareKg = NOTHING, slosh = NOTHING } = told;
  const inputs = { periodS, stiffnessNPerM, carriageKg, tareKg, frameKg: frameKg ?? NOTHING, slosh };
  const feltKg = swingingMassKg(inputs.stiffnessNPerM.value, inputs.periodS.value);
  if (frameKg !== undefined) stayReduced({ reducedKg: feltKg, wholeKg: frameKg.value, what: 'frame' });
  stayAtLeastZero({ quantity: 'chair or tray', value: inputs.carriageKg.value, unit: 'kg', source: SOURCE });
  stayAtLeastZero({ quantity: 'empty container', value: inputs.tareKg.value, unit: 'kg', source: SOURCE });
  const contentKg = propagate<WeighingInput>({
    ...{ inputs, correlations },
    formula: (on, x) => content(on, x, frameKg !== undefined),
  });
  const budget = doubtBudget<WeighingInput, Weighed['budget'][number]['of']>(contentKg, {
    ...{ periodS: 'period', stiffnessNPerM: 'spring', carriageKg: 'spring' },
    ...{ tareKg: 'tare', frameKg: 'frame', slosh: 'slosh' },
  });
  return { contentKg, budget };
}

export interface KnownSwing {
  /** Put on the chair or tray, which is not counted; 0 for the bare one. */
  readonly massKg: Doubted;
  readonly periodS: Doubted;
}

export interface CalibratedBalance {
  readonly stiffnessNPerM: Doubted;
  readonly carriageKg: Doubted;
  /** Of the two, made of the same swings: hand it to `weighByOscillation`. */
  readonly correlations: readonly [Correlation<'stiffnessNPerM' | 'carriageKg'>];
}

/**
 * Spring and carriage from two known masses on a fast frame: k = 4π² (m₂ − m₁) / (T₂² − T₁²), m₀ = k T₁² / 4π² − m₁.
 * @param swings kg and s with their u: masses from 0, periods above 0; the heavier swings slower
 * @throws OutsideRange outside those ranges, for two swings that do not differ so, and for NaN
 * @source spring-oscillation; gum, H.2.3
 * @example calibratedBalance({ lighter: bare, heavier: withTenKilograms }).stiffnessNPerM
 */
export function calibratedBalance(swings: {
  readonly lighter: KnownSwing;
  readonly heavier: KnownSwing;
}): CalibratedBalance {
  const { lighter, heavier } = swings;
  for (const { massKg, periodS } of [lighter, heavier]) {
    stayAtLeastZero({ quantity: 'known mass', value: massKg.value, unit: 'kg', source: SOURCE });
    stayAboveZero({ quantity: 'period of the swing', value: periodS.value, unit: 's', source: SOURCE });
  }
  const heavierBy = { quantity: 'mass by which the second is heavier', unit: 'kg' };
  const slowerBy = { quantity: 'time by which the heavier swings slower', unit: 's' };
  const open = { low: 0, lowIsOpen: true, high: OPEN_END, source: SOURCE };
  stayWithin({ ...heavierBy, ...open, value: heavier.massKg.value - lighter.massKg.value });
  stayWithin({ ...slowerBy, ...open, value: heavier.periodS.value - lighter.periodS.value });
  const { outputs, correlation } = propagateTogether({
    inputs: {
      ...{ lighterKg: lighter.massKg, lighterS: lighter.periodS },
      ...{ heavierKg: heavier.massKg, heavierS: heavier.periodS },
    },
    formulas: (on, x) => {
      const squares = on.minus(on.times(x.heavierS, x.heavierS), on.times(x.lighterS, x.lighterS));
      const stiffness = on.scaled(on.over(on.minus(x.heavierKg, x.lighterKg), squares), FOUR_PI_SQUARED);
      const carriage = on.minus(swinging(on, stiffness, x.lighterS), x.lighterKg);
      return { stiffness, carriage };
    },
  });
  const { stiffness, carriage } = outputs;
  const r = stiffness.u * carriage.u === 0 ? 0 : correlation('stiffness', 'carriage');
  return {
    stiffnessNPerM: { value: stiffness.value, u: stiffness.u },
    carriageKg: { value: carriage.value, u: carriage.u },
    // Rounding may leave a hair more than 1.
    correlations: [{ of: ['stiffnessNPerM', 'carriageKg'], r: Math.max(-1, Math.min(1, r)) }],
  };
}
