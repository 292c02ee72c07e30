// The sections of what moves water under pressure: hoses, couplings, the push, the gauging bottle.
import * as z from 'zod';
import type { Atoms } from './atoms.ts';

export function hoseSchema(a: Atoms) {
  return z.strictObject({
    id: a.id,
    what: a.words,
    lengthM: a.positive,
    boreMm: a.positive,
    roughnessUm: a.maybe.zeroOrMore,
    /** Sum of the loss coefficients of bends, inlet and outlet. */
    minorLossK: a.maybe.zeroOrMore,
    couplings: z.array(a.id).default([]),
    ratingOverCabinKPa: a.positive,
    contentL: a.maybe.zeroOrMore,
    flowLPerMin: a.maybe.positive,
    flowDoubtRelative: a.maybe.share,
    oneFlowAtATime: a.yesUnlessSaid,
    lifeDays: a.maybe.positive,
    lifeUses: a.maybe.countFromOne,
    usesOnDayOne: a.maybe.count,
    serial: a.maybe.words,
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
    compressorFreeFlowLPerMin: a.maybe.positive,
    compressorTripC: a.maybe.temperatureC,
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
        note: a.maybe.words,
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
