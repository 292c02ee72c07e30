// The sections of what moves water under pressure: hoses, couplings, the push, the gauging bottle.
import { z } from 'zod';
import type { Atoms } from './atoms.ts';

export function hoseSchema(a: Atoms) {
  return z.strictObject({
    id: a.id,
    what: a.words,
    lengthM: a.positive,
    boreMm: a.positive,
    roughnessUm: a.zeroOrMore.exactOptional(),
    /** Sum of the loss coefficients of bends, inlet and outlet. */
    minorLossK: a.zeroOrMore.exactOptional(),
    couplings: z.array(a.id).default([]),
    ratingOverCabinKPa: a.positive,
    contentL: a.zeroOrMore.exactOptional(),
    flowLPerMin: a.positive.exactOptional(),
    flowDoubtRelative: a.share.exactOptional(),
    oneFlowAtATime: a.yesNo.default(true),
    lifeDays: a.positive.exactOptional(),
    lifeUses: a.countFromOne.exactOptional(),
    usesOnDayOne: a.count.exactOptional(),
    serial: a.words.exactOptional(),
  });
}

export function couplingSchema(a: Atoms) {
  return z.strictObject({ id: a.id, kvM3PerH: a.positive, ratingOverCabinKPa: a.positive });
}

export function pushSchema(a: Atoms) {
  return z.strictObject({
    gas: a.words,
    setOverCabinKPa: a.positive,
    setDoubtKPa: a.zeroOrMore,
    reliefOverCabinKPa: a.positive,
    compressorFreeFlowLPerMin: a.positive.exactOptional(),
    compressorTripC: a.temperatureC.exactOptional(),
    leakCheck: z.strictObject({ absoluteKPa: a.positive, holdMin: a.positive, dropLimitKPa: a.positive }),
    /** A transfer as it should go, to hold one's own minutes against. */
    workedFill: z
      .strictObject({
        hose: a.id,
        amountL: a.positive,
        minutes: a.positive,
        pushOverCabinKPa: a.positive,
        waterC: a.temperatureC,
        flowLPerMin: a.positive,
        reynolds: a.positive,
        note: a.words.exactOptional(),
      })
      .exactOptional(),
  });
}

export function gaugingBottleSchema(a: Atoms) {
  return z.strictObject({
    volumeL: a.positive,
    volumeDoubtL: a.zeroOrMore,
    fullAbsoluteKPa: a.positive,
    ratingAbsoluteKPa: a.positive,
    gas: a.words,
    /** No vapour term: the gas side is dry. */
    gasSideIsDry: a.yesNo,
    gauges: z.array(a.id).min(1),
    neverAboveTankRating: a.yesNo,
    waitMin: a.zeroOrMore,
    ventToCabinAfter: a.yesNo,
  });
}
