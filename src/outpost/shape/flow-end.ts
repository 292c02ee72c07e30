// Where a flow begins or ends: a store, whatever hangs on a port, or a pool that nobody can gauge.
import * as z from 'zod';

/** Pools have no walls: water is counted into them and out of them, and their content is only ever reckoned. */
export const POOLS = ['people', 'cabin air', 'electrolyser', 'outside'] as const;

/** What water is used for when it leaves a store for good. */
export const USES = [
  'drink',
  'food',
  'hygiene',
  'flush',
  'electrolyser',
  'sample',
  'sample-flush',
  'suit',
  'plants',
  'animals',
  'medical',
  'spill-air',
  'spill-lost',
  'vent',
] as const;

export function flowAtoms({ id, yesNo }: { readonly id: z.ZodString; readonly yesNo: z.ZodBoolean }) {
  const end = z.union([
    z.strictObject({
      store: id,
      /** The flow leaves the usable remainder in the store and goes on to the next source. */
      downToRemainder: yesNo.default(false),
      /** Water comes from here only when an entry says so (a reserve draw), never by the order of the list alone. */
      onlyByEntry: yesNo.default(false),
    }),
    z.strictObject({ port: id }),
    z.strictObject({ pool: z.enum(POOLS) }),
  ]);
  const use = z.enum(USES);
  return { flowEnd: end, flowSources: z.array(end).min(1), use, useIfAny: use.exactOptional() };
}
