// What every formula of gas asks of its figures.
import { OPEN_END, OutsideRange } from '../outside-range.ts';

const SOURCE = 'boyle-polytropic';

/** Refuses a pressure, volume or temperature that is not above 0, infinity and NaN. */
export function mustBeAbove0(quantity: string, value: number, unit: string): void {
  if (!(value > 0 && Number.isFinite(value)))
    throw new OutsideRange({ quantity, value, unit, low: 0, high: OPEN_END, source: SOURCE });
}

/** Refuses a volume that is below 0, infinity and NaN. */
export function mustBeAtLeast0(quantity: string, value: number, unit: string): void {
  if (!(value >= 0 && Number.isFinite(value)))
    throw new OutsideRange({ quantity, value, unit, low: 0, high: OPEN_END, source: SOURCE });
}

/** Refuses an exponent that no expansion of air between warm and heatless has. */
export function mustBeExponent(exponent: number, high: number): void {
  if (!(exponent >= 1 && exponent <= high))
    throw new OutsideRange({
      quantity: 'polytropic exponent',
      value: exponent,
      unit: '',
      low: 1,
      high,
      source: SOURCE,
    });
}
