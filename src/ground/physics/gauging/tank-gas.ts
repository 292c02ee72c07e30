// The gas side of a tank as it is read: gauges with their errors, temperatures, vapour, and what of the tank is not gas.
import type { Arithmetic, Doubted } from '../../maths/index.ts';
import { stayAboveZero, stayWithin } from '../stay-within.ts';

/** What is read of the tank before and after; absolute pressures. */
export type TankReading = 'tankBeforePa' | 'tankAfterPa' | 'tankBeforeK' | 'tankAfterK';

/** What belongs to every gauging of a tank by its gas, and is 0 in no doubt unless it is told. */
export type TankTerm =
  /** Vapour in the gas, the same before and after; 0 behind a dry bladder. */
  | 'vapourPa'
  /** What the bladder adds to the tank's volume as it happens to lie: new at every gauging. */
  | 'seatingM3'
  /** Bladder and fittings in the tank that are neither gas nor water. */
  | 'solidsM3'
  /** Gas in lines on the tank's side, which its volume does not count. */
  | 'lineM3'
  /** Errors of the tank's gauge, common to its readings: to be added, and as a part of the reading. */
  | 'tankGaugeOffsetPa'
  | 'tankGaugeGain'
  /** Error of the tank's thermometer, common to its readings. */
  | 'tankThermometerK';

export type TankGroup = 'tank' | 'pressure' | 'temperature' | 'gas';

export const TANK_GROUPS = {
  ...{ tankM3: 'tank', seatingM3: 'tank', solidsM3: 'tank', lineM3: 'tank' },
  ...{ tankBeforePa: 'pressure', tankAfterPa: 'pressure' },
  ...{ tankGaugeOffsetPa: 'pressure', tankGaugeGain: 'pressure' },
  ...{ tankBeforeK: 'temperature', tankAfterK: 'temperature', tankThermometerK: 'temperature' },
  vapourPa: 'gas',
} as const satisfies Readonly<Record<TankReading | TankTerm | 'tankM3', TankGroup>>;

/** What a term is that nobody told: 0, in no doubt. */
export const NOTHING: Doubted = { value: 0, u: 0 };

/** The terms of the tank, with nothing for each that is not told. */
export function tankTerms(told: Readonly<Partial<Record<TankTerm, Doubted>>>): Record<TankTerm, Doubted> {
  return {
    vapourPa: told.vapourPa ?? NOTHING,
    seatingM3: told.seatingM3 ?? NOTHING,
    solidsM3: told.solidsM3 ?? NOTHING,
    lineM3: told.lineM3 ?? NOTHING,
    tankGaugeOffsetPa: told.tankGaugeOffsetPa ?? NOTHING,
    tankGaugeGain: told.tankGaugeGain ?? NOTHING,
    tankThermometerK: told.tankThermometerK ?? NOTHING,
  };
}

type Values<Name extends string, Value> = Readonly<Record<Name, Value>>;

/** A pressure as it is: the reading with the errors of its gauge put right. */
export function truePressure<Value>(
  on: Arithmetic<Value>,
  reading: Value,
  { offset, gain }: { readonly offset: Value; readonly gain: Value },
): Value {
  return on.plus(on.times(reading, on.shifted(gain, 1)), offset);
}

/** What the tank's gauge and thermometer say, put right by their errors. */
export function tankGas<Value>(on: Arithmetic<Value>, x: Values<TankReading | TankTerm, Value>) {
  const errors = { offset: x.tankGaugeOffsetPa, gain: x.tankGaugeGain };
  const beforePa = truePressure(on, x.tankBeforePa, errors);
  const afterPa = truePressure(on, x.tankAfterPa, errors);
  const beforeK = on.plus(x.tankBeforeK, x.tankThermometerK);
  const afterK = on.plus(x.tankAfterK, x.tankThermometerK);
  return { beforePa, afterPa, beforeK, afterK };
}

/** Water = tank + seating of the bladder − solids − (gas − lines). */
export function waterBeside<Value>(
  on: Arithmetic<Value>,
  x: Values<'tankM3' | 'seatingM3' | 'solidsM3' | 'lineM3', Value>,
  gasM3: Value,
): Value {
  const shell = on.minus(on.plus(x.tankM3, x.seatingM3), x.solidsM3);
  return on.minus(shell, on.minus(gasM3, x.lineM3));
}

const LOWEST_K = 200;
const HIGHEST_K = 400;
const HIGHEST_PA = 5e6;

/** The pressures at which a gas counts as ideal. Looked at first and put into words only then: a look costs next to nothing. */
export function stayGasPressure(what: string, pressurePa: number): void {
  if (pressurePa > 0 && pressurePa <= HIGHEST_PA) return;
  stayWithin({
    ...{ quantity: `absolute pressure of the ${what}`, value: pressurePa, unit: 'Pa', source: 'ideal-gas' },
    ...{ low: 0, lowIsOpen: true, high: HIGHEST_PA },
  });
}

/** An ideal gas: to 1 % of what a bottle gives up to 1.5 MPa, to 3 % at the end of the range (from memory). */
export function stayGas(what: string, pressurePa: number, temperatureK: number): void {
  stayGasPressure(what, pressurePa);
  if (temperatureK >= LOWEST_K && temperatureK <= HIGHEST_K) return;
  stayWithin({
    ...{ quantity: `temperature of the ${what}`, value: temperatureK, unit: 'K', source: 'ideal-gas' },
    ...{ low: LOWEST_K, high: HIGHEST_K },
  });
}

/** Refuses a tank of no volume, and gas that would be all vapour or none. */
export function stayTank({
  tankM3,
  vapourPa,
  leastPa,
}: {
  readonly tankM3: number;
  readonly vapourPa: number;
  readonly leastPa: number;
}): void {
  const source = 'ideal-gas';
  stayAboveZero({ quantity: 'volume of the tank', value: tankM3, unit: 'm³', source });
  if (vapourPa >= 0 && vapourPa < leastPa) return;
  stayWithin({
    ...{ quantity: 'vapour pressure in the tank, which is below that of the gas', value: vapourPa },
    ...{ unit: 'Pa', low: 0, high: leastPa, source },
  });
}
