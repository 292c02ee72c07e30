// Lines about units, the cabin and the book itself: repairs, alarms, leaks found, notes, refusals, the close of a month.
import * as z from 'zod';
import type { Atoms } from './atoms.ts';

function unitShapes(a: Atoms) {
  return {
    repair: z.strictObject({ ...a.head, kind: z.literal('repair'), unit: a.name }),
    bed_change: z.strictObject({
      ...a.head,
      kind: z.literal('bed_change'),
      pos: a.point,
      throughput_at_change_L: a.counted.nullable(),
    }),
    alarm: z.strictObject({
      ...a.head,
      kind: z.literal('alarm'),
      unit: a.name,
      temp_C: a.temperatureC.nullable(),
    }),
    leak_found: z.strictObject({
      ...a.head,
      kind: z.literal('leak_found'),
      where: a.text,
      rate_L_d: a.litres.nullable(),
      recovered_towels_L: a.litres.nullable(),
    }),
    cabin_pressure: z.strictObject({
      ...a.head,
      kind: z.literal('cabin_pressure'),
      before_kPa_abs: a.pressureKPaAbs,
      after_kPa_abs: a.pressureKPaAbs,
      until: a.instant,
    }),
  };
}

function recordShapes(a: Atoms) {
  return {
    refused: z.strictObject({ ...a.head, kind: z.literal('refused'), what: a.text, rule: a.text }),
    manifest_note: z.strictObject({
      ...a.head,
      kind: z.literal('manifest_note'),
      by: a.office,
      text: a.note,
    }),
    month_close: z.strictObject({ ...a.head, kind: z.literal('month_close'), by: a.office }),
  };
}

export function eventShapes(a: Atoms) {
  return { ...unitShapes(a), ...recordShapes(a) };
}
