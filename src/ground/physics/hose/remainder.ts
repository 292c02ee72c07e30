// What stays behind when a store is pushed empty: folds of the bladder, the hose, and what the gas can no longer move.
import { stayAtLeastZero } from '../stay-within.ts';

export interface NeverPushedOut {
  /** In folds and corners of the store. */
  readonly inStoreM3: number;
  /** In the hose; it can be blown out into the receiver, if the gas may go there. */
  readonly inLineM3: number;
  /** What could still be pushed out by more gas. */
  readonly unreachedM3: number;
  readonly totalM3: number;
  /** One standard deviation of the total: that of what stays in the store. */
  readonly uM3: number;
}

/**
 * What a push leaves behind: the store's own remainder, the content of the line, and what is beyond the balance of pressures.
 * @param push `waterM3` in the store; `remainderM3` and `remainderUM3` of this store (0.5 % to 2 % of its volume is common
 * practice, better learned from its own emptyings); `lineM3` of the hose; `reachableM3` as `reachableM3()` says, Infinity
 * for a regulated push
 * @returns m³, in parts
 * @throws OutsideRange for a volume below 0 and for NaN
 * @source store-remainder; a balance of volumes
 * @example neverPushedOut({ waterM3: 0.2, remainderM3: 0.003, remainderUM3: 0.001, lineM3: 0.0003, reachableM3: 0.024 }).totalM3 // 0.1763
 */
export function neverPushedOut(push: {
  readonly waterM3: number;
  readonly remainderM3: number;
  readonly remainderUM3: number;
  readonly lineM3: number;
  readonly reachableM3: number;
}): NeverPushedOut {
  const { waterM3, remainderM3, remainderUM3, lineM3, reachableM3 } = push;
  for (const [quantity, value] of [
    ['water in the store', waterM3],
    ['remainder of the store', remainderM3],
    ['doubt of the remainder', remainderUM3],
    ['content of the line', lineM3],
    ['volume within reach', reachableM3 === Number.POSITIVE_INFINITY ? 0 : reachableM3],
  ] as const)
    stayAtLeastZero({ quantity, value, unit: 'm³', source: 'store-remainder' });
  const inStoreM3 = Math.min(waterM3, remainderM3);
  const movableM3 = waterM3 - inStoreM3;
  const unreachedM3 = Math.max(0, movableM3 - reachableM3);
  const inLineM3 = Math.min(lineM3, movableM3 - unreachedM3);
  return { inStoreM3, inLineM3, unreachedM3, totalM3: inStoreM3 + inLineM3 + unreachedM3, uM3: remainderUM3 };
}
