// What every formula of gas asks of its figures.
import { stayAboveZero, stayAtLeastZero, stayWithin } from '../stay-within.ts';

const SOURCE = 'boyle-polytropic';

/** Refuses a pressure, volume or temperature that is not above 0, infinity and NaN. */
export function mustBeAbove0(quantity: string, value: number, unit: string): void {
  stayAboveZero({ quantity, value, unit, source: SOURCE });
}

/** Refuses what is below 0, infinity and NaN. */
export function mustBeAtLeast0(quantity: string, value: number, unit: string): void {
  stayAtLeastZero({ quantity, value, unit, source: SOURCE });
}

/** Refuses an exponent that no expansion of the gas between warm and heatless has. */
export function mustBeExponent(exponent: number, high: number): void {
  stayWithin({ quantity: 'polytropic exponent', value: exponent, unit: '', low: 1, high, source: SOURCE });
}
