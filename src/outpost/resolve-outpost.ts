// From the file's shape to the outpost's: groups of stores taken apart, names and ways of water filled in, all frozen.
import { freezeDeep } from './freeze-deep.ts';
import type { FlowEnd, Instrument, Outpost, Route, Store, Unit } from './outpost.ts';
import type { OutpostFile } from './shape/file-schema.ts';

function storesOf(written: OutpostFile['stores'][number]): Store[] {
  const { id, ids, name, ...rest } = written;
  if (id !== undefined) return [{ ...rest, id, name: name ?? id }];
  return (ids ?? []).map((each) => ({
    ...structuredCopy(rest),
    id: each,
    name: name === undefined ? each : `${name} ${each}`,
  }));
}

/** Stores of a group share no object, so that nobody needs to know that they were written as one. */
function structuredCopy<T>(value: T): T {
  if (Array.isArray(value)) return value.map(structuredCopy) as T;
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, structuredCopy(inner)])) as T;
}

function routeThrough(unit: Unit): Route {
  const from: readonly FlowEnd[] = unit.takes;
  const use = 'use' in unit ? unit.use : undefined;
  return { from, to: unit.feeds, through: unit.id, ...(use === undefined ? {} : { use }) };
}

function instrumentOf(
  written: OutpostFile['instruments'][number],
  units: ReadonlyMap<string, Unit>,
): Instrument {
  const { route, name, ...rest } = written;
  const unit = rest.meters === undefined ? undefined : units.get(rest.meters);
  const way = route ?? (unit === undefined ? undefined : routeThrough(unit));
  return { ...rest, name: name ?? rest.id, ...(way === undefined ? {} : { route: way }) };
}

/** Only for a file without faults. */
export function resolveOutpost(file: OutpostFile): Outpost {
  const units = new Map(file.units.map((unit) => [unit.id, unit as Unit]));
  return freezeDeep({
    ...file,
    stores: file.stores.flatMap(storesOf),
    instruments: file.instruments.map((instrument) => instrumentOf(instrument, units)),
  });
}
