// Lines that say what was read: the day's meters, counters at a swap, contents of stores. Null says that it was not read.
import * as z from 'zod';
import type { Atoms } from './atoms.ts';

function meterShapes(a: Atoms) {
  return {
    daily: z.strictObject({
      ...a.head,
      kind: z.literal('daily'),
      people: a.people,
      condensate_totaliser_L: a.counted.nullable(),
      product_meter_L: a.counted.nullable(),
      dispenser_strokes: a.count.nullable(),
      flushes: a.count.nullable(),
      electrolyser_feed_L: a.counted.nullable(),
      RH_percent: a.percent.nullable(),
      T_C: a.temperatureC.nullable(),
      P_kPa_abs: a.pressureKPaAbs.nullable(),
    }),
    container_empty: z.strictObject({
      ...a.head,
      kind: z.literal('container_empty'),
      store: a.name,
      port: a.name,
      residual_L: a.litres.nullable(),
      residual_sd_L: a.litres.nullable(),
      counters: z.union([
        z.strictObject({ dispenser_strokes: a.count.nullable(), product_meter_L: a.counted.nullable() }),
        z.strictObject({ electrolyser_feed_L: a.counted.nullable(), flushes: a.count.nullable() }),
      ]),
    }),
    hookup: z.strictObject({ ...a.head, kind: z.literal('hookup'), store: a.name, port: a.name }),
  };
}

function contentShapes(a: Atoms) {
  return {
    weigh: z.strictObject({
      ...a.head,
      kind: z.literal('weigh'),
      store: a.name,
      litres: a.litres.nullable(),
      sd_L: a.litres.nullable().exactOptional(),
      method: a.name.exactOptional(),
    }),
    gauge_pvt: z.strictObject({
      ...a.head,
      kind: z.literal('gauge_pvt'),
      store: a.name,
      litres: a.litres,
      sd_L: a.litres.nullable(),
      book_before_L: a.litres.nullable(),
      bottle_before_kPa_abs: a.pressureKPaAbs,
      bottle_after_kPa_abs: a.pressureKPaAbs,
      bottle_before_C: a.temperatureC,
      bottle_after_C: a.temperatureC,
      tank_before_kPa_abs: a.pressureKPaAbs,
      tank_after_kPa_abs: a.pressureKPaAbs,
      tank_before_C: a.temperatureC,
      tank_after_C: a.temperatureC,
      bottle_volume_L: a.capacityL,
      tank_volume_L: a.capacityL,
      tank_volume_u_L: a.litres.nullable(),
    }),
    tank_declared_empty: z.strictObject({
      ...a.head,
      kind: z.literal('tank_declared_empty'),
      store: a.name,
      book_L: a.litres.nullable(),
      flow_stopped: a.yesNo,
      residual_L: a.litres.nullable().exactOptional(),
      residual_sd_L: a.litres.nullable().exactOptional(),
    }),
    waste_full: z.strictObject({
      ...a.head,
      kind: z.literal('waste_full'),
      store: a.name,
      litres: a.litres,
    }),
  };
}

export function readingShapes(a: Atoms) {
  return { ...meterShapes(a), ...contentShapes(a) };
}
