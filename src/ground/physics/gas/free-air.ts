// How much cabin air a push takes.
import { mustBeAbove0, mustBeAtLeast0 } from './gas-range.ts';

/** A push by air from the cabin; pressures are absolute. */
export interface AirPush {
  readonly waterM3: number;
  /** In the tank's gas side while it pushes. */
  readonly tankPa: number;
  readonly cabinPa: number;
  /** Gas in the tank before the push, at cabin pressure, that has to be brought up to the tank's; 0 if not given. */
  readonly ullageM3?: number;
}

export interface FreeAir {
  /** Cabin air that takes the place of the water. */
  readonly forWaterM3: number;
  /** Cabin air that brings the gas that was there up to pressure. */
  readonly forUllageM3: number;
  readonly totalM3: number;
}

/**
 * The air that a push takes, as it lies in the cabin: V p_t/p_c for the water, and V_u (p_t − p_c)/p_c for gas that was in the
 * tank at cabin pressure. Constant temperature, ideal gas.
 * @param push pressures in Pa, absolute and above 0, the tank's at least the cabin's; volumes in m³, 0 or more
 * @returns m³ at cabin pressure
 * @throws OutsideRange for what is no pressure or volume
 * @source boyle-polytropic (Boyle)
 * @example freeAir({ waterM3: 0.2, tankPa: 151_987.5, cabinPa: 101_325 }).totalM3 // 0.3
 */
export function freeAir({ waterM3, tankPa, cabinPa, ullageM3 = 0 }: AirPush): FreeAir {
  mustBeAtLeast0('water to be pushed', waterM3, 'm³');
  mustBeAtLeast0('gas in the tank before', ullageM3, 'm³');
  mustBeAbove0('pressure of the cabin', cabinPa, 'Pa');
  mustBeAbove0('pressure in the tank', tankPa, 'Pa');
  mustBeAtLeast0('pressure in the tank over the cabin', tankPa - cabinPa, 'Pa');
  const forWaterM3 = (waterM3 * tankPa) / cabinPa;
  const forUllageM3 = (ullageM3 * (tankPa - cabinPa)) / cabinPa;
  return { forWaterM3, forUllageM3, totalM3: forWaterM3 + forUllageM3 };
}
