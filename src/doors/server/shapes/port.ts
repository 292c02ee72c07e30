// Shapes of the port of a book over HTTP: rows as they are kept, for programs of the same user that put their own desk over them.
import * as z from 'zod';
import type { BookInfo, Head, KeptEntry, ScanQuery } from '../../../book/index.ts';

export const headShape = z.strictObject({
  site: z.string().max(31),
  number: z.int().min(0),
  seal: z.string().max(200),
}) satisfies z.ZodType<Head>;

export const rowShape = z.strictObject({
  id: z.string().max(60),
  kind: z.string().max(60),
  site: z.string().max(31),
  number: z.int().min(1),
  happenedAtMs: z.int(),
  enteredAtMs: z.int(),
  keptAtMs: z.int(),
  text: z.string(),
  seal: z.string().max(200),
}) satisfies z.ZodType<KeptEntry>;

export const infoShape = z.strictObject({
  bookId: z.string(),
  site: z.string(),
  purpose: z.enum(['book', 'practice']),
  createdAtMs: z.int(),
}) satisfies z.ZodType<BookInfo>;

export const scanShape = z.strictObject({
  order: z.enum(['total', 'site']),
  after: z.strictObject({ happenedAtMs: z.number(), site: z.string(), number: z.number() }).exactOptional(),
  site: z.string().exactOptional(),
  kinds: z.array(z.string()).exactOptional(),
  batch: z.int().min(1).max(10_000).exactOptional(),
}) satisfies z.ZodType<ScanQuery>;

const found = z.strictObject({
  code: z.string(),
  severity: z.enum(['error', 'act-now', 'act-today', 'know']),
  where: z.record(z.string(), z.union([z.string(), z.number()])),
  data: z.record(z.string(), z.union([z.string(), z.number(), z.boolean(), z.null(), z.array(z.string())])),
  entries: z.array(z.string()),
});

/** What the disk says is told as it is, for the program that asked puts it into words of its own. */
export function portAnswer(value: z.ZodType) {
  return z.union([
    z.strictObject({ ok: z.literal(true), value }),
    z.strictObject({
      ok: z.literal(false),
      because: z.enum(['head moved', 'id taken', 'disk', 'rows']),
      findings: z.array(found),
    }),
  ]);
}

export const checkShape = z.strictObject({
  entries: z.int(),
  digest: z.string(),
  heads: z.array(headShape),
  isReadToEnd: z.boolean(),
  findings: z.array(found),
});

export const copyShape = z.strictObject({
  path: z.string(),
  entries: z.int(),
  digest: z.string(),
  heads: z.array(headShape),
});
