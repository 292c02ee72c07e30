// Holm with a hygrometer and a thermometer, and with norms by which the cabin air and its people balance.
import { changed } from '../outpost/small-outpost.ts';
import { HOLM } from './holm.ts';
import { dayLine } from './told.ts';

/** Litres a day that people give off as vapour by the norm: 2 people of 1.7 L. */
export const VAPOUR_L_A_DAY = 3.4;

/** What is drunk (2.7), eaten (0.15) and made (0.35) leaves as urine (1.5) and vapour (1.7): litres a person and day. */
export const AIRY_HOLM = changed(
  '  vapourCollectedLPerPersonDay: 1.7\n',
  '  vapourCollectedLPerPersonDay: 1.7\n  vapourBetweenDaysRelative: 0.035\n  waterInFoodLPerPersonDay: 0.15\n  metabolicWaterLPerPersonDay: 0.35\n',
  changed(
    'units:\n',
    `  - { id: humidity, measures: humidity, unit: '%', random: { absolute: 1.5 }, calibration: { absolute: 2 }, reading: spot }
  - { id: cabin-temperature, measures: temperature, unit: °C, random: { absolute: 0.25 }, calibration: { absolute: 0.2 }, reading: spot }
units:
`,
    HOLM,
  ),
);

/** The line of a day on which the condenser collected so much in all since the opening at 990 L. */
export function airyLine(
  day: number,
  told: { readonly condensateL: number; readonly percent?: number | null; readonly strokes?: number | null },
) {
  const { condensateL, percent = 50, strokes = 216 } = told;
  const condensate = Number(((990 + condensateL) % 1000).toFixed(2));
  const spots = { humidity: percent, 'cabin-temperature': percent === null ? null : 20 };
  return dayLine(day, { condensate, product: 3, strokes, flushes: 12, ...spots });
}
