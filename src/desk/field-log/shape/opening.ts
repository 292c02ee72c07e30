// The first line of a log: who keeps it, from when on, and all that was there then.
import * as z from 'zod';
import type { Atoms } from './atoms.ts';

export const LOG_FORMAT = 'field log';
export const LOG_VERSION = 1;
export const LOG_CLOCK = 'UTC';

function storeAtOpening(a: Atoms) {
  return z.strictObject({
    id: a.name,
    capacity_L: a.capacityL,
    residual_L: a.litres,
    fill_L: a.capacityL.exactOptional(),
    full_at_L: a.capacityL.exactOptional(),
    grade: a.grade,
    litres: a.litres,
    sd_L: a.litres,
    how: a.text.max(400),
  });
}

function visitKnown(a: Atoms) {
  return z.strictObject({
    vehicle: a.name,
    planned_berth_day: a.day,
    planned_undock_day: a.day.exactOptional(),
  });
}

export function openingShapes(a: Atoms) {
  return {
    opening_balance: z.strictObject({
      ...a.head,
      kind: z.literal('opening_balance'),
      format: z.literal(LOG_FORMAT),
      version: z.literal(LOG_VERSION),
      outpost: a.name,
      day_1: a.date,
      clock: z.literal(LOG_CLOCK),
      by: a.office,
      as_of: a.instant,
      people: a.people,
      stores: z.array(storeAtOpening(a)).min(1).max(1000),
      ports: z.record(a.name, a.name),
      condensate_totaliser_L: a.counted.nullable(),
      lead_bed_throughput_L: a.counted.nullable(),
      visits_known: z.array(visitKnown(a)).max(1000),
    }),
  };
}
