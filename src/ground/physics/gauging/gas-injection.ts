// How much water is in a tank without a level: gas from a bottle goes in, and the rise of the pressure tells the room it found.
import {
  type Arithmetic,
  type BorneOut,
  type Doubted,
  type Drawn,
  isBorneOut,
  NUMBERS,
  type Propagated,
  propagateByDraws,
  propagateTogether,
} from '../../maths/index.ts';
import { OPEN_END } from '../outside-range.ts';
import { stayAboveZero, stayWithin } from '../stay-within.ts';
import { type BudgetShare, doubtBudget } from './doubt-budget.ts';
import {
  NOTHING,
  stayGas,
  stayTank,
  TANK_GROUPS,
  type TankGroup,
  type TankReading,
  type TankTerm,
  tankGas,
  truePressure,
  waterBeside,
} from './tank-gas.ts';

/** What is read, all pressures absolute, each gas at its own temperature. */
export type InjectionReading =
  | TankReading
  | 'tankM3'
  | 'bottleM3'
  | 'bottleBeforePa'
  | 'bottleAfterPa'
  | 'bottleBeforeK'
  | 'bottleAfterK';

/** What is 0 in no doubt unless it is told. */
export type InjectionTerm =
  | TankTerm
  /** Errors of the bottle's gauge and thermometer, common to before and after. */
  | 'bottleGaugeOffsetPa'
  | 'bottleGaugeGain'
  | 'bottleThermometerK'
  /** How the gas room grows with its pressure: shell and bladder give way. */
  | 'complianceM3PerPa'
  /** Share of the injected gas that is not in the gas any more: dissolved in the water, or leaked. */
  | 'lostShare'
  /** How much warmer the tank's gas still is than its thermometer says. */
  | 'unsettledK';

export type InjectionInput = InjectionReading | InjectionTerm;

export type InjectionGroup = TankGroup | 'bottle';

const INJECTION_GROUPS: Readonly<Record<InjectionInput, InjectionGroup>> = {
  ...TANK_GROUPS,
  complianceM3PerPa: 'tank',
  bottleM3: 'bottle',
  ...{ bottleBeforePa: 'pressure', bottleAfterPa: 'pressure' },
  ...{ bottleGaugeOffsetPa: 'pressure', bottleGaugeGain: 'pressure' },
  ...{ bottleBeforeK: 'temperature', bottleAfterK: 'temperature' },
  ...{ bottleThermometerK: 'temperature', unsettledK: 'temperature' },
  lostShare: 'gas',
};

type Values<Value> = Readonly<Record<InjectionInput, Value>>;

/** The gas before the injection, with what is lost and what the room grows. */
function gasVolume<Value>(on: Arithmetic<Value>, x: Values<Value>, isOneGauge: boolean): Value {
  const tank = tankGas(on, x);
  const errors = { offset: x.bottleGaugeOffsetPa, gain: x.bottleGaugeGain };
  const bottleAfterPa = isOneGauge ? tank.afterPa : truePressure(on, x.bottleAfterPa, errors);
  const bottleBeforePa = truePressure(on, x.bottleBeforePa, errors);
  const gave = on.minus(
    on.over(bottleBeforePa, on.plus(x.bottleBeforeK, x.bottleThermometerK)),
    on.over(bottleAfterPa, on.plus(x.bottleAfterK, x.bottleThermometerK)),
  );
  const stayed = on.times(on.times(x.bottleM3, gave), on.shifted(on.scaled(x.lostShare, -1), 1));
  const before = on.over(on.minus(tank.beforePa, x.vapourPa), tank.beforeK);
  const after = on.over(on.minus(tank.afterPa, x.vapourPa), on.plus(tank.afterK, x.unsettledK));
  const grown = on.times(x.complianceM3PerPa, on.minus(tank.afterPa, tank.beforePa));
  return on.over(on.minus(stayed, on.times(grown, after)), on.minus(after, before));
}

const NO_TERMS: Readonly<Record<InjectionTerm, number>> = {
  ...{ vapourPa: 0, seatingM3: 0, solidsM3: 0, lineM3: 0 },
  ...{ tankGaugeOffsetPa: 0, tankGaugeGain: 0, tankThermometerK: 0 },
  ...{ bottleGaugeOffsetPa: 0, bottleGaugeGain: 0, bottleThermometerK: 0 },
  ...{ complianceM3PerPa: 0, lostShare: 0, unsettledK: 0 },
};

export type InjectionReadings = Readonly<Record<Exclude<InjectionReading, 'tankM3'>, number>> & {
  /** Vapour in the tank's gas, Pa; absent: the gas is dry. */
  readonly vapourPa?: number;
};

/**
 * The volume of gas in the tank before the injection, from bare readings.
 *
 * V = V_b (p_b1/T_b1 − p_b2/T_b2) / ((p_2 − p_v)/T_2 − (p_1 − p_v)/T_1): the gas that left the bottle is in the tank.
 * @param readings absolute pressures in Pa, above 0 to 5 MPa; temperatures in K, 200 to 400; `bottleM3` m³
 * @returns m³
 * @throws OutsideRange outside those ranges, for NaN, and where the bottle gave nothing or the tank took nothing
 * @source ideal-gas (balance of amounts over bottle and tank)
 * @example
 * gasVolumeByInjectionM3({
 *   bottleM3: 0.002, bottleBeforePa: 700e3, bottleAfterPa: 176190.476, bottleBeforeK: 295, bottleAfterK: 295,
 *   tankBeforePa: 150e3, tankAfterPa: 176190.476, tankBeforeK: 295, tankAfterK: 295,
 * }) // 0.0400
 */
export function gasVolumeByInjectionM3(readings: InjectionReadings): number {
  const x = { ...NO_TERMS, tankM3: Number.NaN, ...readings };
  stayInjection(x);
  return gasVolume(NUMBERS, x, false);
}

type Looked = Readonly<Record<Exclude<InjectionReading, 'tankM3'> | 'vapourPa', number>>;

function stayInjection(x: Looked): void {
  if (!(x.bottleM3 > 0))
    stayAboveZero({ quantity: 'volume of the bottle', value: x.bottleM3, unit: 'm³', source: 'ideal-gas' });
  stayGas('bottle before', x.bottleBeforePa, x.bottleBeforeK);
  stayGas('bottle after', x.bottleAfterPa, x.bottleAfterK);
  stayGas('tank before', x.tankBeforePa, x.tankBeforeK);
  stayGas('tank after', x.tankAfterPa, x.tankAfterK);
  const fell = x.bottleBeforePa / x.bottleBeforeK - x.bottleAfterPa / x.bottleAfterK;
  stayPassed('gas that left the bottle, as a fall of p/T', fell);
  const rose = (x.tankAfterPa - x.vapourPa) / x.tankAfterK - (x.tankBeforePa - x.vapourPa) / x.tankBeforeK;
  stayPassed('gas that came into the tank, as a rise of p/T', rose);
}

function stayPassed(quantity: string, value: number): void {
  if (value > 0 && value < OPEN_END) return;
  stayWithin({ quantity, value, unit: 'Pa/K', low: 0, lowIsOpen: true, high: OPEN_END, source: 'ideal-gas' });
}

/** Readings with their doubts. `bottleAfterPa: 'as the tank'`: the two stand open to each other, and one gauge reads both. */
export type InjectionTold = Readonly<
  Record<Exclude<InjectionReading, 'bottleAfterPa'>, Doubted> & Partial<Record<InjectionTerm, Doubted>>
> & { readonly bottleAfterPa: Doubted | 'as the tank' };

export interface InjectionGauged {
  /** m³ of water. */
  readonly waterM3: Propagated<InjectionInput>;
  /** m³ of gas before the injection. */
  readonly gasM3: Propagated<InjectionInput>;
  /** What makes the doubt of the water, the largest first. */
  readonly budget: readonly BudgetShare<InjectionGroup>[];
}

/**
 * The water in a tank by gas injection, with its doubt and what makes it.
 *
 * Water = tank + seating − solids − (V − lines), with V as in `gasVolumeByInjectionM3`; with gas that is lost and a room that
 * grows by C (p₂ − p₁): V = (V_b Δ_b (1 − lost) − C (p₂ − p₁) (p₂ − p_v)/T₂) / ((p₂ − p_v)/T₂ − (p₁ − p_v)/T₁).
 * Errors that two readings of one gauge or thermometer share are terms of their own, so that they cancel where they do.
 * @param told inputs in m³, Pa absolute and K, each with its u; terms that are absent are 0 in no doubt
 * @throws OutsideRange as `gasVolumeByInjectionM3`, and for a tank of no volume; RangeError for a doubt below 0
 * @source ideal-gas; gum, 5.1.2
 * @example gaugeByInjection(told).waterM3.u * 1000 // litres, one standard deviation
 */
export function gaugeByInjection(told: InjectionTold): InjectionGauged {
  const { inputs, isOneGauge } = injectionInputs(told);
  const { outputs } = propagateTogether({
    inputs,
    formulas: (on, x) => {
      const gasM3 = gasVolume(on, x, isOneGauge);
      return { gasM3, waterM3: waterBeside(on, x, gasM3) };
    },
  });
  return { ...outputs, budget: doubtBudget(outputs.waterM3, INJECTION_GROUPS) };
}

function stayTold(inputs: Readonly<Record<InjectionInput, Doubted>>): void {
  const tankBeforePa = inputs.tankBeforePa.value;
  const tankAfterPa = inputs.tankAfterPa.value;
  const vapourPa = inputs.vapourPa.value;
  stayInjection({
    vapourPa,
    bottleM3: inputs.bottleM3.value,
    bottleBeforePa: inputs.bottleBeforePa.value,
    bottleAfterPa: inputs.bottleAfterPa.value,
    bottleBeforeK: inputs.bottleBeforeK.value,
    bottleAfterK: inputs.bottleAfterK.value,
    tankBeforePa,
    tankAfterPa,
    tankBeforeK: inputs.tankBeforeK.value,
    tankAfterK: inputs.tankAfterK.value,
  });
  stayTank({ tankM3: inputs.tankM3.value, vapourPa, leastPa: Math.min(tankBeforePa, tankAfterPa) });
}

/** All inputs, looked at, and whether one gauge read where bottle and tank met. */
function injectionInputs(told: InjectionTold) {
  const isOneGauge = told.bottleAfterPa === 'as the tank';
  const bottleAfterPa = told.bottleAfterPa === 'as the tank' ? told.tankAfterPa : told.bottleAfterPa;
  // Written out, and not gathered: every gauging has the same shape, so that a thousand of them cost little.
  const inputs: Record<InjectionInput, Doubted> = {
    tankM3: told.tankM3,
    bottleM3: told.bottleM3,
    bottleBeforePa: told.bottleBeforePa,
    bottleAfterPa,
    bottleBeforeK: told.bottleBeforeK,
    bottleAfterK: told.bottleAfterK,
    tankBeforePa: told.tankBeforePa,
    tankAfterPa: told.tankAfterPa,
    tankBeforeK: told.tankBeforeK,
    tankAfterK: told.tankAfterK,
    vapourPa: told.vapourPa ?? NOTHING,
    seatingM3: told.seatingM3 ?? NOTHING,
    solidsM3: told.solidsM3 ?? NOTHING,
    lineM3: told.lineM3 ?? NOTHING,
    tankGaugeOffsetPa: told.tankGaugeOffsetPa ?? NOTHING,
    tankGaugeGain: told.tankGaugeGain ?? NOTHING,
    tankThermometerK: told.tankThermometerK ?? NOTHING,
    bottleGaugeOffsetPa: told.bottleGaugeOffsetPa ?? NOTHING,
    bottleGaugeGain: told.bottleGaugeGain ?? NOTHING,
    bottleThermometerK: told.bottleThermometerK ?? NOTHING,
    complianceM3PerPa: told.complianceM3PerPa ?? NOTHING,
    lostShare: told.lostShare ?? NOTHING,
    unsettledK: told.unsettledK ?? NOTHING,
  };
  stayTold(inputs);
  return { inputs, isOneGauge };
}

export interface InjectionDrawn {
  /** m³ of water, by draws. */
  readonly waterM3: Drawn;
  /** Whether they bear `gaugeByInjection` out. Null where the gauging is in no doubt. */
  readonly borneOut: BorneOut | null;
}

/**
 * The same gauging by draws, to see whether its doubt to first order holds: near empty the small rise of the pressure bends it.
 * @param told as `gaugeByInjection`; shapes of the inputs count here
 * @param by `seed`, a whole number from 0; `draws` see `propagateByDraws`; `digits` of u that have to hold, 1
 *   unless told: two want a million draws
 * @throws OutsideRange as `gaugeByInjection`; RangeError as `propagateByDraws`
 * @source jcgm-101, clauses 7 and 8
 * @example injectionByDraws(told, { seed: 7 }).borneOut?.verdict
 */
export function injectionByDraws(
  told: InjectionTold,
  by: { readonly seed: number; readonly draws?: number; readonly digits?: 1 | 2 },
): InjectionDrawn {
  const { digits = 1, ...drawing } = by;
  const { inputs, isOneGauge } = injectionInputs(told);
  const propagated = gaugeByInjection(told).waterM3;
  const waterM3 = propagateByDraws<InjectionInput>({
    ...{ inputs, ...drawing },
    formula: (on, x) => waterBeside(on, x, gasVolume(on, x, isOneGauge)),
  });
  return {
    waterM3,
    borneOut: propagated.u === 0 ? null : isBorneOut({ propagated, drawn: waterM3, digits }),
  };
}
