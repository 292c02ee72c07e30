// The section of points at which samples are drawn: whose water comes out there.
import * as z from 'zod';
import type { Atoms } from './atoms.ts';

export function samplingPointSchema(a: Atoms) {
  return z.strictObject({
    /** The name that samples and results carry. */
    id: a.id,
    /** What comes out there is the water of a store, of what stands on a port, or of a unit: what it fills, else what feeds it. */
    of: z.union([
      z.strictObject({ store: a.id }),
      z.strictObject({ port: a.id }),
      z.strictObject({ unit: a.id }),
    ]),
    note: a.maybe.words,
  });
}
