// How much to dose, always with the concentration that comes of it, and held against the maximum of the outpost.
import { OutsideRange } from '../outside-range.ts';
import { stayAboveZero, stayShareAboveZero } from '../stay-within.ts';
import { checkConcentration, checkSolution, mixedSolution, type Solution } from './mixing.ts';

const SOURCE = 'mass-balance';

/** `no-maximum`: the outpost's file names none, and that is no permission. */
export type DoseVerdict = 'within' | 'above-maximum' | 'no-maximum';

export interface Dosed {
  /** Of what is dosed. */
  readonly doseMassKg: number;
  /** What the water holds afterwards. */
  readonly resultKgPerM3: number;
  /** As the caller gave it. */
  readonly greatestKgPerM3: number | null;
  readonly verdict: DoseVerdict;
}

export interface DosedWithStock extends Dosed {
  readonly stockVolumeM3: number;
  /** Water and stock solution together. */
  readonly volumeAfterM3: number;
}

interface Maximum {
  /** The outpost's maximum, kg/m³; null where its file names none. */
  readonly greatestKgPerM3: number | null;
}

/**
 * How much of a stock solution brings water to a concentration: V_s = V (c_t − c) / (c_s − c_t).
 * @param asked `water` its volume and what it holds already; `wantedKgPerM3` from what it holds to below the stock;
 *   `stockKgPerM3` of the stock solution; `greatestKgPerM3` the maximum of the outpost, null where it has none
 * @returns the dose, what comes of it, and the verdict; a verdict other than `within` is for the caller to refuse
 * @throws OutsideRange where stock cannot bring it about, for values below zero and NaN
 * @source mass-balance
 * @example stockForTarget({ water: { volumeM3: 0.02, concentrationKgPerM3: 3e-5 }, wantedKgPerM3: 2e-4, stockKgPerM3: 0.4,
 *   greatestKgPerM3: 4e-4 }).stockVolumeM3 * 1e6 // 8.504 mL
 */
export function stockForTarget(
  asked: {
    readonly water: Solution;
    readonly wantedKgPerM3: number;
    readonly stockKgPerM3: number;
  } & Maximum,
): DosedWithStock {
  const { water, wantedKgPerM3, stockKgPerM3, greatestKgPerM3 } = asked;
  checkSolution(water);
  checkConcentration('concentration of the stock solution', stockKgPerM3);
  const isBetween = wantedKgPerM3 >= water.concentrationKgPerM3 && wantedKgPerM3 < stockKgPerM3;
  if (!isBetween) throw notBetween(wantedKgPerM3, water.concentrationKgPerM3, stockKgPerM3);
  const stockVolumeM3 =
    (water.volumeM3 * (wantedKgPerM3 - water.concentrationKgPerM3)) / (stockKgPerM3 - wantedKgPerM3);
  return resultOfStock({ water, stockVolumeM3, stockKgPerM3, greatestKgPerM3 });
}

/**
 * What comes of so much stock solution: c = (c V + c_s V_s) / (V + V_s).
 * @param given `water`, `stockVolumeM3` m³ and `stockKgPerM3` kg/m³ of the stock; `greatestKgPerM3` the maximum of the outpost or null
 * @throws OutsideRange for values below zero and NaN
 * @source mass-balance
 * @example resultOfStock({ water: { volumeM3: 0.02, concentrationKgPerM3: 3e-5 }, stockVolumeM3: 1e-5, stockKgPerM3: 0.4,
 *   greatestKgPerM3: null }).resultKgPerM3 * 1000 // 0.2299 mg/L
 */
export function resultOfStock(
  given: {
    readonly water: Solution;
    readonly stockVolumeM3: number;
    readonly stockKgPerM3: number;
  } & Maximum,
): DosedWithStock {
  const { water, stockVolumeM3, stockKgPerM3, greatestKgPerM3 } = given;
  const mixture = mixedSolution([water, { volumeM3: stockVolumeM3, concentrationKgPerM3: stockKgPerM3 }]);
  return {
    stockVolumeM3,
    volumeAfterM3: mixture.volumeM3,
    doseMassKg: stockVolumeM3 * stockKgPerM3,
    ...judged(mixture.concentrationKgPerM3, greatestKgPerM3),
  };
}

/**
 * How much of a salt or powder brings water to a concentration of what counts in it: m = V (c_t − c) / purity.
 *
 * Its own volume is left out: a gram in twenty litres.
 * @param asked `water`; `wantedKgPerM3` from what the water holds on; `purity` the share of the powder that counts, above 0 up to
 *   1 (silver in silver nitrate: `massShare('AgNO3', 'Ag')`); `greatestKgPerM3` the maximum of the outpost or null
 * @throws OutsideRange where the water already holds more, for values below zero and NaN
 * @source mass-balance
 * @example saltForTarget({ water: { volumeM3: 0.02, concentrationKgPerM3: 0 }, wantedKgPerM3: 0.05, purity: 0.5,
 *   greatestKgPerM3: null }).doseMassKg * 1000 // 2 g
 */
export function saltForTarget(
  asked: { readonly water: Solution; readonly wantedKgPerM3: number; readonly purity: number } & Maximum,
): Dosed {
  const { water, wantedKgPerM3, purity, greatestKgPerM3 } = asked;
  checkSolution(water);
  checkConcentration('concentration wanted', wantedKgPerM3);
  stayShareAboveZero({ quantity: 'share of the powder that counts', value: purity, source: SOURCE });
  if (wantedKgPerM3 < water.concentrationKgPerM3)
    throw notBetween(wantedKgPerM3, water.concentrationKgPerM3, Number.POSITIVE_INFINITY);
  const doseMassKg = (water.volumeM3 * (wantedKgPerM3 - water.concentrationKgPerM3)) / purity;
  return { doseMassKg, ...judged(wantedKgPerM3, greatestKgPerM3) };
}

/**
 * How much thinner water brings water down to a concentration: V_d = V (c − c_t) / (c_t − c_d).
 * @param asked `water`; `wantedKgPerM3` above the thinner water's, up to what the water holds; `thinnerKgPerM3` of the thinner water
 * @returns m³ of the thinner water
 * @throws OutsideRange where it cannot bring that about, for values below zero and NaN
 * @source mass-balance
 * @example waterToDiluteM3({ water: { volumeM3: 0.02, concentrationKgPerM3: 4e-4 }, wantedKgPerM3: 2e-4, thinnerKgPerM3: 0 }) // 0.02
 */
export function waterToDiluteM3(asked: {
  readonly water: Solution;
  readonly wantedKgPerM3: number;
  readonly thinnerKgPerM3: number;
}): number {
  const { water, wantedKgPerM3, thinnerKgPerM3 } = asked;
  checkSolution(water);
  checkConcentration('concentration of the thinner water', thinnerKgPerM3);
  const isBetween = wantedKgPerM3 > thinnerKgPerM3 && wantedKgPerM3 <= water.concentrationKgPerM3;
  if (!isBetween) throw notBetween(wantedKgPerM3, thinnerKgPerM3, water.concentrationKgPerM3);
  return (water.volumeM3 * (water.concentrationKgPerM3 - wantedKgPerM3)) / (wantedKgPerM3 - thinnerKgPerM3);
}

/** How near a power of ten counts as one: 8 to 12.5 times. */
const NEAR = 1.25;

/**
 * Whether a dose is off by a power of ten: 1 where ten times what is needed was given, −1 a tenth, 3 a litre for a millilitre.
 *
 * The common slip of a dose. It is null where the dose is about right or off by another factor.
 * @param dose `needed` and `given`, in one unit, above 0
 * @returns the power of ten, or null
 * @throws OutsideRange for what is not above zero
 * @source trade-practice
 * @example slipOfTen({ needed: 8.5, given: 85 }) // 1
 */
export function slipOfTen(dose: { readonly needed: number; readonly given: number }): number | null {
  const { needed, given } = dose;
  stayAboveZero({ quantity: 'dose that is needed', value: needed, unit: 'of its unit', source: SOURCE });
  stayAboveZero({ quantity: 'dose that is given', value: given, unit: 'of its unit', source: SOURCE });
  const up = given > needed;
  let ratio = up ? given / needed : needed / given;
  for (let power = 0; power <= 12; power += 1) {
    if (ratio <= NEAR) return power === 0 || ratio < 1 / NEAR ? null : up ? power : -power;
    ratio /= 10;
  }
  return null;
}

function judged(
  resultKgPerM3: number,
  greatestKgPerM3: number | null,
): Pick<Dosed, 'resultKgPerM3' | 'greatestKgPerM3' | 'verdict'> {
  if (greatestKgPerM3 === null) return { resultKgPerM3, greatestKgPerM3, verdict: 'no-maximum' };
  checkConcentration('maximum of the outpost', greatestKgPerM3);
  return {
    resultKgPerM3,
    greatestKgPerM3,
    verdict: resultKgPerM3 <= greatestKgPerM3 ? 'within' : 'above-maximum',
  };
}

function notBetween(value: number, low: number, high: number): OutsideRange {
  return new OutsideRange({
    quantity: 'concentration wanted, that can be brought about',
    value,
    unit: 'kg/m³',
    low,
    high,
    source: SOURCE,
  });
}
