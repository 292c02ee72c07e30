// Kinds about the book itself: notes, refusals, anomalies, undo, corrections, decisions, the close of a day.
import * as z from 'zod';
import { entryIdPattern } from '../entry-id.ts';
import { massMg, placeName } from './amount.ts';

const text = z.string().min(1).max(4000);
const entryId = z.string().regex(entryIdPattern);

export const note = z.strictObject({ about: placeName.exactOptional(), text });
/** An intention that a rule refused: nothing moved. */
export const refused = z.strictObject({ what: text, rule: text });
export const anomaly = z.strictObject({
  anomaly: placeName,
  symptom: text,
  stores: z.array(placeName).max(1000),
});
export const explanation = z.strictObject({
  anomaly: placeName.exactOptional(),
  where: text,
  cause: text.exactOptional(),
  evidence: z.array(entryId).max(1000),
  rateMgPerDay: massMg.exactOptional(),
  recoveredMg: massMg.exactOptional(),
  /** When it must be looked at again; it opens by itself then. */
  expiresDay: z.int().exactOptional(),
});
/** The reversing entry: what it points at no longer counts. */
export const undo = z.strictObject({ target: entryId, reason: text.exactOptional() });
/** The target counts with this body from now on; the old one stays readable. */
export const correction = z.strictObject({ target: entryId, reason: text, body: z.looseObject({}) });
/** What somebody decided about a pair that looks like one act entered twice. */
export const duplicateDecision = z.strictObject({
  first: entryId,
  second: entryId,
  decision: z.enum(['merge', 'both are true']),
});
/** The paper of a day is frozen; the past is not. */
export const dayClose = z.strictObject({
  day: z.int(),
  what: z.enum(['day', 'month']),
  figures: z.array(z.strictObject({ name: placeName, massMg: z.int(), uMg: massMg })).max(200),
});
