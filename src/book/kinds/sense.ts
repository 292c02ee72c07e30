// Kinds about what people sense of the water without an instrument.
import * as z from 'zod';
import { placeName } from './amount.ts';

/** A taste or an odour, at a store or at a point where water is taken: one of the two is named. */
export const taste = z.strictObject({
  store: placeName.exactOptional(),
  point: placeName.exactOptional(),
  /** As the person said it. */
  words: z.string().min(1).max(1000),
  who: placeName.exactOptional(),
  /** 0 nothing, 5 as strong as can be. */
  strength: z.int().min(0).max(5).exactOptional(),
});
