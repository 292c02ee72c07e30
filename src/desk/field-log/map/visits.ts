// Vehicles that come, go or are late as the book's visits.
import type { LineOf } from '../shape/line-shapes.ts';
import type { LineAt, Made } from './line-at.ts';
import { broughtStore } from './stores.ts';

export function readBerth(line: LineOf<'berth'>, at: LineAt): Made {
  at.eachOnce(
    line.stores.map(({ id }) => id),
    'stores',
  );
  return {
    kind: 'visit-berth',
    body: {
      visit: line.vehicle,
      departDay: line.planned_undock_day,
      peopleArrive: 0,
      // Only a vehicle's own tank has a limit for waste.
      stores: line.stores.map((told) => {
        const otherwise = told.waste_limit_L === undefined ? 'container' : 'vehicleTank';
        return broughtStore(told, `stores[${told.id}]`, at, otherwise);
      }),
    },
  };
}

export function readDock(line: LineOf<'dock'>, at: LineAt): Made {
  at.eachOnce(
    line.water_bags.map(({ id }) => id),
    'water_bags',
  );
  return {
    kind: 'visit-berth',
    body: {
      visit: line.vehicle,
      departDay: line.planned_undock_day,
      peopleArrive: line.people_arrive,
      stores: line.water_bags.map((told) => broughtStore(told, `water_bags[${told.id}]`, at, 'softBag')),
    },
  };
}

/** What is in the stores that a vehicle takes leaves with it; `waste_L` is what was told of it, and moves nothing. */
export function readUndock(line: LineOf<'undock'>, at: LineAt): Made {
  return {
    kind: 'visit-depart',
    body: {
      visit: at.vehicle(line.vehicle),
      peopleDepart: line.people_depart ?? 0,
      took: at.stores(line.took ?? [], 'took'),
      ...(line.waste_L != null && { declared: at.amounts.litres(line.waste_L) }),
    },
  };
}

export function readCargoDelay(line: LineOf<'cargo_delay'>, at: LineAt): Made {
  return {
    kind: 'visit-slip',
    body: { visit: at.vehicle(line.vehicle), plannedDay: line.planned_day, newDay: line.new_day },
  };
}
