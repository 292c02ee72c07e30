// The life of one store as a sheet: fillings and days, against what the outpost file allows.
import { containerLife, type Position, type Storage } from '../../account/index.ts';
import { formatShortStamp } from '../../ground/units/index.ts';
import type { LifeSheet } from '../../papers/index.ts';

export function lifeSheet(position: Position, store: string, storage: Storage): LifeSheet | null {
  const water = storage.stores.get(store);
  if (water === undefined) return null;
  const allowed = position.index.stores.get(store) ?? {};
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
