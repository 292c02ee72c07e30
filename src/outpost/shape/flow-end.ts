// Where a flow begins or ends: a store, whatever hangs on a port, or a pool that nobody can gauge.
import { z } from 'zod';
import type { Atoms } from './atoms.ts';

/** Pools have no walls: water is counted into them and out of them, and their content is only ever reckoned. */
export const POOLS = ['people', 'cabin air', 'electrolyser', 'outside'] as const;

/** What water is used for when it leaves a store for good. */
export const USES = [
  'drink', 'food', 'hygiene', 'flush', 'electrolyser', 'sample', 'airlock', 'plants', 'animals', 'medical',
] as const;

export function flowEndSchema(a: Atoms) {
  return z.union([
    z.strictObject({
      store: a.id,
      /** The flow leaves the usable remainder in the store and goes on to the next source. */
      downToRemainder: a.yesNo.default(false),
      /** Water comes from here only when an entry says so (a reserve draw), never by the order of the list alone. */
      onlyByEntry: a.yesNo.default(false),
    }),
    z.strictObject({ port: a.id }),
    z.strictObject({ pool: z.enum(POOLS) }),
  ]);
}

/** One way of water: sources in the order in which they are used up, and where it goes. */
export function routeSchema(a: Atoms) {
  return z.strictObject({
    from: z.array(flowEndSchema(a)).min(1),
    to: flowEndSchema(a),
    use: z.enum(USES).exactOptional(),
  });
}
