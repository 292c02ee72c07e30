// Kinds about the codes by which a person confirms: that one was set, and when; never the code, nor anything made of it.
import * as z from 'zod';
import { placeName } from './amount.ts';

export const codeSet = z.strictObject({
  office: placeName,
  /** `first`: there was none before. `changed`: the old one was given. `lost`: two others set it anew. */
  because: z.enum(['first', 'changed', 'lost']),
});
