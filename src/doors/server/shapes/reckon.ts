// Shapes of the calculators' forms and answers; each is held against the type of the papers by the compiler.
import * as z from 'zod';
import type { CondensateSheet, ReckonForms, ReckonSheet } from '../../../papers/index.ts';
import { because, figure, head } from './figures.ts';

const caution = z.strictObject({ signal: z.enum(['WARNING', 'CAUTION', 'NOTICE']), text: z.string() });

export const reckonForms = z.strictObject({
  forms: z.array(
    z.strictObject({
      calculator: z.string(),
      title: z.string(),
      question: z.string(),
      fields: z.array(
        z.strictObject({
          name: z.string(),
          kind: z.enum(['quantity', 'plain', 'store', 'hose', 'choice']),
          label: z.string(),
          units: z.array(z.string()).describe('the first is offered first'),
          choices: z.array(z.strictObject({ value: z.string(), label: z.string() })),
          many: z.boolean().describe('several values, commas between'),
          needed: z.boolean(),
          otherwise: z.string().nullable().describe('what is taken where nobody gives it'),
        }),
      ),
      example: z.record(z.string(), z.string()),
      cautions: z.array(caution),
    }),
  ),
}) satisfies z.ZodType<ReckonForms>;

export const reckonSheet = z.strictObject({
  calculator: z.string(),
  names: z.record(z.string(), z.string()),
  inputs: z.array(
    z.strictObject({
      name: z.string(),
      place: z.int(),
      value: z.number(),
      u95: z.number().nullable(),
      unit: z.string(),
      by: z.enum(['typed', 'book', 'outpost file', 'assumed']),
      from: z.string(),
      refs: z.array(z.string()),
      share: z.number().nullable().describe('its part of the doubt of the first result, 0 to 1'),
    }),
  ),
  results: z.array(
    z.strictObject({
      name: z.string(),
      value: z.number(),
      u95: z.number().nullable(),
      unit: z.string(),
      because,
      limit: z.enum(['early', 'late']).nullable().describe('an end of the band, not its middle'),
    }),
  ),
  sayings: z.array(z.strictObject({ key: z.string(), text: z.string() })),
  cautions: z.array(caution),
  method: z.string(),
  formulas: z.array(z.strictObject({ equation: z.string(), range: z.string(), source: z.string() })),
}) satisfies z.ZodType<ReckonSheet>;

export const condensateSheet = z.strictObject({
  head,
  lines: z.array(
    z.strictObject({
      day: z.int(),
      at: z.string(),
      days: z.number(),
      personDays: z.number(),
      expected: figure,
      collected: figure,
      shortfall: figure,
      verdict: z.enum(['as expected', 'less came', 'more came']),
      parts: z.array(z.strictObject({ name: z.string(), volume: figure })),
    }),
  ),
  runs: z.array(
    z.strictObject({
      verdict: z.enum(['less came', 'more came']),
      firstDay: z.int(),
      lastDay: z.int(),
      total: figure,
    }),
  ),
  found: z.array(z.strictObject({ store: z.string(), day: z.int(), volume: figure })),
  foundTotal: figure,
  rate: figure,
  norm: figure,
  taughtBy: z.int(),
  judged: z.strictObject({ days: z.int(), held: z.int() }),
}) satisfies z.ZodType<CondensateSheet>;
