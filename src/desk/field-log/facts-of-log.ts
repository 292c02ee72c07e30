// Which names may stand in a log: those of the outpost file, of the book so far, and of what the log itself brings aboard.
import type { OutpostIndex } from '../../outpost/index.ts';
import { Amounts } from './map/amounts.ts';
import type { LogFacts } from './map/line-at.ts';
import type { EarlierLog } from './opening-facts.ts';
import type { AnyLine } from './shape/line-shapes.ts';

export function factsOfLog(
  lines: readonly AnyLine[],
  known: {
    readonly index: OutpostIndex;
    readonly earlier: EarlierLog | undefined;
    readonly dayOneMs: number;
  },
): LogFacts {
  const { index, earlier, dayOneMs } = known;
  const stores = new Set([...index.stores.keys(), ...(earlier?.stores ?? [])]);
  const vehicles = new Set([...index.visits.keys(), ...(earlier?.vehicles ?? [])]);
  for (const line of lines) {
    for (const store of storesBrought(line)) stores.add(store);
    for (const vehicle of vehiclesNamed(line)) vehicles.add(vehicle);
  }
  const amounts = new Amounts(index.outpost.outpost.waterDensityKgPerM3);
  return { index, amounts, stores, vehicles, dayOneMs };
}

function storesBrought(line: AnyLine): readonly string[] {
  if (line.kind === 'berth') return line.stores.map(({ id }) => id);
  return line.kind === 'dock' ? line.water_bags.map(({ id }) => id) : [];
}

/** A visit is known from the roster of the opening, or from its own arrival. */
function vehiclesNamed(line: AnyLine): readonly string[] {
  if (line.kind === 'opening_balance') return line.visits_known.map(({ vehicle }) => vehicle);
  return line.kind === 'berth' || line.kind === 'dock' ? [line.vehicle] : [];
}
