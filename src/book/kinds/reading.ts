// Kinds that say what a store holds: an opening stock, or evidence that is no movement.
import * as z from 'zod';
import { amount, counterReading, massMg, placeName } from './amount.ts';

const storeAtOpening = z.strictObject({
  store: placeName,
  amount,
  /** Null: never used. */
  grade: placeName.nullable(),
  how: z.string().min(1).max(400).exactOptional(),
});

export const opening = z.strictObject({
  /** Instant for which the stocks are told. */
  asOfMs: z.int(),
  /** 00:00 of D01. */
  dayOneMs: z.int().exactOptional(),
  peopleAboard: z.int().min(0).max(10_000),
  stores: z.array(storeAtOpening).max(10_000),
  ports: z.array(z.strictObject({ port: placeName, store: placeName })).max(1000),
  /** Where the running totals stand. */
  counters: z.array(counterReading).max(1000),
  /** Litres, hours or uses that parts in service have behind them. */
  service: z.array(z.strictObject({ item: placeName, value: z.number().min(0), unit: placeName })).max(1000),
  visits: z
    .array(
      z.strictObject({
        visit: placeName,
        berthDay: z.int(),
        departDay: z.int().exactOptional(),
      }),
    )
    .max(1000),
});

export const weigh = z.strictObject({
  store: placeName,
  /** Null: planned and not done. */
  amount: amount.nullable(),
  instrument: placeName.exactOptional(),
  method: z.string().min(1).max(80).exactOptional(),
});

/** A level, dip or sight-glass reading turned into an amount. */
export const gauge = weigh;

/** Gas injection: the raw pressures and temperatures, and the amount that the keeper found from them. */
export const pvt = z.strictObject({
  store: placeName,
  amount,
  bookBeforeMg: massMg.exactOptional(),
  bottleVolumeL: z.number().positive(),
  tankVolumeL: z.number().positive(),
  tankVolumeUL: z.number().min(0).exactOptional(),
  bottleBeforeKPaAbs: z.number().positive(),
  bottleAfterKPaAbs: z.number().positive(),
  bottleBeforeC: z.number(),
  bottleAfterC: z.number(),
  tankBeforeKPaAbs: z.number().positive(),
  tankAfterKPaAbs: z.number().positive(),
  tankBeforeC: z.number(),
  tankAfterC: z.number(),
});

export const declaredEmpty = z.strictObject({
  store: placeName,
  /** Port that it is taken off, when it stood on one. */
  port: placeName.exactOptional(),
  /** What is left in it; absent when nothing tells. */
  residual: amount.exactOptional(),
  /** Did the flow stop by itself? False: the content is not known from this. Absent: a container run dry. */
  flowStopped: z.boolean().exactOptional(),
  bookMg: massMg.exactOptional(),
  /** Counters read at the same moment: they close their interval here. */
  counters: z.array(counterReading).max(100),
});

export const declaredFull = z.strictObject({
  store: placeName,
  amount,
  port: placeName.exactOptional(),
});

export const stockCount = z.strictObject({
  count: placeName,
  readings: z
    .array(z.strictObject({ store: placeName, amount: amount.nullable(), method: placeName }))
    .max(10_000),
});
