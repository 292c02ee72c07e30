// Shapes of limits and of what a choice of them does; held against the types of the papers by the compiler.
import * as z from 'zod';
import type {
  LimitLine,
  LimitSetLine,
  LimitSetLines,
  LimitSetSheet,
  LimitSetsSheet,
  LimitSides,
  LimitsChosenSheet,
  LimitsEffect,
  LimitsSheet,
  LimitTypedSheet,
} from '../../../papers/index.ts';
import { figure, finding, head } from './figures.ts';

const names = z.array(z.string());
const maybeText = z.string().nullable();

const sides = z.strictObject({
  atLeast: z.number().exactOptional(),
  atMost: z.number().exactOptional(),
}) satisfies z.ZodType<LimitSides>;

const limitRow = z
  .strictObject({
    id: z.string(),
    parameter: z.string(),
    unit: z.string(),
    basis: z.string(),
    limit: sides.nullable().describe('null while the row is off: no limit set, hold'),
    remembered: sides.nullable().describe('from memory, judged by nobody'),
    exposure: z.string(),
    evidence: z.enum(['seen', 'quoted', 'memory', 'policy']),
    source: z.string(),
    locator: z.string(),
    cause: z.string(),
    consequence: z.string(),
    firstAct: z.string(),
    timeToActH: z.number().nullable(),
    requiredFor: names,
    neededOf: z.enum(['every store', 'product']),
    degassed: z.boolean(),
    note: z.string(),
    typed: z.strictObject({ by: z.string(), copy: z.string(), at: z.string() }).nullable(),
  })
  .meta({ id: 'LimitRow' }) satisfies z.ZodType<LimitLine>;

const limitSet = z
  .strictObject({ id: z.string(), name: z.string(), what: z.string(), uses: names, rows: z.array(limitRow) })
  .meta({ id: 'LimitSet' }) satisfies z.ZodType<LimitSetLines>;

const setFields = {
  id: z.string(),
  name: z.string(),
  rows: z.int(),
  on: z.int().describe('rows with a figure'),
  off: z.int().describe('rows without one'),
  required: z.int().describe('rows that bear on release now'),
  from: z.enum(['outpost file', 'program', 'book']),
};

export const limitsSheet = z.strictObject({
  head,
  sets: z.array(limitSet),
  exposureDays: z.number().nullable(),
  chosen: z
    .strictObject({ ref: z.string(), id: z.string(), by: z.string(), at: z.string(), reason: z.string() })
    .nullable()
    .describe('null: nobody has chosen, and the outpost file counts'),
  findings: z.array(finding),
}) satisfies z.ZodType<LimitsSheet>;

const setLine = z.strictObject(setFields) satisfies z.ZodType<LimitSetLine>;

export const limitSetsSheet = z.strictObject({ sets: z.array(setLine) }) satisfies z.ZodType<LimitSetsSheet>;

export const limitSetSheet = z.strictObject({
  ...setFields,
  set: limitSet,
  inForce: names.describe('ids of its rows that bear on release now'),
}) satisfies z.ZodType<LimitSetSheet>;

const placedRow = z.strictObject({ set: z.string(), row: z.string(), parameter: z.string() });

const effect = z
  .strictObject({
    holds: z.array(
      z.strictObject({
        store: z.string(),
        grade: maybeText,
        volume: figure,
        failed: names,
        already: z.boolean().describe('it waits already, for another reason'),
      }),
    ),
    held: figure,
    ends: names,
    grades: z.array(
      z.strictObject({
        grade: z.string(),
        freeBefore: figure,
        freeAfter: figure,
        coverBefore: z.number().nullable().describe('days, in 19 of 20 outcomes'),
        coverAfter: z.number().nullable(),
        off: z.array(placedRow),
        notMeasured: z.strictObject({ parameters: names, stores: names, volume: figure }).nullable(),
      }),
    ),
    clashes: z.array(
      z.strictObject({
        kind: z.enum(['dose-above', 'dose-below', 'no-water-meets-both', 'part-of-policy-fails']),
        set: z.string(),
        row: z.string(),
        grade: z.string(),
        biocide: z.string(),
        doseMgPerL: z.number().nullable(),
        rowMgPerL: sides,
        policyMgPerL: sides.nullable(),
        text: z.string(),
      }),
    ),
    noMore: z.array(placedRow),
  })
  .meta({ id: 'LimitsEffect' }) satisfies z.ZodType<LimitsEffect>;

const keptFields = {
  kept: z.boolean().describe('false: it was only tried'),
  ref: maybeText,
  id: maybeText,
  happened: z.string(),
  by: z.string(),
};

export const limitsChosenSheet = z.strictObject({
  ...keptFields,
  reason: maybeText,
  sets: z.array(limitSet).describe('all that bears on release after it'),
  asked: names,
  beside: z.boolean(),
  exposureDays: z.number().nullable(),
  effect,
  findings: z.array(finding),
}) satisfies z.ZodType<LimitsChosenSheet>;

export const limitTypedSheet = z.strictObject({
  ...keptFields,
  copy: z.string(),
  set: z.string(),
  setName: z.string(),
  row: limitRow,
  effect: effect.nullable().describe('null: the row is not required now'),
  findings: z.array(finding),
}) satisfies z.ZodType<LimitTypedSheet>;
