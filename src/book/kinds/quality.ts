// Kinds about what water is fit for: samples, results, holds and every way out of one.
import * as z from 'zod';
import { amount, massMg, placeName } from './amount.ts';

const text = z.string().min(1).max(1000);
const stores = z.array(placeName).min(1).max(10_000);
/** Parameter name to value in the unit that the outpost file gives it; `below` for a result under the detection limit. */
const values = z
  .array(
    z.strictObject({
      parameter: placeName,
      value: z.number().min(0),
      unit: placeName,
      below: z.boolean().exactOptional(),
    }),
  )
  .max(100);

export const sample = z.strictObject({
  store: placeName,
  sample: placeName,
  tests: z.array(placeName).max(50),
  volumeMg: massMg.exactOptional(),
  /** Where it was drawn, when not from the contents. */
  drawnFrom: text.exactOptional(),
});
export const result = z.strictObject({
  sample: placeName,
  store: placeName.exactOptional(),
  point: placeName.exactOptional(),
  values,
  /** Words of the person who read it, kept as they are; the account judges by the limits. */
  verdict: text.exactOptional(),
});
export const hold = z.strictObject({
  hold: placeName,
  stores,
  /** Touched by the same water, for emergency use only. */
  conditional: z.array(placeName).max(10_000),
  reason: text,
  /** What else was said of it, such as why a store is conditional. */
  also: text.exactOptional(),
});
/** Without a hold: from any hold that the stores are on. */
export const release = z.strictObject({
  hold: placeName.exactOptional(),
  stores,
  values,
  untilDay: z.int().exactOptional(),
});
export const waiver = z.strictObject({ hold: placeName, stores, reason: text, untilDay: z.int() });
export const downgrade = z.strictObject({
  hold: placeName.exactOptional(),
  store: placeName,
  fromGrade: placeName,
  toGrade: placeName,
  values,
});
export const treatment = z.strictObject({
  store: placeName,
  recipe: text,
  toGrade: placeName,
  dose: amount.exactOptional(),
});
/** Biocide added to one or more stores. */
export const dose = z.strictObject({
  stores,
  biocide: placeName,
  doseEach: amount,
  targetMgPerL: z.number().min(0).exactOptional(),
});
export const relabel = z.strictObject({
  store: placeName,
  fromLabel: placeName,
  toGrade: placeName,
  twoPersons: z.boolean(),
  photo: placeName.exactOptional(),
});
/** Labels or a leak checked before a transfer. */
export const check = z.strictObject({
  what: z.enum(['labels', 'leak']),
  ok: z.boolean(),
  visit: placeName.exactOptional(),
  hose: placeName.exactOptional(),
  items: z.array(text).max(200),
  pressureKPaAbs: z.number().positive().exactOptional(),
  holdMinutes: z.number().positive().exactOptional(),
  dropKPa: z.number().exactOptional(),
});
