// How many standard deviations hold a share of what may be true.
import { normalQuantile } from './normal-distribution.ts';
import { studentQuantile } from './student.ts';

/** From here on Student's distribution is the normal one to six digits of its quantiles. */
const MANY = 1e6;

/**
 * The coverage factor k: value ± k u holds the truth with the probability given.
 *
 * Student's t of the degrees cut off to a whole number; the normal distribution where they are infinite.
 * @param probability above 0 and below 1; degrees from 1, `Propagated.degrees`
 * @throws RangeError if the probability or the degrees are out of range
 * @source gum, G.3 and G.4.1
 * @example coverageFactor({ probability: 0.99, degrees: 16.7 }) // 2.9207…
 */
export function coverageFactor({
  probability,
  degrees = Number.POSITIVE_INFINITY,
}: {
  readonly probability: number;
  readonly degrees?: number;
}): number {
  if (!(probability > 0 && probability < 1))
    throw new RangeError(`a coverage probability is above 0 and below 1, not ${probability}`);
  if (!(degrees >= 1)) throw new RangeError(`degrees of freedom are from 1, not ${degrees}`);
  const upper = (1 + probability) / 2;
  return degrees > MANY
    ? normalQuantile(upper)
    : studentQuantile({ probability: upper, degrees: Math.floor(degrees) });
}
