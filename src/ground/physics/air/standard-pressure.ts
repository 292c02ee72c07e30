// The pressure of the open air at a height, for a place that has no barometer.
import { pow } from '../../maths/index.ts';
import { OutsideRange } from '../outside-range.ts';

/**
 * The pressure of the standard atmosphere: p = 101 325 (1 − 2.25577e-5 Z)^5.2559.
 *
 * The weather moves it by some 3 %. A cabin that is closed has a pressure of its own: read it.
 * @param altitudeM m above the sea, −5000 to 11 000
 * @returns Pa
 * @throws OutsideRange outside that range and for NaN
 * @source ashrae-fundamentals (chapter 1, equation 3)
 * @example standardPressurePa(500) // 95_460.8
 */
export function standardPressurePa(altitudeM: number): number {
  if (!(altitudeM >= -5000 && altitudeM <= 11_000))
    throw new OutsideRange({
      quantity: 'height above the sea',
      value: altitudeM,
      unit: 'm',
      low: -5000,
      high: 11_000,
      source: 'ashrae-fundamentals',
    });
  return 101_325 * pow(1 - 2.25577e-5 * altitudeM, 5.2559);
}
