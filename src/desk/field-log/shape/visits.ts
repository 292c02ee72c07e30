// Lines about vehicles that come, go or are late, and the stores and people that they bring and take.
import * as z from 'zod';
import type { Atoms } from './atoms.ts';

function broughtStore(a: Atoms) {
  return z.strictObject({
    id: a.name,
    capacity_L: a.capacityL,
    residual_L: a.litres,
    fill_L: a.capacityL.exactOptional(),
    waste_limit_L: a.capacityL.exactOptional(),
    grade: a.grade,
    litres: a.litres,
    sd_L: a.litres,
    loaded_mass_kg: a.loadedKg.nullable().exactOptional(),
  });
}

function waterBag(a: Atoms) {
  return z.strictObject({
    id: a.name,
    capacity_L: a.capacityL,
    residual_L: a.litres,
    grade: a.grade,
    litres: a.litres,
    sd_L: a.litres,
  });
}

export function visitShapes(a: Atoms) {
  return {
    berth: z.strictObject({
      ...a.head,
      kind: z.literal('berth'),
      vehicle: a.name,
      planned_undock_day: a.day,
      stores: z.array(broughtStore(a)).max(1000),
    }),
    dock: z.strictObject({
      ...a.head,
      kind: z.literal('dock'),
      vehicle: a.name,
      people_arrive: a.people,
      planned_undock_day: a.day,
      water_bags: z.array(waterBag(a)).max(1000),
    }),
    undock: z.strictObject({
      ...a.head,
      kind: z.literal('undock'),
      vehicle: a.name,
      people_depart: a.people.exactOptional(),
      took: a.names.exactOptional(),
      waste_L: a.litres.nullable().exactOptional(),
    }),
    cargo_delay: z.strictObject({
      ...a.head,
      kind: z.literal('cargo_delay'),
      vehicle: a.name,
      planned_day: a.day,
      new_day: a.day,
    }),
  };
}
