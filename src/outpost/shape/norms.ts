// The sections of norms: what people take and give, flows that no meter sees, and what evaporates.
import * as z from 'zod';
import type { Atoms } from './atoms.ts';

export function normsSchema(a: Atoms) {
  return z.strictObject({
    people: a.count,
    vapourCollectedLPerPersonDay: a.maybe.zeroOrMore,
    vapourBetweenDaysRelative: a.maybe.share,
    tapLPerPersonDay: a.maybe.zeroOrMore,
    /** The parts add up to the tap. */
    tapParts: z
      .strictObject({ drinkAndFoodLPerPersonDay: a.zeroOrMore, hygieneLPerPersonDay: a.zeroOrMore })
      .exactOptional(),
    tapBetweenDaysRelative: a.maybe.share,
    restDay: z
      .strictObject({
        everyDays: a.countFromOne,
        firstOnDay: a.day,
        vapourLessL: a.zeroOrMore,
        vapourLessDoubtL: a.zeroOrMore,
        tapMoreRelative: a.share,
        tapMoreRelativeDoubt: a.share,
      })
      .exactOptional(),
    oxygenKgPerPersonDay: a.maybe.zeroOrMore,
    electrolyserLPerDay: a.maybe.zeroOrMore,
    flushesPerPersonDay: a.maybe.zeroOrMore,
    waterInFoodLPerPersonDay: a.maybe.zeroOrMore,
    metabolicWaterLPerPersonDay: a.maybe.zeroOrMore,
    visitorsDrinkAsCrew: a.yesUnlessSaid,
    note: a.maybe.words,
  });
}

/** A flow that nobody measures: so much per person and day, from here to there. */
export function normFlowSchema(a: Atoms) {
  return z.strictObject({
    id: a.id,
    from: a.flowEnd,
    to: a.flowEnd,
    use: a.useIfAny,
    litresPerPersonDay: a.zeroOrMore,
    betweenDaysRelative: a.maybe.share,
    note: a.maybe.words,
  });
}

/** Shares of used water that come back by way of the cabin air: a litre not used saves 1 − share × collected × purified. */
export function evaporationSchema(a: Atoms) {
  return z.strictObject({
    shares: z.strictObject({
      hygiene: a.share,
      drinkAndFood: a.share,
      drinkDuringExercise: a.share,
      flush: a.share,
      electrolyser: a.share,
      samples: a.share,
      drippedInCabin: a.share,
    }),
    drippedInCabinDoubt: a.share,
    collectedByCondenserShare: a.share,
    purifiedShare: a.share,
  });
}
