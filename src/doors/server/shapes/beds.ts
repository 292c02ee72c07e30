// Shapes of the sheets of the purifier beds; each is held against the type of the papers by the compiler.
import * as z from 'zod';
import type { BedLine, BedSheet, BedsSheet } from '../../../papers/index.ts';
import { figure, finding, head } from './figures.ts';

const day = z.strictObject({ day: z.number(), at: z.string() }).nullable();
const dates = z
  .strictObject({ q10: day, q50: day, q90: day })
  .describe('P10, P50 and P90; null beyond two years');
const band = { q10: z.number(), q50: z.number(), q90: z.number(), unit: z.string() };
const spares = z.strictObject({ part: z.string(), count: z.number() }).nullable();

const bedLine = z
  .strictObject({
    id: z.string(),
    unit: z.string(),
    position: z.string(),
    used: figure,
    life: figure,
    usedPercent: z.strictObject({ value: z.number(), low: z.number(), high: z.number() }),
    since: z.strictObject({
      begun: z.enum(['opening', 'outpost file', 'change']),
      day: z.int(),
      at: z.string(),
    }),
    dates: dates.nullable(),
    by: z.string().nullable().describe('the quantity whose limit is met first'),
  })
  .meta({ id: 'BedLine' }) satisfies z.ZodType<BedLine>;

export const bedsSheet = z.strictObject({
  head,
  beds: z.array(bedLine),
  spares,
  findings: z.array(finding),
}) satisfies z.ZodType<BedsSheet>;

const parameter = z.strictObject({
  parameter: z.string(),
  unit: z.string(),
  limit: z.number(),
  readings: z.int(),
  last: z.strictObject({ value: z.number(), below: z.boolean(), day: z.int(), ref: z.string() }).nullable(),
  moves: z.enum(['too few readings', 'flat', 'rising', 'falling']),
  perDay: figure.nullable(),
  wayPercent: z.number().nullable().describe('part of the way to the limit that it went'),
  limitAt: figure,
  left: z.strictObject(band).nullable(),
  dates: dates.nullable(),
});

const advice = z.strictObject({
  verdict: z.enum(['no trend', 'wait', 'read sooner', 'change now', 'no dates']),
  parameter: z.string().nullable(),
  dates: dates.nullable(),
  nextReadingDay: z.int().nullable(),
  spares,
  visit: z.strictObject({ visit: z.string(), day: z.int() }).nullable(),
  texts: z.array(z.string()),
});

const reading = z.strictObject({
  ref: z.string(),
  id: z.string(),
  stamp: z.string(),
  day: z.number(),
  at: z.string(),
  parameter: z.string(),
  value: z.number(),
  u95: z.number(),
  unit: z.string(),
  below: z.boolean().describe('nothing was found; the value is the detection limit'),
  throughputL: z.number(),
  of: z.enum(['these beds', 'beds before', 'mixed water']),
});

export const bedSheet = z.strictObject({
  head,
  bed: bedLine,
  parameters: z.array(parameter),
  advice: advice.nullable(),
  causes: z
    .array(
      z.strictObject({
        cause: z.string(),
        evidence: z.array(z.strictObject({ side: z.enum(['for', 'against', 'open']), text: z.string() })),
      }),
    )
    .describe('the best supported first; the order is no probability'),
  feed: z
    .strictObject({
      perDay: figure,
      basis: z.enum(['learned', 'norm']),
      people: z.array(z.strictObject({ day: z.int(), people: z.number() })),
      load: figure.nullable(),
    })
    .nullable(),
  readings: z.array(reading),
  changes: z.array(
    z.strictObject({
      day: z.number(),
      at: z.string(),
      ref: z.string(),
      reckonedL: z.number(),
      toldL: z.number().nullable(),
    }),
  ),
  plot: z
    .strictObject({
      parameter: z.string(),
      unit: z.string(),
      limit: z.number(),
      curve: z.array(
        z.strictObject({
          ...band,
          day: z.number(),
          at: z.string(),
          throughputL: z.number(),
          throughputU95L: z.number(),
          isAhead: z.boolean(),
        }),
      ),
    })
    .nullable(),
  findings: z.array(finding),
}) satisfies z.ZodType<BedSheet>;
