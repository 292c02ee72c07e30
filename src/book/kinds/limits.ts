// Kinds about the limits that an outpost chooses: sets of rows, and figures that somebody typed from a copy of a rule.
import * as z from 'zod';
import { placeName } from './amount.ts';

const text = z.string().max(4000);
const figures = z.strictObject({
  atLeast: z.number().min(0).exactOptional(),
  atMost: z.number().min(0).exactOptional(),
});

/** A row as it was when it was chosen: what a book is judged by stands in the book. */
const row = z.strictObject({
  id: placeName,
  parameter: placeName,
  basis: placeName,
  unit: placeName,
  limit: figures.nullable(),
  remembered: figures.nullable(),
  evidence: z.enum(['seen', 'quoted', 'memory', 'policy']),
  exposure: z.enum(['any', 'lifetime', '1 d', '10 d', '100 d', '1000 d']),
  source: text,
  locator: text,
  cause: text,
  consequence: text,
  firstAct: text,
  timeToActH: z.number().positive().nullable(),
  requiredFor: z.array(placeName).max(100),
  neededOf: z.enum(['every store', 'product']),
  degassed: z.boolean(),
  noneIfBelow: z.number().positive().nullable(),
  duplicatesWithinShare: z.number().min(0).nullable(),
  note: text,
  typed: z.strictObject({ by: text, copy: text, atMs: z.int() }).nullable(),
});

/** Which sets bear on release from now on, with every row that is required of them. */
export const limitsChosen = z.strictObject({
  sets: z
    .array(z.strictObject({ set: placeName, name: text, rows: z.array(row).max(2000) }))
    .min(1)
    .max(50),
  /** For how many days people will drink the water. */
  exposureDays: z.number().positive(),
  reason: z.string().min(1).max(1000),
});

/** The figure of a row that was off, as it stands in somebody's own copy. */
export const limitTyped = z.strictObject({
  set: placeName,
  row: placeName,
  atLeast: z.number().min(0).exactOptional(),
  atMost: z.number().min(0).exactOptional(),
  unit: placeName,
  basis: placeName,
  copy: z.string().min(1).max(1000),
});
