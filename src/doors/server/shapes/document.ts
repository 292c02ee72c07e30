// Shapes of papers in answers: the parts of a document, held against the type of the papers by the compiler.
import * as z from 'zod';
import type { DocumentPart, PaperDocument } from '../../../papers/index.ts';
import { figure, head } from './figures.ts';

const texts = z.array(z.string());

const cell = z.union([
  z.string(),
  figure,
  z.strictObject({ told: z.number(), censored: z.enum(['no', 'below', 'above']) }),
  z.null(),
]);

const plain = [
  z.strictObject({ part: z.literal('verdict'), word: z.string(), text: z.string() }),
  z.strictObject({ part: z.literal('heading'), text: z.string() }),
  z.strictObject({ part: z.literal('text'), text: z.string() }),
  z.strictObject({ part: z.literal('list'), items: texts }),
  z.strictObject({
    part: z.literal('facts'),
    facts: z.array(z.strictObject({ name: z.string(), said: z.string() })),
  }),
  z.strictObject({
    part: z.literal('tree'),
    nodes: z.array(z.strictObject({ depth: z.int(), text: z.string() })),
  }),
  z.strictObject({
    part: z.literal('table'),
    name: z.string(),
    columns: z.array(
      z.strictObject({
        head: z.string(),
        key: z.string(),
        unit: z.string().exactOptional(),
        align: z.enum(['left', 'figure']),
        least: z.int().exactOptional(),
      }),
    ),
    rows: z.array(z.array(cell)),
    empty: z.string(),
  }),
  z.strictObject({ part: z.literal('drawing'), svg: z.string(), says: z.string() }),
  z.strictObject({ part: z.literal('lines'), label: z.string(), count: z.int() }),
  z.strictObject({ part: z.literal('ticks'), items: texts }),
  z.strictObject({
    part: z.literal('signatures'),
    people: z.array(z.strictObject({ office: z.string(), says: z.string() })),
  }),
] as const;

/** A box stands before one step, which has no box of its own. */
const step = z.discriminatedUnion('part', plain);

const part = z.discriminatedUnion('part', [
  ...plain,
  z.strictObject({
    part: z.literal('hazard'),
    signal: z.enum(['WARNING', 'CAUTION', 'NOTICE']),
    text: z.string(),
    step: z.tuple([step], step),
  }),
]) satisfies z.ZodType<DocumentPart>;

const paperDocument = z
  .strictObject({
    paper: z.string(),
    of: z.string(),
    language: z.literal('en'),
    title: z.string(),
    isWide: z.boolean(),
    head,
    book: z.strictObject({ kept: z.int(), last: texts, digest: z.string() }),
    parts: z.array(part),
  })
  .meta({ id: 'PaperDocument' }) satisfies z.ZodType<PaperDocument>;

export const paperAnswer = z.strictObject({
  fileName: z.string(),
  document: paperDocument.nullable().describe('its parts; null where a form was asked for'),
  html: z.string().nullable().describe('one file for print'),
  text: z.string().nullable(),
});
