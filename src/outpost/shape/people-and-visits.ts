// The sections of people: who holds which office, which acts need two, and who and what comes and goes.
import * as z from 'zod';
import type { Atoms } from './atoms.ts';

export const SECOND_PERSON_ACTS = ['relabel', 'waiver', 'treatment'] as const;
export const VISIT_KINDS = ['freighter', 'crewFerry', 'convoy'] as const;

export function officeSchema(a: Atoms) {
  return z.strictObject({
    office: a.id,
    at: z.enum(['aboard', 'ground']),
    clockOffset: a.maybe.clockOffset,
    /** This office releases water from a hold. */
    releases: a.noUnlessSaid,
    waterMinutesQuietDay: a.maybe.zeroOrMore,
    waterMinutesTransferDay: a.maybe.zeroOrMore,
  });
}

const cargo = (a: Atoms) =>
  z.strictObject({
    what: z.enum(['vehicleTank', 'container', 'bottledOxygen']),
    count: a.maybe.countFromOne,
    capacityL: a.maybe.positive,
    massKg: a.maybe.positive,
    full: a.yesUnlessSaid,
    /** Ids of `stores`, once the loader has said which ones come. */
    stores: z.array(a.id).default([]),
    grade: a.maybe.id,
  });

/** What was known about a visit from `knownSinceDay` on; a later line on the same vehicle replaces an earlier one. */
export function visitSchema(a: Atoms) {
  return z.strictObject({
    vehicle: a.id,
    kind: z.enum(VISIT_KINDS),
    knownSinceDay: a.day,
    plannedArrivalDay: a.day,
    plannedDepartureDay: a.maybe.day,
    people: a.maybe.count,
    brings: z.array(cargo(a)).default([]),
    takesWasteToLPerTank: a.maybe.positive,
    manifestChangeUntilDay: a.maybe.day,
    slip: z
      .strictObject({
        fromDays: a.count,
        toDays: a.count,
        noneShare: a.share,
        medianOfRestDays: a.zeroOrMore,
      })
      .exactOptional(),
    /** For planning, the water counts as usable on arrival. */
    waterUsableOnArrival: a.maybe.yesNo,
    sampleTakesDays: a.maybe.zeroOrMore,
    note: a.maybe.words,
  });
}
