// The section of instruments: what each measures, with its random and its calibration doubt kept apart.
import { z } from 'zod';
import type { Atoms } from './atoms.ts';
import { routeSchema } from './flow-end.ts';

export const MEASURES = ['flow', 'content', 'pressure', 'temperature', 'humidity', 'time', 'quality'] as const;
export const READINGS = ['sinceLine', 'runningTotal', 'amount', 'content', 'spot'] as const;
export const INSTRUMENT_UNITS = [
  'L', 'kg', 'strokes', 'flushes', 'counts', 'mm', 'kPa', '°C', '%', 'min', 'mg/L', 'µS/cm', 'CFU/mL',
] as const;

/** Every doubt is one standard deviation; absolute ones are in the unit of the instrument. */
export function instrumentSchema(a: Atoms) {
  return z.strictObject({
    id: a.id,
    name: a.words.exactOptional(),
    measures: z.enum(MEASURES),
    /** What a quality instrument tells: TOC, silver, … */
    quantity: a.id.exactOptional(),
    unit: z.enum(INSTRUMENT_UNITS),
    pressureIs: z.enum(['absolute', 'overCabin']).exactOptional(),
    reading: z.enum(READINGS),
    litresPerCount: a.positive.exactOptional(),
    /** New at every reading. */
    random: z
      .strictObject({
        absolute: a.zeroOrMore.exactOptional(),
        relative: a.share.exactOptional(),
        /** Relative doubt of one day's amount. */
        relativePerDay: a.share.exactOptional(),
        /** Counting statistics: the doubt is the square root of the count. */
        poisson: a.yesNo.exactOptional(),
      })
      .exactOptional(),
    /** The same at every reading of this instrument until it is calibrated again. */
    calibration: z.strictObject({ absolute: a.zeroOrMore.exactOptional(), relative: a.share.exactOptional() }).exactOptional(),
    /** The doubt of one reading as the outpost states it, all parts together. */
    statedDoubt: a.zeroOrMore.exactOptional(),
    /** The doubt parts are those under `gauging` of the store that is read. */
    doubtFromStore: a.yesNo.default(false),
    driftRelativePerSqrtDay: a.share.exactOptional(),
    resolution: a.positive.exactOptional(),
    rollsOverAt: a.positive.exactOptional(),
    detectionLimit: a.zeroOrMore.exactOptional(),
    serial: a.words.exactOptional(),
    calibratedOn: a.date.exactOptional(),
    /** The field of a field log that carries this instrument's reading. */
    logField: z.string().regex(/^[A-Za-z][A-Za-z0-9_]{0,59}$/).exactOptional(),
    /** The word after `method` in a field log that means this instrument. */
    logMethod: a.words.exactOptional(),
    onHoses: z.array(a.id).default([]),
    /** An entry that states its own doubt is believed before this file. */
    entryDoubtStands: a.yesNo.default(false),
    /** The unit whose flow is counted: its way of water is this counter's. */
    meters: a.id.exactOptional(),
    route: routeSchema(a).exactOptional(),
    note: a.words.exactOptional(),
  });
}
