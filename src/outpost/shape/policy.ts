// The sections of rules that the outpost sets itself: limits, policy, treatment.
import * as z from 'zod';
import type { Atoms } from './atoms.ts';
import { INSTRUMENT_UNITS } from './instruments.ts';

const LIMIT_UNITS = [...INSTRUMENT_UNITS, 'days'] as const;

export function limitSchema(a: Atoms) {
  return z.strictObject({
    id: a.id,
    quantity: a.id,
    unit: z.enum(LIMIT_UNITS),
    atLeast: a.maybe.zeroOrMore,
    atMost: a.maybe.zeroOrMore,
    /** `off` limits are shown and never judged by. */
    status: z.enum(['policy', 'off']),
    /** Where the figure comes from; one from memory stays off until the outpost types its own. */
    basis: z.enum(['outpost policy', 'standard', 'maker', 'memory']),
    basisNote: a.maybe.words,
    /** Of what a result is needed before release; one that is there is judged in any water. */
    neededOf: z.enum(['every store', 'product']).default('every store'),
    cause: a.maybe.words,
    consequence: a.maybe.words,
    firstAct: a.maybe.words,
    timeToActH: a.maybe.positive,
  });
}

export function policySchema(a: Atoms) {
  return z.strictObject({
    reserve: z.strictObject({
      floorL: a.zeroOrMore,
      counts: z.array(a.id).min(1),
      basis: z
        .strictObject({ days: a.positive, people: a.countFromOne, litresPerPersonDay: a.positive })
        .exactOptional(),
      mayBeDrawnBy: a.id,
    }),
    planningLPerPersonDay: a.positive,
    survivalLPerPersonDay: a.positive,
    medicFloorDrinkAndFoodLPerPersonDay: a.maybe.positive,
    conditionalWater: z.strictObject({ emergencyOnly: a.yesNo, decidedBy: a.id }).exactOptional(),
    deliveredWater: z
      .strictObject({
        /** Until the outpost's own sample is back. */
        usableOnLoadersCertificate: a.yesNo,
        releasedForReserveOnlyByOwnSample: a.yesNo,
      })
      .exactOptional(),
    /** An emptied drinking container may be filled with a lower grade; back only by treatment and release. */
    containersMayGoDown: a.yesUnlessSaid,
    emptiesKeptFreeBeforeFreighter: a.maybe.count,
    falseAlarmsPerYear: z.strictObject({ look: a.positive, alarm: a.positive }).exactOptional(),
  });
}

export function treatmentSchema(a: Atoms) {
  return z.strictObject({
    id: a.id,
    allowed: a.yesNo,
    from: a.id,
    to: a.id,
    /** Only water that came this way. */
    sources: a.words,
    /** Never from a store that held one of these. */
    neverHeld: z.array(a.id).default([]),
    silverToMgPerL: a.maybe.positive,
    usesPerContainer: z.array(z.strictObject({ part: a.id, count: a.countFromOne })).default([]),
    thenHold: a.yesNo,
    sampleAfterDays: a.zeroOrMore,
    releasedBy: a.id,
    minutesPerContainer: a.zeroOrMore,
    secondPerson: a.yesNo,
  });
}
