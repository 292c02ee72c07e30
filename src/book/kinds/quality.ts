// Kinds about what water is fit for: samples, results, holds and every way out of one.
import * as z from 'zod';
import { amount, massMg, placeName } from './amount.ts';

const text = z.string().min(1).max(1000);
const stores = z.array(placeName).min(1).max(10_000);
/** Parameter name to value in the unit that it was told in; `below` is under the detection limit, `above` beyond the range of the method. */
const values = z
  .array(
    z.strictObject({
      parameter: placeName,
      value: z.number().min(0),
      unit: placeName,
      below: z.boolean().exactOptional(),
      above: z.boolean().exactOptional(),
      /** What the figure is told as, such as `as N`; left out where only one is meant. */
      basis: placeName.exactOptional(),
    }),
  )
  .max(100);

export const sample = z.strictObject({
  /** Left out for a sample at a point that no store stands behind. */
  store: placeName.exactOptional(),
  point: placeName.exactOptional(),
  sample: placeName,
  tests: z.array(placeName).max(50),
  volumeMg: massMg.exactOptional(),
  /** Where it was drawn, when not from the contents. */
  drawnFrom: text.exactOptional(),
  bottles: z.array(placeName).max(50).exactOptional(),
  batch: placeName.exactOptional(),
  /** The sample that it is a second one of. */
  duplicateOf: placeName.exactOptional(),
});
export const result = z.strictObject({
  sample: placeName,
  store: placeName.exactOptional(),
  point: placeName.exactOptional(),
  values,
  /** Words of the person who read it, kept as they are; the account judges by the limits. */
  verdict: text.exactOptional(),
  method: text.exactOptional(),
  madeAt: z.enum(['aboard', 'laboratory']).exactOptional(),
  /** When the sample was drawn, where it has no entry of its own; absent: when it was read. */
  takenAtMs: z.int().exactOptional(),
  /** Whether the chain from bottle to reading was kept; a broken one proves nothing. */
  custody: z.enum(['kept', 'broken']).exactOptional(),
  /** Not yet confirmed by who read it. */
  preliminary: z.boolean().exactOptional(),
  degassed: z.boolean().exactOptional(),
});
/** A result that the medic takes out of judgement, with the reason; it stays in the book. */
export const resultSetAside = z.strictObject({
  sample: placeName,
  parameter: placeName.exactOptional(),
  reason: text,
});
export const hold = z.strictObject({
  hold: placeName,
  stores,
  /** Touched by the same water, for emergency use only. */
  conditional: z.array(placeName).max(10_000),
  reason: text,
  /** What else was said of it, such as why a store is conditional. */
  also: text.exactOptional(),
  /** The sample whose result it rests on. */
  sample: placeName.exactOptional(),
  /** Stores that the trace of that sample proposed and somebody left free. */
  leftFree: z.array(placeName).max(10_000).exactOptional(),
});
/** Held water that somebody looks after until a day: it stays held. */
export const parked = z.strictObject({
  hold: placeName,
  owner: placeName,
  untilDay: z.int(),
  reason: text.exactOptional(),
});
/** Without a hold: from any hold that the stores are on. */
export const release = z.strictObject({
  hold: placeName.exactOptional(),
  stores,
  values,
  samples: z.array(placeName).max(100).exactOptional(),
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
