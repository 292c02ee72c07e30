// The sections of work and price: parts, service, minutes, levers, costs, bottled oxygen, hazard figures.
import * as z from 'zod';
import type { Atoms } from './atoms.ts';

export function partSchema(a: Atoms) {
  return z.strictObject({
    id: a.id,
    onDayOne: a.count,
    use: a.maybe.words,
    lifeL: a.maybe.positive,
    lifeDoubtL: a.maybe.zeroOrMore,
    meanDaysBetweenFailures: a.maybe.positive,
    note: a.maybe.words,
  });
}

export function bottledOxygenSchema(a: Atoms) {
  return z.strictObject({
    onDayOneKg: a.zeroOrMore,
    normalUseKgPerDay: a.zeroOrMore,
    floorKg: a.zeroOrMore,
    letsElectrolyserRunLower: a.yesNo,
    approvedBy: a.id,
  });
}

export function serviceSchema(a: Atoms) {
  return z.strictObject({
    id: a.id,
    everyDays: a.positive,
    /** Holds only while the reading is above this; it then replaces the line named in `insteadOf`. */
    whenAboveMgPerL: a.maybe.positive,
    insteadOf: a.maybe.id,
    /** What is measured then, and at which of the sampling points: results that come later than this leave a gap. */
    measures: z
      .strictObject({ parameters: z.array(a.id).min(1), points: z.array(a.id).min(1) })
      .exactOptional(),
  });
}

export function taskSchema(a: Atoms) {
  return z.strictObject({
    id: a.id,
    minutes: a.zeroOrMore,
    perContainerMinutes: a.maybe.zeroOrMore,
    /** People at it; the minutes are those of each. */
    people: a.countFromOne.default(1),
    note: a.maybe.words,
  });
}

/** Points are discomfort of the whole crew. */
export function leversSchema(a: Atoms) {
  return z.strictObject({
    crewMinutesPerPoint: a.positive,
    prices: z.array(
      z.strictObject({
        id: a.id,
        points: a.zeroOrMore,
        per: z.enum(['day', 'hour', 'container']).default('day'),
      }),
    ),
    never: z.array(a.words).default([]),
  });
}

export function costsSchema(a: Atoms) {
  return z.strictObject({
    coin: a.words,
    deliveredPerKg: a.zeroOrMore,
    shortOfDrinkingWaterPerL: a.zeroOrMore,
    shortOfTechnicalWaterPerL: a.zeroOrMore,
    unneededOnArrivalPerKg: a.zeroOrMore,
  });
}

/** A hazard box prints a number only from here. */
export function hazardFiguresSchema(a: Atoms) {
  return z.strictObject({
    basis: a.words,
    hotWaterC: a.maybe.temperatureC,
    hotSurfaceC: a.maybe.temperatureC,
    oxygenMostPercent: a.maybe.percent,
    hydrogenMostPercent: a.maybe.percent,
    pushMostOverCabinKPa: a.maybe.positive,
    bottleMostAbsoluteKPa: a.maybe.positive,
  });
}
