// How the humidity of a cabin goes on: people and work put water in, the condenser and leaks take it out; an exact step.
import { expm1, log1p } from '../../maths/index.ts';
import { stayAboveZero, stayAtLeastZero, stayWithin } from '../stay-within.ts';
import { latentHeatJPerKg } from '../water/saturated-water.ts';

/** A cabin whose inputs stay as they are for the length of a step. */
export interface CabinHumidity {
  /** kg of dry gas in the cabin: V / v. */
  readonly dryGasKg: number;
  /** kg of vapour to a kg of dry gas at the start. */
  readonly humidityRatio: number;
  /** Vapour that comes in: people, exercise, hygiene, water that lies about; less what dehumidifiers take evenly, kg/s. */
  readonly gainKgPerS: number;
  /** Dry gas that passes the coil and meets it: m_a (1 − BF), kg/s. */
  readonly coilFlowKgPerS: number;
  /** Of saturated air at the coil's temperature. */
  readonly coilRatio: number;
  /** Dry gas that is lost to outside, and replaced by dry gas, kg/s. */
  readonly leakKgPerS: number;
}

export interface CabinHumidityAfter {
  readonly humidityRatio: number;
  readonly condensateKg: number;
  /** Vapour lost with the leaking gas. */
  readonly leakedKg: number;
  /** Where it would come to rest; `Infinity` where nothing takes the water out. */
  readonly restingRatio: number;
  /** Time in which a difference falls to 1/e, s. */
  readonly timeConstantS: number;
}

/**
 * The humidity of a cabin after a time: M dW/dt = G − k (W − W_coil) − l W, solved exactly; k counts only while W > W_coil.
 *
 * W(t) = W∞ + (W₀ − W∞) e^(−t/τ), τ = M / (k + l), W∞ = (G + k W_coil) / (k + l); where W passes W_coil, the step is parted there.
 * Mixing is perfect; coil and gas flow do not change during the step.
 * @param cabin see `CabinHumidity`; masses above 0, flows from 0 on, the gain may be below 0
 * @param seconds length of the step, from 0 on
 * @returns what there is then, and what was collected and lost meanwhile: M (W₀ − W) + G t = collected + leaked
 * @throws OutsideRange for figures outside those ranges and for NaN; where more is taken out than there is
 * @source water-balance
 * @example cabinHumidityAfter(cabin, 3600).condensateKg // 0.3017
 */
export function cabinHumidityAfter(cabin: CabinHumidity, seconds: number): CabinHumidityAfter {
  holdCabin(cabin, seconds);
  const wet = stepOf(cabin, true);
  const dry = stepOf(cabin, false);
  const startsWet = isWetAt(cabin, cabin.humidityRatio);
  const first = startsWet ? wet : dry;
  const until = Math.min(seconds, first.timeTo(cabin.humidityRatio, cabin.coilRatio));
  const middle = first.after(cabin.humidityRatio, until);
  const rest = seconds - until;
  const second = startsWet ? dry : wet;
  const end = rest > 0 ? second.after(middle, rest) : middle;
  const wetPart = startsWet ? { from: cabin.humidityRatio, s: until } : { from: middle, s: rest };
  const lasting = isWetAt(cabin, end) ? wet : dry;
  // More cannot be taken out of a cabin than there is in it.
  stayAtLeastZero({
    quantity: 'humidity ratio after the step',
    value: end,
    unit: 'kg/kg',
    source: 'water-balance',
  });
  const leakedKg =
    cabin.leakKgPerS *
    (first.integral(cabin.humidityRatio, until) + (rest > 0 ? second.integral(middle, rest) : 0));
  const met = wetPart.s > 0 ? wet.integral(wetPart.from, wetPart.s) - cabin.coilRatio * wetPart.s : 0;
  return {
    humidityRatio: end,
    condensateKg: Math.max(0, cabin.coilFlowKgPerS * met),
    leakedKg,
    restingRatio: lasting.resting,
    timeConstantS: lasting.tau,
  };
}

/** At the coil's own humidity it is wet if the humidity would rise. */
function isWetAt(cabin: CabinHumidity, ratio: number): boolean {
  if (ratio !== cabin.coilRatio) return ratio > cabin.coilRatio;
  return cabin.gainKgPerS - cabin.leakKgPerS * ratio > 0;
}

interface Step {
  readonly resting: number;
  readonly tau: number;
  readonly after: (from: number, seconds: number) => number;
  /** ∫ W dt. */
  readonly integral: (from: number, seconds: number) => number;
  /** When the humidity gets from one value to another; `Infinity` if it never does. */
  readonly timeTo: (from: number, to: number) => number;
}

/** Written from the rate at the start, so that nothing is lost where hardly anything takes the water out. */
function stepOf(cabin: CabinHumidity, isWet: boolean): Step {
  const { dryGasKg, gainKgPerS, coilFlowKgPerS, coilRatio, leakKgPerS } = cabin;
  const coil = isWet ? coilFlowKgPerS : 0;
  const out = (coil + leakKgPerS) / dryGasKg;
  const rateAt = (ratio: number): number =>
    (gainKgPerS + coil * (coilRatio - ratio) - leakKgPerS * ratio) / dryGasKg;
  return {
    resting: restingAt(rateAt(0), out, cabin.humidityRatio),
    tau: 1 / out,
    after: (from, seconds) => from + rateAt(from) * seconds * shareOfStep(out * seconds),
    integral: (from, seconds) => seconds * (from + rateAt(from) * seconds * shareOfIntegral(out * seconds)),
    timeTo: (from, to) => {
      const straight = (to - from) / rateAt(from);
      const bent = straight * out;
      if (!(straight > 0 && bent < 1)) return Number.POSITIVE_INFINITY;
      return bent < SMALL ? straight : (straight * -log1p(-bent)) / bent;
    },
  };
}

function restingAt(rate: number, out: number, present: number): number {
  if (out > 0) return rate / out;
  return rate === 0 ? present : Math.sign(rate) * Number.POSITIVE_INFINITY;
}

/** Below this the first terms of a series are exact. */
const SMALL = 1e-9;

/** (1 − e^−x) / x. */
function shareOfStep(x: number): number {
  return x < SMALL ? 1 - x / 2 : -expm1(-x) / x;
}

/** (x − 1 + e^−x) / x². */
function shareOfIntegral(x: number): number {
  if (x < 0.02) return 1 / 2 - x * (1 / 6 - x * (1 / 24 - x * (1 / 120 - x * (1 / 720 - x / 5040))));
  return (x + expm1(-x)) / (x * x);
}

function holdCabin(cabin: CabinHumidity, seconds: number): void {
  const source = 'water-balance';
  stayAboveZero({ quantity: 'dry gas in the cabin', value: cabin.dryGasKg, unit: 'kg', source });
  stayAtLeastZero({
    quantity: 'humidity ratio of the cabin',
    value: cabin.humidityRatio,
    unit: 'kg/kg',
    source,
  });
  stayAtLeastZero({ quantity: 'humidity ratio at the coil', value: cabin.coilRatio, unit: 'kg/kg', source });
  stayAtLeastZero({
    quantity: 'flow that meets the coil',
    value: cabin.coilFlowKgPerS,
    unit: 'kg/s',
    source,
  });
  stayAtLeastZero({ quantity: 'gas that leaks', value: cabin.leakKgPerS, unit: 'kg/s', source });
  stayAtLeastZero({ quantity: 'length of the step', value: seconds, unit: 's', source });
  const [low, high] = [-MOST_GAIN_KG_PER_S, MOST_GAIN_KG_PER_S];
  stayWithin({ quantity: 'vapour that comes in', value: cabin.gainKgPerS, unit: 'kg/s', low, high, source });
}

/** Three and a half tonnes an hour: more is a slip of a unit. Ours, no source. */
const MOST_GAIN_KG_PER_S = 1;

/** Skin at work, about. From memory. */
const SKIN_K = 308.15;

/**
 * The sweat of exercise: m = (Q (1 − η) − q_dry) t / h_fg(35 °C), and never below 0. It comes out of the air as condensate one
 * to three hours later (common practice of the trade).
 * @param exercise `metabolicW` W for one person · `efficiency` of the work, 0 to 0.3 · `dryLossW` heat lost without sweat, W · `seconds`
 * @returns kg
 * @throws OutsideRange outside those ranges and for NaN
 * @source iapws-saturation (latent heat); water-balance
 * @example exerciseSweatKg({ metabolicW: 500, efficiency: 0.2, dryLossW: 120, seconds: 3600 }) // 0.417
 */
export function exerciseSweatKg(exercise: {
  readonly metabolicW: number;
  readonly efficiency: number;
  readonly dryLossW: number;
  readonly seconds: number;
}): number {
  const { metabolicW, efficiency, dryLossW, seconds } = exercise;
  const source = 'water-balance';
  stayAtLeastZero({ quantity: 'metabolic rate', value: metabolicW, unit: 'W', source });
  stayWithin({
    quantity: 'efficiency of the work',
    value: efficiency,
    unit: 'of 1',
    low: 0,
    high: 0.3,
    source,
  });
  stayAtLeastZero({ quantity: 'heat lost without sweat', value: dryLossW, unit: 'W', source });
  stayAtLeastZero({ quantity: 'length of the exercise', value: seconds, unit: 's', source });
  return Math.max(0, ((metabolicW * (1 - efficiency) - dryLossW) * seconds) / latentHeatJPerKg(SKIN_K));
}
