// The small shapes that every section of the outpost file is made of: ids, words, dates, amounts with their ranges.
import * as z from 'zod';
import { flowAtoms } from './flow-end.ts';

/** Ids are what people type and say: letters, digits, spaces and a few marks; up to 60 signs. */
export const ID_PATTERN = /^[\p{L}\p{N}](?:[\p{L}\p{N} ._/+-]{0,58}[\p{L}\p{N}+])?$/u;
export const DATE_PATTERN = /^\d{4}-\d{2}-\d{2}$/;
export const CLOCK_TIME_PATTERN = /^(?:[01]\d|2[0-3]):[0-5]\d$/;
export const LETTER_PATTERN = /^[A-Z]$/;
export const LOG_FIELD_PATTERN = /^[A-Za-z][A-Za-z0-9_]{0,59}$/;
export const CLOCK_OFFSET_PATTERN = /^[+-](?:0\d|1[0-4]):[0-5]\d$/;

/** What lines and choices of a card are called in its formulas. */
export const FORMULA_NAME_PATTERN = /^[a-z][a-z0-9_]{0,39}$/;

/** No amount of an outpost is greater than this in the unit of its key; it catches slips such as a lost point. */
const GREATEST = 1e9;

function makePlainAtoms() {
  const whole = z.int();
  return {
    id: z.string().regex(ID_PATTERN),
    words: z.string().min(1).max(600),
    date: z.string().regex(DATE_PATTERN),
    clockTime: z.string().regex(CLOCK_TIME_PATTERN),
    letter: z.string().regex(LETTER_PATTERN),
    logField: z.string().regex(LOG_FIELD_PATTERN),
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

type PlainAtoms = ReturnType<typeof makePlainAtoms>;
type MaybeAtoms = { readonly [Name in keyof PlainAtoms]: z.ZodExactOptional<PlainAtoms[Name]> };

/**
 * Made when the first file is read, so that loading the program costs nothing, and shared by all sections:
 * building a schema takes longer than judging a file by it.
 */
export function makeAtoms() {
  const plain = makePlainAtoms();
  const entries = Object.entries(plain).map(([name, atom]) => [name, atom.exactOptional()]);
  return {
    ...plain,
    ...flowAtoms(plain),
    /** The same, for keys that may be left out. */
    maybe: Object.fromEntries(entries) as MaybeAtoms,
    noUnlessSaid: plain.yesNo.default(false),
    yesUnlessSaid: plain.yesNo.default(true),
  };
}

export type Atoms = ReturnType<typeof makeAtoms>;
