// Shapes of what acts on a whole book end with; held against the types of the papers by the compiler.
import * as z from 'zod';
import type { ImportedSheet } from '../../../papers/index.ts';
import { finding } from './figures.ts';

export const importedSheet = z.strictObject({
  format: z.string(),
  understood: z.int(),
  added: z.int(),
  alreadyKept: z.int(),
  notTaken: z.array(finding).describe('lines that were not taken, and why'),
  findings: z.array(finding).describe('what the account has to say about those that were'),
  dryRun: z.boolean(),
  made: z.string().nullable(),
}) satisfies z.ZodType<ImportedSheet>;
