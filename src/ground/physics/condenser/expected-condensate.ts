// How much condensate an interval should bring, with its doubt, and by how much what was collected falls short of it.
import { stayWithin } from '../stay-within.ts';

/** One thing that puts water into the air, or takes it out past the condenser; below 0 it takes out. */
export interface CondensatePart {
  /** People, rest day, known leak, change of the air … */
  readonly name: string;
  readonly kg: number;
  /** One standard deviation, kg. */
  readonly u: number;
}

export interface ExpectedCondensate {
  readonly kg: number;
  readonly u: number;
  readonly parts: readonly CondensatePart[];
}

/** More than this a day is a slip of a unit. Ours, no source. */
const MOST_KG = 1e9;

function holdFigure(name: string, kg: number): void {
  stayWithin({
    quantity: name,
    value: kg,
    unit: 'kg',
    low: -MOST_KG,
    high: MOST_KG,
    source: 'water-balance',
  });
}

function holdDoubt(name: string, u: number): void {
  stayWithin({ quantity: `doubt of ${name}`, value: u, unit: 'kg', low: 0, high: MOST_KG, source: 'gum' });
}

/**
 * What the condensers should collect: the sum of all that goes into the air less what stays in it or leaves it otherwise,
 * m = Σ m_i, u² = Σ u_i². The parts must not depend on each other; what does, hand in as one part with its own doubt.
 * @param parts kg and u, both finite, u from 0 on; water that does not reach a condenser is left out by whoever makes the parts
 * @throws OutsideRange for figures that are none and for a u below 0
 * @source water-balance; gum (5.1.2)
 * @example expectedCondensate([{ name: 'people', kg: 6.8, u: 0.27 }, { name: 'air', kg: -0.1, u: 0.07 }]).kg // 6.7
 */
export function expectedCondensate(parts: readonly CondensatePart[]): ExpectedCondensate {
  let [kg, variance] = [0, 0];
  for (const part of parts) {
    holdFigure(part.name, part.kg);
    holdDoubt(part.name, part.u);
    kg += part.kg;
    variance += part.u * part.u;
  }
  return { kg, u: Math.sqrt(variance), parts };
}

export interface Shortfall {
  /** Expected less collected: above 0, water is missing or went elsewhere. */
  readonly kg: number;
  readonly u: number;
  readonly u95: number;
  /** Nothing is missing as far as one can tell: 0 lies within the ±. */
  readonly holdsZero: boolean;
}

/**
 * The shortfall of an interval: expected − collected, u² = u_expected² + u_collected², u95 = 2 u.
 * @param expected see `expectedCondensate` · `collected` kg and u from 0 on
 * @throws OutsideRange for figures that are none and for a u below 0
 * @source gum (5.1.2, G.1)
 * @example condensateShortfall({ kg: 6.8, u: 0.27 }, { kg: 5.1, u: 0.07 }).u95 // 0.56
 */
export function condensateShortfall(
  expected: { readonly kg: number; readonly u: number },
  collected: { readonly kg: number; readonly u: number },
): Shortfall {
  const kg = expected.kg - collected.kg;
  const u = Math.sqrt(expected.u * expected.u + collected.u * collected.u);
  holdFigure('expected less collected', kg);
  holdDoubt('what was expected', expected.u);
  holdDoubt('what was collected', collected.u);
  return { kg, u, u95: 2 * u, holdsZero: Math.abs(kg) <= 2 * u };
}

/**
 * The shortfalls of several intervals, and their sum: errors that all intervals share (the learned rate of the people) add up
 * in full, the rest in quadrature.
 * @param intervals each with its own `u` and the part `sharedU` of it that it shares with the others, kg
 * @throws OutsideRange where a shared part is greater than the whole, and for figures that are none
 * @source gum (5.2.2, correlation 1 for the shared part)
 * @example shortfallSum([{ kg: 1.7, u: 0.3, sharedU: 0.1 }, { kg: 3.4, u: 0.3, sharedU: 0.1 }]).u // 0.45
 */
export function shortfallSum(
  intervals: readonly { readonly kg: number; readonly u: number; readonly sharedU: number }[],
): Shortfall {
  let [kg, own, shared] = [0, 0, 0];
  for (const interval of intervals) {
    const ownVariance = interval.u * interval.u - interval.sharedU * interval.sharedU;
    if (!(Number.isFinite(interval.kg) && interval.sharedU >= 0 && ownVariance >= -1e-12))
      throw new RangeError(
        `no shortfall: ${interval.kg} kg, u ${interval.u} of it shared ${interval.sharedU}`,
      );
    kg += interval.kg;
    own += Math.max(0, ownVariance);
    shared += interval.sharedU;
  }
  const u = Math.sqrt(own + shared * shared);
  return { kg, u, u95: 2 * u, holdsZero: Math.abs(kg) <= 2 * u };
}
