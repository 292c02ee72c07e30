// The section of making and using units: condensers, purifier, dispenser, electrolyser, flush, melt source, lines.
import * as z from 'zod';
import type { Atoms } from './atoms.ts';

const everyUnit = (a: Atoms) => ({
  id: a.id,
  place: a.id,
  feeds: a.flowEnd,
  limitLPerDay: a.maybe.positive,
  /** Absent: round the clock. */
  hours: z.strictObject({ from: a.clockTime, to: a.clockTime }).exactOptional(),
  /** Off, until it starts by itself or by hand. */
  standby: a.noUnlessSaid,
  note: a.maybe.words,
});

function condenser(a: Atoms) {
  return z.strictObject({
    kind: z.literal('condenser'),
    ...everyUnit(a),
    takes: a.flowSources.default([{ pool: 'cabin air' }]),
    startsByItself: a.maybe.words,
    holdsHumidityPercent: a.maybe.percent,
    cabinAirLPerHumidityPercent: a.maybe.positive,
  });
}

function purifier(a: Atoms) {
  return z.strictObject({
    kind: z.literal('purifier'),
    ...everyUnit(a),
    takes: a.flowSources,
    yieldShare: a.share,
    yieldDoubt: a.share,
    rejectTo: a.flowEnd,
    /** The buffer before it passes on the same day what it gets, down to this. */
    keepsInBufferL: a.maybe.zeroOrMore,
    beds: z
      .strictObject({
        positions: z.array(a.id).min(1),
        nominalL: a.positive,
        capacityDoubtL: a.zeroOrMore,
        leadThroughputOnDayOneL: a.zeroOrMore,
        /** After a change the old second bed comes first, with about this share of its use. */
        lagUseShareAfterChange: a.maybe.share,
      })
      .exactOptional(),
  });
}

function dispenser(a: Atoms) {
  return z.strictObject({
    kind: z.literal('dispenser'),
    ...everyUnit(a),
    takes: a.flowSources,
    use: a.use.default('drink'),
    strokeL: a.maybe.positive,
    hotC: a.maybe.temperatureC,
    heaterW: a.maybe.positive,
    hotTankL: a.maybe.positive,
  });
}

function electrolyser(a: Atoms) {
  return z.strictObject({
    kind: z.literal('electrolyser'),
    ...everyUnit(a),
    takes: a.flowSources,
    use: a.use.default('electrolyser'),
    litresPerKgOxygen: a.positive,
    leastLPerDay: a.maybe.zeroOrMore,
    normalShareOfOxygen: a.maybe.share,
  });
}

function flush(a: Atoms) {
  return z.strictObject({
    kind: z.literal('flush'),
    ...everyUnit(a),
    takes: a.flowSources,
    use: a.use.default('flush'),
    flushL: a.positive,
  });
}

function meltSource(a: Atoms) {
  return z.strictObject({
    kind: z.literal('meltSource'),
    ...everyUnit(a),
    takes: a.flowSources.default([{ pool: 'outside' }]),
    heaterW: a.maybe.positive,
  });
}

/** A fixed line or pump between stores, or from a store to a use, such as a daily fill. */
function line(a: Atoms) {
  return z.strictObject({
    kind: z.literal('line'),
    ...everyUnit(a),
    takes: a.flowSources,
    use: a.useIfAny,
  });
}

export function unitSchema(a: Atoms) {
  return z.discriminatedUnion('kind', [
    condenser(a),
    purifier(a),
    dispenser(a),
    electrolyser(a),
    flush(a),
    meltSource(a),
    line(a),
  ]);
}
