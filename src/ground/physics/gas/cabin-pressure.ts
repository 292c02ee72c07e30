// What a push does to the pressure of the cabin: while it lasts, after the tank is vented, and if all its gas comes back.
import { mustBeAbove0, mustBeAtLeast0 } from './gas-range.ts';

/** Into what the water goes. */
export type Receiver =
  /** A rigid container in the cabin: the air of its shell comes back into the cabin as the bladder fills. */
  | 'shell inside'
  /** A soft bag in the cabin: it grows into the cabin's volume. */
  | 'bag inside'
  /** A store that shares no gas with the cabin. */
  | 'outside';

export interface CabinPush {
  /** Absolute pressure of the cabin before, Pa. */
  readonly cabinPa: number;
  /** Absolute pressure of the tank's gas side while it pushes, Pa. */
  readonly tankPa: number;
  readonly waterM3: number;
  /** Gas volume of the cabin before, without the shells of the receivers, m³. */
  readonly cabinM3: number;
  readonly receiver: Receiver;
  /** Where the gas comes from: compressed cabin air, or a vehicle's own pressurant. */
  readonly gasFrom: 'cabin' | 'vehicle';
}

/** Changes of the cabin's pressure against that before the push; below 0 it has fallen. */
export interface CabinChange {
  readonly whilePushingPa: number;
  /** The gas side of the emptied tank is opened to the cabin and stays open. */
  readonly afterVentingPa: number;
  /** All the tank's gas has come back and its gas side is closed to nothing. */
  readonly allGasBackPa: number;
}

/**
 * The pressure of the cabin from the gas that is in it: p′ = (gas in the cabin) / (volume of the cabin), at one temperature.
 *
 * Gas is counted as p V. Before: p (V + shells). A push takes p_t ΔV of it if the cabin gives the gas; the volume shrinks by
 * ΔV where the water comes to lie inside. So, with cabin gas: shells inside −(p_t − p) ΔV/V, a bag inside
 * −(p_t − p) ΔV/(V − ΔV), a receiver outside −p_t ΔV/V. Venting brings the gas back and adds the volume ΔV: 0 inside,
 * −p ΔV/(V + ΔV) outside. If all gas comes back and the gas side closes: +p ΔV/V inside (a bag: /(V − ΔV)), 0 outside.
 * A vehicle's own gas makes the cabin rise by p ΔV/V while it fills containers inside.
 *
 * Gas that was in the tank before is taken to have been at the tank's pressure; charging it is `freeAir().forUllageM3`.
 * @param push pressures in Pa, absolute and above 0, the tank's at least the cabin's; volumes in m³; the cabin's above the water's
 * @returns Pa
 * @throws OutsideRange for what is no pressure or volume
 * @source boyle-polytropic (Boyle; conservation of gas)
 * @example cabinChange({ cabinPa: 101_325, tankPa: 151_987.5, waterM3: 0.2, cabinM3: 180, receiver: 'shell inside', gasFrom: 'cabin' }).whilePushingPa // -56.29
 */
export function cabinChange(push: CabinPush): CabinChange {
  const { cabinPa, tankPa, waterM3, cabinM3, receiver, gasFrom } = push;
  mustBeSound(push);
  const pushedGas = tankPa * waterM3;
  const fromCabin = gasFrom === 'cabin' ? pushedGas : 0;
  const fromVehicle = pushedGas - fromCabin;
  const shellM3 = receiver === 'shell inside' ? waterM3 : 0;
  const filledM3 = receiver === 'outside' ? 0 : waterM3;
  // Against the pressure before, so that nothing is lost in a small difference of large numbers.
  const over = (gas: number, lostM3: number): number =>
    (gas + cabinPa * lostM3) / (cabinM3 + shellM3 - lostM3);
  return {
    whilePushingPa: over(-fromCabin, filledM3),
    afterVentingPa: over(fromVehicle, filledM3 - waterM3),
    allGasBackPa: over(fromVehicle, filledM3),
  };
}

function mustBeSound({ cabinPa, tankPa, waterM3, cabinM3 }: CabinPush): void {
  mustBeAbove0('pressure of the cabin', cabinPa, 'Pa');
  mustBeAbove0('pressure in the tank', tankPa, 'Pa');
  mustBeAtLeast0('pressure in the tank over the cabin', tankPa - cabinPa, 'Pa');
  mustBeAtLeast0('water to be pushed', waterM3, 'm³');
  mustBeAbove0('gas volume of the cabin less the water', cabinM3 - waterM3, 'm³');
}
