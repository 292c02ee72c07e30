// The sections of people: who holds which office, which acts need two, and who and what comes and goes.
import { z } from 'zod';
import type { Atoms } from './atoms.ts';

export const SECOND_PERSON_ACTS = ['relabel', 'waiver', 'treatment'] as const;
export const VISIT_KINDS = ['freighter', 'crewFerry', 'convoy'] as const;

export function officeSchema(a: Atoms) {
  return z.strictObject({
    office: a.id,
    at: z.enum(['aboard', 'ground']),
    clockOffset: a.clockOffset.exactOptional(),
    /** This office releases water from a hold. */
    releases: a.yesNo.default(false),
    waterMinutesQuietDay: a.zeroOrMore.exactOptional(),
    waterMinutesTransferDay: a.zeroOrMore.exactOptional(),
  });
}

const cargo = (a: Atoms) =>
  z.strictObject({
    what: z.enum(['vehicleTank', 'container', 'bottledOxygen']),
    count: a.countFromOne.exactOptional(),
    capacityL: a.positive.exactOptional(),
    massKg: a.positive.exactOptional(),
    full: a.yesNo.default(true),
    /** Ids of `stores`, once the loader has said which ones come. */
    stores: z.array(a.id).default([]),
    grade: a.id.exactOptional(),
  });

/** What was known about a visit from `knownSinceDay` on; a later line on the same vehicle replaces an earlier one. */
export function visitSchema(a: Atoms) {
  return z.strictObject({
    vehicle: a.id,
    kind: z.enum(VISIT_KINDS),
    knownSinceDay: a.day,
    plannedArrivalDay: a.day,
    plannedDepartureDay: a.day.exactOptional(),
    people: a.count.exactOptional(),
    brings: z.array(cargo(a)).default([]),
    takesWasteToLPerTank: a.positive.exactOptional(),
    manifestChangeUntilDay: a.day.exactOptional(),
    slip: z
      .strictObject({ fromDays: a.count, toDays: a.count, noneShare: a.share, medianOfRestDays: a.zeroOrMore })
      .exactOptional(),
    /** For planning, the water counts as usable on arrival. */
    waterUsableOnArrival: a.yesNo.exactOptional(),
    sampleTakesDays: a.zeroOrMore.exactOptional(),
    note: a.words.exactOptional(),
  });
}
