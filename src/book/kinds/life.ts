// Kinds about the outpost itself: people, visits, units, parts and the cabin.
import * as z from 'zod';
import { amount, placeName } from './amount.ts';

const text = z.string().min(1).max(1000);

/** The outpost file as it was read: the text itself, so that the book stands alone. */
export const outpost = z.strictObject({
  text: z.string().min(1).max(2_000_000),
  reason: text.exactOptional(),
});

/** A store that the outpost file does not name: it came with a visit, or was added by hand. */
const newStore = z.strictObject({
  store: placeName,
  kind: placeName,
  name: placeName.exactOptional(),
  place: placeName.exactOptional(),
  capacityL: z.number().positive().max(1e7),
  usableRemainderL: z.number().min(0),
  usableRemainderUL: z.number().min(0).exactOptional(),
  fillL: z.number().positive().exactOptional(),
  wasteLimitL: z.number().positive().exactOptional(),
  grade: placeName.nullable(),
  amount: amount.exactOptional(),
  loadedMassMg: z.int().min(0).exactOptional(),
});
export const storeAdded = newStore;

export const roster = z.strictObject({
  change: z.enum(['arrive', 'depart']),
  people: z.int().min(1).max(10_000),
});
export const visitBerth = z.strictObject({
  visit: placeName,
  departDay: z.int().exactOptional(),
  peopleArrive: z.int().min(0).max(10_000),
  stores: z.array(newStore).max(1000),
});
export const visitSlip = z.strictObject({ visit: placeName, plannedDay: z.int(), newDay: z.int() });
export const visitDepart = z.strictObject({
  visit: placeName,
  peopleDepart: z.int().min(0).max(10_000),
  /** Stores that left with it; absent: those that came with it and were not taken over. */
  took: z.array(placeName).max(1000),
  declared: amount.exactOptional(),
});
export const service = z.strictObject({
  item: placeName,
  what: text,
  readings: z.array(z.strictObject({ name: placeName, value: z.number(), unit: placeName })).max(50),
});
export const unitCondition = z.strictObject({
  unit: placeName,
  state: z.enum(['on', 'off', 'limited', 'failed', 'repaired', 'alarm']),
  readings: z.array(z.strictObject({ name: placeName, value: z.number(), unit: placeName })).max(50),
});
/** A time in which gauge pressures say nothing, or another cabin condition holds. */
export const cabinWindow = z.strictObject({
  beforeKPaAbs: z.number().positive(),
  duringKPaAbs: z.number().positive(),
  untilMs: z.int(),
});
const counted = z.strictObject({
  part: placeName,
  count: z.number().min(0).max(1e6),
  unit: placeName.exactOptional(),
});
export const partReceived = counted;
export const partUsed = counted;
export const partCounted = counted;
