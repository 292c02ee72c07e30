// The sections that come first: the outpost itself, its places, its grades of water and their biocides.
import * as z from 'zod';
import type { Atoms } from './atoms.ts';

export const GRAVITIES = ['none', 'partial', 'full'] as const;
export const LABEL_WORDS = ['circle', 'square', 'triangle'] as const;

export function outpostSectionSchema(a: Atoms) {
  return z.strictObject({
    name: a.id,
    kind: a.words,
    gravity: z.enum(GRAVITIES),
    clockOffset: a.clockOffset,
    groundClockOffset: a.maybe.clockOffset,
    /** The date on which Day 1 begins; an opening entry may carry another. */
    dayOne: a.date,
    /** A day of amounts ends here: the line of D05 holds what flowed from D04 21:00 to D05 21:00. */
    dayLineAt: a.clockTime,
    people: a.count,
    cabinVolumeM3: a.positive,
    cabinPressureAbsoluteKPa: a.positive,
    cabinTemperatureC: a.temperatureC,
    waterDensityKgPerM3: z.number().min(800).max(1100),
    waterDensityAtC: a.temperatureC,
    note: a.maybe.words,
  });
}

/** The order of the list is the order in which a stock count walks. */
export function placeSchema(a: Atoms) {
  return z.strictObject({ id: a.id, what: a.maybe.words });
}

export function gradeSchema(a: Atoms) {
  return z.strictObject({
    id: a.id,
    /** The letter that stands for this grade in a field log. */
    letter: a.letter,
    name: a.words,
    /** 1 is the purest; a move to a higher number is a downgrade. */
    rank: a.countFromOne,
    biocide: a.id.default('none'),
    biocideMgPerL: a.maybe.zeroOrMore,
    minerals: a.noUnlessSaid,
    mayFlowInto: z.array(a.id),
    /** Units that may take this grade and make another of it. */
    mayEnterUnits: z.array(a.id).default([]),
    usableFor: z.array(a.words).default([]),
    /** Nothing comes back from a terminal grade. */
    terminal: a.noUnlessSaid,
    emergencyOnly: a.noUnlessSaid,
    label: z.enum(LABEL_WORDS).exactOptional(),
  });
}

export function biocideSchema(a: Atoms) {
  return z.strictObject({
    id: a.id,
    neverMeets: z.array(a.id).default([]),
    /** The rest in an emptied container counts as a meeting too. */
    alsoInRemainder: a.yesUnlessSaid,
    /** Strength of the concentrate that is dosed here, and its doubt (one standard deviation). */
    concentrateMgPerL: a.maybe.positive,
    concentrateDoubtMgPerL: a.maybe.zeroOrMore,
  });
}
