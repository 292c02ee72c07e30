// The sections of what holds water (stores) and of where a store can be hooked up (ports).
import * as z from 'zod';
import type { Atoms } from './atoms.ts';

export const STORE_KINDS = [
  'tank',
  'container',
  'softBag',
  'buffer',
  'vehicleTank',
  'wasteContainer',
] as const;

/** How anybody comes to know the content; `nothing` means that only the account knows. */
export const GAUGED_BY = [
  'gas injection',
  'weighing',
  'sight glass',
  'dip stick',
  'level gauge',
  'declared full',
  'loaded mass then meter',
  'nothing',
] as const;

const storeKeys = (a: Atoms) => ({
  kind: z.enum(STORE_KINDS),
  name: a.maybe.words,
  /** An id of `places`, or of a vehicle for a vehicle tank. */
  place: a.id,
  capacityL: a.positive,
  /** What a keeper fills it to. */
  fillL: a.maybe.positive,
  fullAtL: a.maybe.positive,
  fullAtDoubtL: a.maybe.zeroOrMore,
  /** What stays behind in an emptied store, and its doubt. */
  usableRemainderL: a.zeroOrMore,
  usableRemainderDoubtL: a.zeroOrMore,
  /** The grade of a store that never holds another. */
  holds: a.maybe.id,
  reserve: a.noUnlessSaid,
  gaugedBy: z.enum(GAUGED_BY),
  gauge: a.maybe.id,
  /** The line of `taskMinutes` that says how long a reading of it takes. */
  readingTask: a.maybe.id,
  ratingOverCabinKPa: a.positive,
  heater: z
    .strictObject({
      where: a.words,
      setPointC: a.temperatureC,
      alarmBelowC: a.temperatureC,
      contentFromC: a.maybe.temperatureC,
      contentToC: a.maybe.temperatureC,
      note: a.maybe.words,
    })
    .exactOptional(),
  gauging: z
    .strictObject({
      tankVolumeL: a.positive,
      tankVolumeDoubtL: a.zeroOrMore,
      /** The same error at every gauging of this tank. */
      shellDoubtL: a.zeroOrMore,
      /** New at every gauging. */
      bladderSeatingDoubtL: a.zeroOrMore,
      injectionDoubtL: a.zeroOrMore,
    })
    .exactOptional(),
  /** Depth of water on the stick, or level on the gauge, against volume: both rise from row to row. */
  gaugeTable: z
    .array(z.strictObject({ depthMm: a.zeroOrMore, volumeL: a.zeroOrMore }))
    .min(2)
    .exactOptional(),
  /** Inner wall that the water touches; without it one is reckoned from capacity and kind. */
  wettedAreaCm2: a.maybe.positive,
  /** How often it may be filled, and for how many days it may be used, before it has to be disinfected or replaced. */
  lifeCycles: a.maybe.countFromOne,
  lifeDays: a.maybe.positive,
  comesWith: a.maybe.id,
  leavesWith: a.maybe.id,
  wasteLimitL: a.maybe.positive,
  /** A declared-empty tank is a reading only if the flow had stopped. */
  emptyNeedsFlowStopped: a.noUnlessSaid,
  /** A store that was relabelled to a terminal grade keeps it for good. */
  relabelIsOneWay: a.noUnlessSaid,
  labelled: a.noUnlessSaid,
  note: a.maybe.words,
});

/** One store has `id`; many of a kind are written once with `ids`. */
export function storeSchema(a: Atoms) {
  return z.strictObject({
    id: a.maybe.id,
    ids: z.array(a.id).min(1).exactOptional(),
    ...storeKeys(a),
  });
}

export function portSchema(a: Atoms) {
  return z.strictObject({
    id: a.id,
    takes: a.id,
    place: a.maybe.id,
    /** A port has room for this many stores at a time. */
    stores: a.countFromOne.default(1),
    /** Kinds of store that may be hooked up here. */
    kinds: z.array(z.enum(STORE_KINDS)).min(1).default(['container']),
  });
}
