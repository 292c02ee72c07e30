// Shapes of what a page needs to ask somebody: the form of the day line, the form of a kind, names and units.
import * as z from 'zod';
import type { BookNames, DayForm, KindField } from '../../../desk/index.ts';

const texts = z.array(z.string());

export const dayFormShape = z.strictObject({
  day: z.int(),
  lineAtMs: z.int(),
  peopleAboard: z.number(),
  items: z.array(
    z.strictObject({
      instrument: z.string(),
      name: z.string(),
      unit: z.string(),
      last: z.number().nullable(),
      low: z.number().nullable(),
      high: z.number().nullable(),
      resolution: z.number().nullable(),
    }),
  ),
}) satisfies z.ZodType<DayForm>;

const kindField = z.strictObject({
  name: z.string(),
  key: z.string(),
  takes: z.string(),
  needed: z.boolean(),
}) satisfies z.ZodType<KindField>;

export const kindFormShape = z.strictObject({
  kind: z.string(),
  fields: z.array(kindField),
});

export const namesShape = z.strictObject({
  stores: texts,
  ports: texts,
  units: texts,
  grades: texts,
  hoses: texts,
  instruments: texts,
  offices: texts,
  parts: texts,
  places: texts,
}) satisfies z.ZodType<BookNames>;

export const unitsShape = z.strictObject({
  units: z.array(
    z.strictObject({
      name: z.string().describe('as it is written in data'),
      sign: z.string().describe('as it is shown'),
      dimension: z.string(),
      alsoWritten: texts,
    }),
  ),
});
