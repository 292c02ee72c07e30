// How surely a result is known: by what the outpost file says of the instrument that tells the parameter.
import type { Instrument, OutpostIndex } from '../../outpost/index.ts';

/** A result as a fit takes it: the logarithm of what was read, or of the limit that it lies below. */
export interface LogRow {
  readonly log: number;
  /** One standard deviation of the logarithm, of what is new at every reading. */
  readonly u: number;
  readonly below: boolean;
  readonly exposureDaysPerM: number;
}

/** The instrument that tells a parameter; the first one that the file names. */
export function instrumentFor({ outpost }: OutpostIndex, parameter: string): Instrument | null {
  return (
    outpost.instruments.find(
      ({ measures, quantity, unit }) => measures === 'quality' && quantity === parameter && unit === 'mg/L',
    ) ?? null
  );
}

/**
 * One standard deviation of a reading, in its own unit, without what repeats at every reading: that moves all results alike
 * and changes no rate. Null where the file tells nothing of it.
 */
export function readingU(
  { random, resolution, statedDoubt }: Pick<Instrument, 'random' | 'resolution' | 'statedDoubt'>,
  value: number,
): number | null {
  const absolute = random?.absolute ?? statedDoubt ?? 0;
  const relative = (random?.relative ?? 0) * value;
  const steps = resolution ?? 0;
  const square = absolute * absolute + relative * relative + (steps * steps) / 12;
  return square > 0 ? Math.sqrt(square) : null;
}
