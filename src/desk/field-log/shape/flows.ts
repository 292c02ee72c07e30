// Lines that say that water moved, and what is checked before it does.
import * as z from 'zod';
import type { Atoms } from './atoms.ts';

export const RUN_STATES = ['interrupted', 'resumed'] as const;

function transferShapes(a: Atoms) {
  return {
    transfer_setup: z.strictObject({
      ...a.head,
      kind: z.literal('transfer_setup'),
      vehicle: a.name,
      hose: a.name,
      leak_check_kPa_abs: a.pressureKPaAbs.nullable(),
      hold_min: a.minutes.nullable(),
      drop_kPa: a.dropKPa.nullable(),
      ok: a.yesNo,
    }),
    transfer: z.strictObject({
      ...a.head,
      kind: z.literal('transfer'),
      start: a.instant,
      from: a.name,
      to: a.name,
      litres: a.litres,
      grade: a.grade,
      hose: a.name,
      flow_min: a.minutes.nullable(),
      method: a.name,
      dP_kPa: a.pushKPa.nullable().exactOptional(),
      sd_L: a.litres.nullable().exactOptional(),
      run: a.name.exactOptional(),
      status: z.enum(RUN_STATES).exactOptional(),
      line_content_L: a.litres.nullable().exactOptional(),
      was: a.was.exactOptional(),
    }),
    bag_recovery: z.strictObject({
      ...a.head,
      kind: z.literal('bag_recovery'),
      start: a.instant,
      from: a.name,
      to: a.name,
      litres: a.litres,
      sd_L: a.litres.nullable(),
      method: a.name,
      hose: a.name,
      flow_min: a.minutes.nullable(),
    }),
  };
}

function otherFlowShapes(a: Atoms) {
  const legs = z
    .array(z.strictObject({ id: a.name, litres: a.litres }))
    .min(1)
    .max(100);
  return {
    waste_transfer: z.strictObject({
      ...a.head,
      kind: z.literal('waste_transfer'),
      from: legs,
      to: legs,
      litres: a.litres,
      sd_L: a.litres.nullable(),
      method: a.name,
      hose: a.name,
    }),
    reserve_draw: z.strictObject({
      ...a.head,
      kind: z.literal('reserve_draw'),
      store: a.name,
      to: a.name,
      since: a.instant,
      litres: a.litres,
      by_counter: a.text.max(400),
    }),
  };
}

export function flowShapes(a: Atoms) {
  return { ...transferShapes(a), ...otherFlowShapes(a) };
}
