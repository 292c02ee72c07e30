// Shapes of tables that were imported and of lines that wait; held against the types of the papers by the compiler.
import * as z from 'zod';
import type { DroppedSheet, InboxLine, InboxSheet, TableSheet, TakenSheet } from '../../../papers/index.ts';
import { finding } from './figures.ts';

const maybeText = z.string().nullable();

export const inboxLine = z
  .strictObject({
    ref: z.string().describe('site and number; in an address corrie:34'),
    id: z.string(),
    file: z.string(),
    line: z.int().nullable(),
    since: z.string(),
    by: z.string(),
    cells: z.array(z.strictObject({ heading: z.string(), cell: z.string(), means: z.string() })),
    reasons: z.array(finding).describe('why it waits'),
    readings: z
      .array(
        z.strictObject({
          received: z.string(),
          unit: z.string(),
          litres: z.number(),
          store: maybeText,
          capacityL: z.number().nullable(),
        }),
      )
      .describe('what a bare number would be in each unit; none is taken by itself'),
    settled: z
      .strictObject({
        how: z.enum(['taken', 'dropped']),
        ref: z.string(),
        entries: z.array(z.string()),
        reason: maybeText,
      })
      .nullable(),
  })
  .meta({ id: 'InboxLine' }) satisfies z.ZodType<InboxLine>;

export const inboxSheet = z.strictObject({
  lines: z.array(inboxLine),
  settled: z.int(),
}) satisfies z.ZodType<InboxSheet>;

export const takenSheet = z.strictObject({
  kept: z.boolean().describe('false: it was only tried'),
  line: inboxLine,
  entries: z.array(
    z.strictObject({ ref: z.string(), id: z.string(), text: z.string(), happened: z.string() }),
  ),
}) satisfies z.ZodType<TakenSheet>;

export const droppedSheet = z.strictObject({
  kept: z.boolean(),
  line: inboxLine,
  reason: z.string(),
}) satisfies z.ZodType<DroppedSheet>;

export const tableSheet = z.strictObject({
  file: z.string(),
  format: z.string(),
  shape: z.enum(['days', 'acts']),
  columns: z.array(z.strictObject({ heading: z.string(), means: z.string(), leftOut: z.boolean() })),
  zone: z.strictObject({ offset: z.string(), by: z.string() }),
  dates: z.enum(['day-first', 'month-first']).nullable(),
  lines: z.int(),
  taken: z.int(),
  entries: z.int(),
  known: z.int(),
  waiting: z.int(),
  settled: z.int(),
  saysNothing: z.int(),
  remembered: z.boolean(),
  preview: z.array(
    z.strictObject({
      line: z.int(),
      what: z.enum(['entry', 'known', 'waits', 'says nothing']),
      text: z.string(),
      reasons: z.array(finding),
    }),
  ),
  findings: z.array(finding),
  moreFindings: z.int(),
  dryRun: z.boolean(),
}) satisfies z.ZodType<TableSheet>;
