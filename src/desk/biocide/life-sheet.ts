// The life of one store as a sheet: fillings and days, against what the outpost file allows.
import { containerLife, type Position, type Storage, type StorePosition } from '../../account/index.ts';
import { formatShortStamp } from '../../ground/units/index.ts';
import type { LifeSheet } from '../../papers/index.ts';

/** Null for a buffer: water runs through it, and it is never filled anew. */
export function lifeSheet(position: Position, { facts }: StorePosition, storage: Storage): LifeSheet | null {
  const water = storage.stores.get(facts.id);
  if (water === undefined || facts.kind === 'buffer') return null;
  const allowed = position.index.stores.get(facts.id) ?? {};
  const { fills, empties, days, since, sinceMs, lifeCycles, lifeDays, verdict } = containerLife(
    water,
    allowed,
    position.atMs,
  );
  return {
    ...{ fills, empties, days, lifeCycles, lifeDays, verdict },
    since: formatShortStamp(sinceMs, position.dayRule),
    sinceWhat: since,
  };
}
