// The section of instruments: what each measures, with its random and its calibration doubt kept apart.
import * as z from 'zod';
import type { Atoms } from './atoms.ts';

export const MEASURES = [
  'flow',
  'content',
  'pressure',
  'temperature',
  'humidity',
  'time',
  'quality',
] as const;
export const READINGS = ['sinceLine', 'runningTotal', 'amount', 'content', 'spot'] as const;
export const INSTRUMENT_UNITS = [
  'L',
  'kg',
  'strokes',
  'flushes',
  'counts',
  'mm',
  'kPa',
  '°C',
  '%',
  'min',
  'mg/L',
  'µS/cm',
  'CFU/mL',
] as const;

/** Every doubt is one standard deviation; absolute ones are in the unit of the instrument. */
export function instrumentSchema(a: Atoms) {
  return z.strictObject({
    id: a.id,
    name: a.maybe.words,
    measures: z.enum(MEASURES),
    /** What a quality instrument tells: TOC, silver, … */
    quantity: a.maybe.id,
    unit: z.enum(INSTRUMENT_UNITS),
    pressureIs: z.enum(['absolute', 'overCabin']).exactOptional(),
    reading: z.enum(READINGS),
    litresPerCount: a.maybe.positive,
    /** New at every reading. */
    random: z
      .strictObject({
        absolute: a.maybe.zeroOrMore,
        relative: a.maybe.share,
        /** Relative doubt of one day's amount. */
        relativePerDay: a.maybe.share,
        /** Counting statistics: the doubt is the square root of the count. */
        poisson: a.maybe.yesNo,
      })
      .exactOptional(),
    /** The same at every reading of this instrument until it is calibrated again. */
    calibration: z.strictObject({ absolute: a.maybe.zeroOrMore, relative: a.maybe.share }).exactOptional(),
    /** The doubt of one reading as the outpost states it, all parts together. */
    statedDoubt: a.maybe.zeroOrMore,
    /** The doubt parts are those under `gauging` of the store that is read. */
    doubtFromStore: a.noUnlessSaid,
    driftRelativePerSqrtDay: a.maybe.share,
    resolution: a.maybe.positive,
    rollsOverAt: a.maybe.positive,
    detectionLimit: a.maybe.zeroOrMore,
    serial: a.maybe.words,
    calibratedOn: a.maybe.date,
    /** The field of a field log that carries this instrument's reading. */
    logField: a.maybe.logField,
    /** The word after `method` in a field log that means this instrument. */
    logMethod: a.maybe.words,
    onHoses: z.array(a.id).default([]),
    /** An entry that states its own doubt is believed before this file. */
    entryDoubtStands: a.noUnlessSaid,
    /** The unit whose flow is counted: its way of water is this counter's. */
    meters: a.maybe.id,
    /** Its own way of water, where no unit stands for it; sources in the order in which they are used up. */
    route: z.strictObject({ from: a.flowSources, to: a.flowEnd, use: a.useIfAny }).exactOptional(),
    note: a.maybe.words,
  });
}
