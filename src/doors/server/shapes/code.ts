// Shapes around the codes by which a second person confirms. A code is only ever taken: no answer and no finding has one.
import * as z from 'zod';
import type { CodesSheet } from '../../../papers/index.ts';

/** Fields that have a code in them: nothing of what was sent in one is told in a finding. */
export const SECRET_FIELDS: ReadonlySet<string> = new Set([
  'code',
  'oldCode',
  'byCode',
  'secondCode',
  'second',
  'lost',
]);

/** Longer than any code, so that what is wrong with one is told by the rules of the desk. */
export const secret = z
  .string()
  .max(100)
  .meta({ format: 'password' })
  .describe('digits; kept only as argon2id and told nowhere');

const office = z.string().min(1).max(80);

export const secondNamed = z.strictObject({
  office: office.describe('the office of the second person of a two-person act'),
  code: secret.exactOptional(),
});

export const codeRequest = z.strictObject({
  office: office.describe('whose code it is'),
  code: secret,
  oldCode: secret.exactOptional().describe('needed where the office has a code'),
  lost: z
    .strictObject({ by: office, byCode: secret.exactOptional(), second: office, secondCode: secret })
    .exactOptional()
    .describe('the old code is lost: two others set it anew, by their own codes'),
});

export const codesSheet = z.strictObject({
  offices: z.array(
    z.strictObject({
      office: z.string(),
      since: z.string().nullable().describe('null where the office has no code'),
      waitsMs: z.int().describe('that it still waits after wrong codes'),
    }),
  ),
}) satisfies z.ZodType<CodesSheet>;

const terms = z.strictObject({ nowMs: z.int(), tries: z.int().min(1), waitMs: z.int().min(0) });

/** What programs of the same user ask of the keeper of codes. */
export const keeperAsks = {
  holders: terms,
  has: z.strictObject({ office }),
  check: z.strictObject({ office, code: secret, terms }),
  used: z.strictObject({ office, code: secret }),
  set: z.strictObject({ office, code: secret, entryId: z.string().max(60) }),
} as const;

export const keeperAnswers = {
  holders: z.array(z.strictObject({ office: z.string(), sinceMs: z.int(), waitsMs: z.int() })),
  check: z.union([
    z.strictObject({ is: z.enum(['right', 'none']) }),
    z.strictObject({ is: z.literal('wrong'), left: z.int() }),
    z.strictObject({ is: z.literal('waits'), leftMs: z.int() }),
  ]),
} as const;
