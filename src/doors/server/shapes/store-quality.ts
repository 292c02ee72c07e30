// Shape of what the book knows of the fitness of a store's water; held against the type of the papers by the compiler.
import * as z from 'zod';
import type { StoreQuality } from '../../../papers/index.ts';

const maybeText = z.string().nullable();
const texts = z.array(z.string());

export const storeQuality = z
  .strictObject({
    word: z.enum(['RELEASED', 'NOT RELEASED', 'HOLD', 'CONDITIONAL', 'WAIVED', '']),
    onWordOf: z.string().describe('own sample, made here, opening, loader’s certificate or none'),
    released: z
      .strictObject({
        by: z.string(),
        at: z.string(),
        samples: texts,
        until: maybeText.describe('null: without an end'),
        over: z.boolean(),
      })
      .nullable(),
    holds: z.array(
      z.strictObject({
        hold: z.string(),
        since: z.string(),
        reason: z.string(),
        failed: texts,
        parked: z.strictObject({ owner: z.string(), until: z.string() }).nullable(),
      }),
    ),
    conditional: z.strictObject({ hold: z.string(), since: z.string(), reason: z.string() }).nullable(),
    waived: z.array(
      z.strictObject({
        hold: z.string(),
        by: z.string(),
        second: maybeText,
        reason: z.string(),
        until: z.string(),
      }),
    ),
    treated: z
      .strictObject({ at: z.string(), biocide: maybeText, countsFrom: z.string() })
      .nullable()
      .describe('biocide null: by a recipe of the outpost'),
    downgraded: z
      .strictObject({ at: z.string(), by: z.string(), fromGrade: z.string(), ref: z.string() })
      .nullable(),
    words: texts,
    entries: texts,
  })
  .meta({ id: 'StoreQuality' }) satisfies z.ZodType<StoreQuality>;
