// Before gas is let into a tank: where the pressure will end, whether all that is under it bears it, and what charge it would bear.
import type { Doubted } from '../../maths/index.ts';
import { stayAboveZero, stayAtLeastZero } from '../stay-within.ts';

/** What stands under the pressure, and what it is rated for; null where nobody told. */
export interface Rating {
  /** In words of the trade: tank, bladder, hose, relief, bottle. */
  readonly what: string;
  /** Its id in the outpost file, or what else it is told by. */
  readonly id: string;
  /** Against the cabin, or absolute. */
  readonly overCabinPa?: number | null;
  readonly absolutePa?: number | null;
}

export interface ChargeAsked {
  readonly bottleM3: number;
  readonly bottlePa: number;
  /** Gas in the tank as it is believed; the least that it may be, two u below, is what the ratings are held against. */
  readonly ullageM3: Doubted;
  readonly tankPa: number;
  readonly cabinPa: number;
  /** How far the bottle is let fall before it is closed again; absent: it is opened for good. */
  readonly bottleFallPa?: number;
  /** Of all that sees the tank's pressure, from the bottle's valve on. */
  readonly ratings: readonly Rating[];
  /** Of the bottle itself, which sees its own pressure; absent where it is not asked about. */
  readonly bottleRating?: Rating;
}

interface Ends {
  /** Where the tank ends, for the ullage as it is believed: met with the bottle, or when that is closed. Pa absolute. */
  readonly endPa: number;
  /** The same for the least ullage that it may be. */
  readonly highestEndPa: number;
}

/** The lowest of the ratings, as an absolute pressure. */
interface Limit {
  readonly limitPa: number;
  readonly limitedBy: Rating;
}

export type Charge =
  /** A rating is missing: the card does not start. */
  | { readonly verdict: 'blocked'; readonly missing: readonly Rating[] }
  | ({ readonly verdict: 'allowed'; readonly marginPa: number } & Ends & Limit)
  | ({
      readonly verdict: 'refused';
      /** A bottle of this pressure may be opened to the tank for good. Null: none, the tank is at its limit. */
      readonly largestBottlePa: number | null;
      /** Or this bottle, closed again when the tank reads so much. */
      readonly partCharge: {
        readonly stopTankAtPa: number;
        /** How far the bottle may fall by then, for the least ullage that there may be. */
        readonly bottleFallPa: number;
      } | null;
    } & Ends &
      Limit)
  /** The bottle itself is above its rating, whatever the tank bears. */
  | { readonly verdict: 'bottle above its rating'; readonly limitPa: number; readonly limitedBy: Rating };

/**
 * The pressure at which a bottle and a tank meet: p = (p_b V_b + p_t V_t) / (V_b + V_t).
 *
 * At one temperature; and also before the gas has settled, for shut off from heat the energy is shared in the same way.
 * @param from m³ above 0, the ullage from 0; Pa absolute, above 0
 * @returns Pa absolute
 * @throws OutsideRange outside those ranges and for NaN
 * @source ideal-gas
 * @example endPressurePa({ bottleM3: 0.01, bottlePa: 600e3, ullageM3: 0.0064, tankPa: 101.3e3 }) // 405_385
 */
export function endPressurePa(from: {
  readonly bottleM3: number;
  readonly bottlePa: number;
  readonly ullageM3: number;
  readonly tankPa: number;
}): number {
  const { bottleM3, bottlePa, ullageM3, tankPa } = from;
  stayVessels(from);
  return (bottlePa * bottleM3 + tankPa * ullageM3) / (bottleM3 + ullageM3);
}

/**
 * The tank's pressure when a bottle has fallen by so much and is closed again: p = p_t + Δp V_b / V_t.
 * @param from m³ and Pa, above 0; the fall from 0
 * @returns Pa absolute
 * @throws OutsideRange outside those ranges and for NaN
 * @source ideal-gas
 * @example tankAfterFallPa({ bottleM3: 0.01, bottleFallPa: 15e3, ullageM3: 0.0064, tankPa: 101.3e3 }) // 124_738
 */
export function tankAfterFallPa(from: {
  readonly bottleM3: number;
  readonly bottleFallPa: number;
  readonly ullageM3: number;
  readonly tankPa: number;
}): number {
  const { bottleM3, bottleFallPa, ullageM3, tankPa } = from;
  const source = 'ideal-gas';
  stayAboveZero({ quantity: 'volume of the bottle', value: bottleM3, unit: 'm³', source });
  stayAtLeastZero({ quantity: 'fall of the bottle', value: bottleFallPa, unit: 'Pa', source });
  stayAboveZero({ quantity: 'gas in the tank', value: ullageM3, unit: 'm³', source });
  stayAboveZero({ quantity: 'pressure of the tank', value: tankPa, unit: 'Pa', source });
  return tankPa + (bottleFallPa * bottleM3) / ullageM3;
}

/**
 * Whether a bottle may be opened to a tank, and what may be done if not.
 *
 * A rating that is missing blocks; there is no default. The end pressure is held against the lowest rating for the least
 * ullage that there may be, V − 2u: full of water the tank would take the bottle's pressure.
 * @param asked m³, Pa absolute; ratings in Pa over the cabin or absolute, with null for one that nobody told;
 *   `bottleFallPa` Pa, from 0, for a part charge
 * @throws OutsideRange for volumes and pressures that are not above 0, an ullage below 0, and NaN
 * @source ideal-gas; that a charge above the lowest rating is refused is the rule of this tool
 * @example chargeVerdict(asked).verdict // 'refused'
 */
export function chargeVerdict(asked: ChargeAsked): Charge {
  const { ratings, bottleRating, bottlePa, cabinPa } = asked;
  stayAboveZero({ quantity: 'pressure of the cabin', value: cabinPa, unit: 'Pa', source: 'ideal-gas' });
  stayVessels({ ...asked, ullageM3: asked.ullageM3.value });
  const all = bottleRating === undefined ? ratings : [...ratings, bottleRating];
  const missing = all.filter((rating) => limitOf(rating, cabinPa) === null);
  if (missing.length > 0 || ratings.length === 0) return { verdict: 'blocked', missing };
  const { limitPa, limitedBy } = lowestOf(ratings, cabinPa);
  const ownPa = bottleRating === undefined ? null : limitOf(bottleRating, cabinPa);
  if (bottleRating !== undefined && ownPa !== null && bottlePa > ownPa)
    return { verdict: 'bottle above its rating', limitPa: ownPa, limitedBy: bottleRating };
  const leastM3 = Math.max(0, asked.ullageM3.value - 2 * asked.ullageM3.u);
  const endPa = endOf(asked, asked.ullageM3.value);
  const highestEndPa = Math.max(endPa, endOf(asked, leastM3));
  const found = { endPa, highestEndPa, limitPa, limitedBy };
  if (highestEndPa <= limitPa) return { verdict: 'allowed', marginPa: limitPa - highestEndPa, ...found };
  return { verdict: 'refused', ...saferCharge(asked, { leastM3, limitPa }), ...found };
}

/** A part charge ends no higher than where the two would meet: by then nothing flows. */
function endOf(asked: ChargeAsked, ullageM3: number): number {
  const metPa = endPressurePa({ ...asked, ullageM3 });
  const { bottleFallPa } = asked;
  if (bottleFallPa === undefined || ullageM3 === 0) return metPa;
  return Math.min(metPa, tankAfterFallPa({ ...asked, bottleFallPa, ullageM3 }));
}

function saferCharge(
  { bottleM3, tankPa }: ChargeAsked,
  { leastM3, limitPa }: { readonly leastM3: number; readonly limitPa: number },
): Pick<Extract<Charge, { verdict: 'refused' }>, 'largestBottlePa' | 'partCharge'> {
  if (tankPa >= limitPa) return { largestBottlePa: null, partCharge: null };
  return {
    largestBottlePa: (limitPa * (bottleM3 + leastM3) - tankPa * leastM3) / bottleM3,
    partCharge: { stopTankAtPa: limitPa, bottleFallPa: ((limitPa - tankPa) * leastM3) / bottleM3 },
  };
}

/** Null where it is not told, or is no pressure. */
function limitOf({ overCabinPa, absolutePa }: Rating, cabinPa: number): number | null {
  const told = [
    absolutePa ?? null,
    overCabinPa === undefined || overCabinPa === null ? null : cabinPa + overCabinPa,
  ];
  const limits = told.filter((limit) => limit !== null);
  if (limits.length === 0 || limits.some((limit) => !(limit > 0 && Number.isFinite(limit)))) return null;
  return Math.min(...limits);
}

function lowestOf(ratings: readonly Rating[], cabinPa: number): Limit {
  let lowest: Limit | null = null;
  for (const rating of ratings) {
    const limitPa = limitOf(rating, cabinPa) as number;
    if (lowest === null || limitPa < lowest.limitPa) lowest = { limitPa, limitedBy: rating };
  }
  return lowest as Limit;
}

function stayVessels(of: {
  readonly bottleM3: number;
  readonly bottlePa: number;
  readonly ullageM3: number;
  readonly tankPa: number;
}): void {
  const source = 'ideal-gas';
  stayAboveZero({ quantity: 'volume of the bottle', value: of.bottleM3, unit: 'm³', source });
  stayAboveZero({ quantity: 'pressure of the bottle', value: of.bottlePa, unit: 'Pa', source });
  stayAtLeastZero({ quantity: 'gas in the tank', value: of.ullageM3, unit: 'm³', source });
  stayAboveZero({ quantity: 'pressure of the tank', value: of.tankPa, unit: 'Pa', source });
}
