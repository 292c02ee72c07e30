// Shapes of figures and findings in answers; each is held against the type of the papers by the compiler.
import * as z from 'zod';
import type { Because, SheetFigure, SheetHead, WordedFinding } from '../../../papers/index.ts';

const texts = z.array(z.string());

export const because = z.strictObject({
  entries: texts.describe('ids of the entries that it rests on'),
  method: z.string(),
  inputs: z.array(
    z.strictObject({
      name: z.string(),
      value: z.union([z.number(), z.string(), z.null()]),
      unit: z.string(),
    }),
  ),
}) satisfies z.ZodType<Because>;

export const figure = z
  .strictObject({
    value: z.number(),
    u95: z.number().nullable().describe('half of the interval of 95 %; null where nobody knows it'),
    unit: z.string(),
    because,
  })
  .meta({ id: 'Figure' }) satisfies z.ZodType<SheetFigure>;

export const finding = z
  .strictObject({
    code: z.string(),
    severity: z.enum(['error', 'act-now', 'act-today', 'know']),
    where: z.strictObject({
      file: z.string().exactOptional(),
      line: z.int().exactOptional(),
      column: z.int().exactOptional(),
      entry: z.string().exactOptional(),
      store: z.string().exactOptional(),
      field: z.string().exactOptional(),
    }),
    entries: texts,
    text: z.string(),
    expected: z.string(),
    received: z.string(),
    remedy: z.string(),
  })
  .meta({ id: 'Finding' }) satisfies z.ZodType<WordedFinding>;

export const head = z
  .strictObject({
    outpost: z.string(),
    practice: z.boolean(),
    stamp: z.string(),
    day: z.int(),
    at: z.string().describe('ISO 8601, UTC'),
    view: z.enum(['now', 'as known at', 'as of']),
    closedToDay: z.int().nullable(),
    peopleAboard: z.number(),
    entries: z.int(),
  })
  .meta({ id: 'Head' }) satisfies z.ZodType<SheetHead>;
