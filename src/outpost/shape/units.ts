// The section of making and using units: condensers, purifier, dispenser, electrolyser, flush, melt source, lines.
import { z } from 'zod';
import type { Atoms } from './atoms.ts';
import { flowEndSchema, USES } from './flow-end.ts';

const everyUnit = (a: Atoms) => ({
  id: a.id,
  place: a.id,
  feeds: flowEndSchema(a),
  limitLPerDay: a.positive.exactOptional(),
  /** Absent: round the clock. */
  hours: z.strictObject({ from: a.clockTime, to: a.clockTime }).exactOptional(),
  /** Off, until it starts by itself or by hand. */
  standby: a.yesNo.default(false),
  note: a.words.exactOptional(),
});

const sources = (a: Atoms) => z.array(flowEndSchema(a)).min(1);

function condenser(a: Atoms) {
  return z.strictObject({
    kind: z.literal('condenser'),
    ...everyUnit(a),
    takes: sources(a).default([{ pool: 'cabin air' }]),
    startsByItself: a.words.exactOptional(),
    holdsHumidityPercent: a.percent.exactOptional(),
    cabinAirLPerHumidityPercent: a.positive.exactOptional(),
  });
}

function purifier(a: Atoms) {
  return z.strictObject({
    kind: z.literal('purifier'),
    ...everyUnit(a),
    takes: sources(a),
    yieldShare: a.share,
    yieldDoubt: a.share,
    rejectTo: flowEndSchema(a),
    /** The buffer before it passes on the same day what it gets, down to this. */
    keepsInBufferL: a.zeroOrMore.exactOptional(),
    beds: z
      .strictObject({
        positions: z.array(a.id).min(1),
        nominalL: a.positive,
        capacityDoubtL: a.zeroOrMore,
        leadThroughputOnDayOneL: a.zeroOrMore,
        /** After a change the old second bed comes first, with about this share of its use. */
        lagUseShareAfterChange: a.share.exactOptional(),
      })
      .exactOptional(),
  });
}

function dispenser(a: Atoms) {
  return z.strictObject({
    kind: z.literal('dispenser'),
    ...everyUnit(a),
    takes: sources(a),
    use: z.enum(USES).default('drink'),
    strokeL: a.positive.exactOptional(),
    hotC: a.temperatureC.exactOptional(),
    heaterW: a.positive.exactOptional(),
    hotTankL: a.positive.exactOptional(),
  });
}

function electrolyser(a: Atoms) {
  return z.strictObject({
    kind: z.literal('electrolyser'),
    ...everyUnit(a),
    takes: sources(a),
    use: z.enum(USES).default('electrolyser'),
    litresPerKgOxygen: a.positive,
    leastLPerDay: a.zeroOrMore.exactOptional(),
    normalShareOfOxygen: a.share.exactOptional(),
  });
}

function flush(a: Atoms) {
  return z.strictObject({
    kind: z.literal('flush'),
    ...everyUnit(a),
    takes: sources(a),
    use: z.enum(USES).default('flush'),
    flushL: a.positive,
  });
}

function meltSource(a: Atoms) {
  return z.strictObject({
    kind: z.literal('meltSource'),
    ...everyUnit(a),
    takes: sources(a).default([{ pool: 'outside' }]),
    heaterW: a.positive.exactOptional(),
  });
}

/** A fixed line or pump between stores, or from a store to a use, such as a daily fill. */
function line(a: Atoms) {
  return z.strictObject({
    kind: z.literal('line'),
    ...everyUnit(a),
    takes: sources(a),
    use: z.enum(USES).exactOptional(),
  });
}

export function unitSchema(a: Atoms) {
  return z.discriminatedUnion('kind', [
    condenser(a), purifier(a), dispenser(a), electrolyser(a), flush(a), meltSource(a), line(a),
  ]);
}
