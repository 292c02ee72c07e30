// How much of its life a container has used: fillings and days, against what the outpost file allows.
import { msPerDay } from '../../ground/units/index.ts';
import type { Store } from '../../outpost/index.ts';
import type { StoreStorage } from './storage.ts';

export interface ContainerLife {
  readonly fills: number;
  readonly empties: number;
  /** Days since it was disinfected last, or since the book first speaks of it: then it may be older. */
  readonly days: number;
  readonly since: 'disinfected' | 'first in the book';
  readonly sinceMs: number;
  readonly lifeCycles: number | null;
  readonly lifeDays: number | null;
  /** The greater part that is used of either; null where the file allows neither. */
  readonly usedPart: number | null;
  readonly verdict: 'within' | 'near' | 'over' | 'no life told';
}

/** From this part on the end is near. Ours, no source. */
const NEAR_PART = 0.9;

/**
 * @param water what the book tells of the store; @param allowed keys of the outpost file, where they are told
 * @example containerLife({ fills: 9, empties: 8, firstMs: 0, disinfected: null }, { lifeCycles: 10 }, 86_400_000).verdict // 'near'
 */
export function containerLife(
  water: Pick<StoreStorage, 'fills' | 'empties' | 'firstMs' | 'disinfected'>,
  allowed: Pick<Store, 'lifeCycles' | 'lifeDays'>,
  atMs: number,
): ContainerLife {
  const { fills, empties, firstMs, disinfected } = water;
  const sinceMs = disinfected?.atMs ?? firstMs;
  const days = Math.max(0, atMs - sinceMs) / msPerDay;
  const { lifeCycles, lifeDays } = allowed;
  const parts = [
    ...(lifeCycles === undefined ? [] : [fills / lifeCycles]),
    ...(lifeDays === undefined ? [] : [days / lifeDays]),
  ];
  const usedPart = parts.length === 0 ? null : Math.max(...parts);
  return {
    ...{ fills, empties, days, sinceMs, usedPart },
    since: disinfected === null ? 'first in the book' : 'disinfected',
    lifeCycles: lifeCycles ?? null,
    lifeDays: lifeDays ?? null,
    verdict: verdictOf(usedPart),
  };
}

function verdictOf(usedPart: number | null): ContainerLife['verdict'] {
  if (usedPart === null) return 'no life told';
  if (usedPart > 1) return 'over';
  return usedPart >= NEAR_PART ? 'near' : 'within';
}
