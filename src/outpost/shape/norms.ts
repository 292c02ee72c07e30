// The sections of norms: what people take and give, flows that no meter sees, and what evaporates.
import { z } from 'zod';
import type { Atoms } from './atoms.ts';
import { flowEndSchema, USES } from './flow-end.ts';

export function normsSchema(a: Atoms) {
  return z.strictObject({
    people: a.count,
    vapourCollectedLPerPersonDay: a.zeroOrMore.exactOptional(),
    vapourBetweenDaysRelative: a.share.exactOptional(),
    tapLPerPersonDay: a.zeroOrMore.exactOptional(),
    /** The parts add up to the tap. */
    tapParts: z
      .strictObject({ drinkAndFoodLPerPersonDay: a.zeroOrMore, hygieneLPerPersonDay: a.zeroOrMore })
      .exactOptional(),
    tapBetweenDaysRelative: a.share.exactOptional(),
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
    oxygenKgPerPersonDay: a.zeroOrMore.exactOptional(),
    electrolyserLPerDay: a.zeroOrMore.exactOptional(),
    flushesPerPersonDay: a.zeroOrMore.exactOptional(),
    waterInFoodLPerPersonDay: a.zeroOrMore.exactOptional(),
    metabolicWaterLPerPersonDay: a.zeroOrMore.exactOptional(),
    visitorsDrinkAsCrew: a.yesNo.default(true),
    note: a.words.exactOptional(),
  });
}

/** A flow that nobody measures: so much per person and day, from here to there. */
export function normFlowSchema(a: Atoms) {
  return z.strictObject({
    id: a.id,
    from: flowEndSchema(a),
    to: flowEndSchema(a),
    use: z.enum(USES).exactOptional(),
    litresPerPersonDay: a.zeroOrMore,
    betweenDaysRelative: a.share.exactOptional(),
    note: a.words.exactOptional(),
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
