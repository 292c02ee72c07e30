// What a gas injection would be worth before anybody does it: the readings that would come, with the doubts of the gauges.
import type { Doubted } from '../../maths/index.ts';
import { OPEN_END } from '../outside-range.ts';
import { stayWithin } from '../stay-within.ts';
import { endPressurePa, tankAfterFallPa } from './charge.ts';
import { gaugeByInjection, type InjectionGauged, type InjectionTerm } from './gas-injection.ts';

export interface InjectionForeseen {
  readonly tankM3: Doubted;
  readonly bottleM3: Doubted;
  /** As it is believed now; a gauging is as good as the room that it finds. */
  readonly ullageM3: number;
  readonly bottlePa: number;
  readonly tankPa: number;
  /** Of bottle and tank alike, K. */
  readonly gasK: number;
  /** How far the bottle is let fall; absent: it is opened for good, and one gauge reads where the two meet. */
  readonly bottleFallPa?: number;
  /** One standard deviation of a reading: what is new in each. */
  readonly u: { readonly bottlePa: number; readonly tankPa: number; readonly gasK: number };
  /** What readings share, and whatever else is in the budget. */
  readonly terms?: Readonly<Partial<Record<InjectionTerm, Doubted>>>;
}

/**
 * The gauging that such an injection would give: its `waterM3.u` and what makes it. Bottle and tank are taken to be at one
 * temperature, before and after.
 * @param foreseen m³, Pa absolute, K; see `gaugeByInjection` for the ranges
 * @throws OutsideRange as `gaugeByInjection`, and for a fall that would bring the bottle below the tank
 * @source ideal-gas; gum, 5.1.2
 * @example foreseenInjection(foreseen).waterM3.u * 1000 // litres
 */
export function foreseenInjection(foreseen: InjectionForeseen): InjectionGauged {
  const { tankM3, bottleM3, ullageM3, bottlePa, tankPa, gasK, bottleFallPa, u, terms = {} } = foreseen;
  const vessels = { bottleM3: bottleM3.value, ullageM3, bottlePa, tankPa };
  const endPa =
    bottleFallPa === undefined ? endPressurePa(vessels) : tankAfterFallPa({ ...vessels, bottleFallPa });
  const afterPa = bottleFallPa === undefined ? null : bottlePa - bottleFallPa;
  stayWithin({
    ...{ quantity: 'pressure left in the bottle, which does not fall below the tank', unit: 'Pa' },
    ...{ value: afterPa ?? endPa, low: endPa, high: OPEN_END, source: 'ideal-gas' },
  });
  const gas: Doubted = { value: gasK, u: u.gasK };
  return gaugeByInjection({
    ...{ tankM3, bottleM3, ...terms },
    bottleBeforePa: { value: bottlePa, u: u.bottlePa },
    bottleAfterPa: afterPa === null ? 'as the tank' : { value: afterPa, u: u.bottlePa },
    tankBeforePa: { value: tankPa, u: u.tankPa },
    tankAfterPa: { value: endPa, u: u.tankPa },
    ...{ bottleBeforeK: gas, bottleAfterK: gas, tankBeforeK: gas, tankAfterK: gas },
  });
}
