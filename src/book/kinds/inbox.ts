// Kinds of the inbox: lines of tables that wait for a decision, what became of them, and how headings are read.
import * as z from 'zod';
import { entryIdPattern } from '../entry-id.ts';
import { massMg, placeName } from './amount.ts';

/** A cell of a table; longer ones are refused where the file is read. */
const cell = z.string().max(4000);
const digest = z.string().regex(/^[0-9a-f]{64}$/);

/** Why a line waits: the code of a finding with its data, and the column that it is about, counted from 1. */
const waitingReason = z.strictObject({
  code: placeName,
  column: z.int().min(1).max(1000).exactOptional(),
  data: z.record(
    z.string().max(80),
    z.union([z.string().max(4000), z.number(), z.boolean(), z.null(), z.array(z.string().max(400)).max(100)]),
  ),
});

/** What the bare number of a line would be in a unit, and what the store in question can hold. */
const possibleReading = z.strictObject({
  received: z.string().min(1).max(80),
  unit: z.string().min(1).max(40),
  massMg,
  store: placeName.exactOptional(),
  capacityMg: massMg.exactOptional(),
});

/** It never touches the account: nothing of it is an amount until somebody takes it. */
export const waitingLine = z.strictObject({
  /** Digest of what the line says, so that another copy of it is known again. */
  key: digest,
  file: z.string().min(1).max(400),
  line: z.int().min(1),
  shape: z.enum(['days', 'acts']),
  headings: z.array(cell).max(1000),
  cells: z.array(cell).max(1000),
  /** What each column means, in the words of the command `import --columns`; empty: nothing. */
  columns: z.array(z.string().max(200)).max(1000),
  /** What was declared or proven of the whole table. */
  decimals: z.array(z.enum(['comma', 'point', 'open'])).max(1000),
  dates: z.enum(['day-first', 'month-first']).exactOptional(),
  zoneMin: z.int().min(-840).max(840),
  reasons: z.array(waitingReason).min(1).max(200),
  readings: z.array(possibleReading).max(50),
});

/** A line that waited was taken into the book, or dropped; it stays settled when the file comes again. */
export const waitingLineSettled = z.strictObject({
  /** Id of the waiting line, or of a note that names an amount without its unit. */
  line: z.string().regex(entryIdPattern),
  how: z.enum(['taken', 'dropped']),
  /** The entries that were made of it. */
  entries: z.array(z.string().regex(entryIdPattern)).max(1000),
  reason: z.string().min(1).max(1000).exactOptional(),
});

/** How the columns under these headings are read, from the last table that had them. */
export const columnMatching = z.strictObject({
  signature: digest,
  shape: z.enum(['days', 'acts']),
  columns: z.array(z.strictObject({ heading: cell, means: z.string().max(200) })).max(1000),
  decimal: z.enum(['comma', 'point']).exactOptional(),
  dates: z.enum(['day-first', 'month-first']).exactOptional(),
  zoneMin: z.int().min(-840).max(840).exactOptional(),
});
