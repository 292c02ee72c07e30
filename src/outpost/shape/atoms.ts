// The small shapes that every section of the outpost file is made of: ids, words, dates, amounts with their ranges.
import { z } from 'zod';

/** Ids are what people type and say: letters, digits, spaces and a few marks; up to 60 signs. */
export const ID_PATTERN = /^[\p{L}\p{N}](?:[\p{L}\p{N} ._/+-]{0,58}[\p{L}\p{N}+])?$/u;
export const DATE_PATTERN = /^\d{4}-\d{2}-\d{2}$/;
export const CLOCK_TIME_PATTERN = /^(?:[01]\d|2[0-3]):[0-5]\d$/;
export const CLOCK_OFFSET_PATTERN = /^[+-](?:0\d|1[0-4]):[0-5]\d$/;

/** No amount of an outpost is greater than this in the unit of its key; it catches slips such as a lost point. */
const GREATEST = 1e9;

/** Made anew for each schema, so that loading the program costs nothing until a file is read. */
export function makeAtoms() {
  const whole = z.int();
  return {
    id: z.string().regex(ID_PATTERN),
    words: z.string().min(1).max(600),
    date: z.string().regex(DATE_PATTERN),
    clockTime: z.string().regex(CLOCK_TIME_PATTERN),
    clockOffset: z.string().regex(CLOCK_OFFSET_PATTERN),
    positive: z.number().positive().max(GREATEST),
    zeroOrMore: z.number().nonnegative().max(GREATEST),
    count: whole.nonnegative().max(GREATEST),
    countFromOne: whole.positive().max(GREATEST),
    day: whole.min(-100_000).max(100_000),
    share: z.number().min(0).max(1),
    percent: z.number().min(0).max(100),
    temperatureC: z.number().min(-150).max(1500),
    yesNo: z.boolean(),
  };
}

export type Atoms = ReturnType<typeof makeAtoms>;
