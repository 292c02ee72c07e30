// What an entry is: the envelope that every kind shares. A kind's own fields stand in `body` (see kinds/).
import * as z from 'zod';
import { entryIdPattern } from './entry-id.ts';
import type { Body, Kind } from './kinds/index.ts';

/** Largest instant that is taken: the end of the year 2999, in UTC milliseconds. */
export const LATEST_INSTANT_MS = 32_503_679_999_999;
/** Smallest instant that is taken: the start of the year 1900. */
export const EARLIEST_INSTANT_MS = -2_208_988_800_000;

const instantMs = z.int().min(EARLIEST_INSTANT_MS).max(LATEST_INSTANT_MS);
const offsetMin = z
  .int()
  .min(-14 * 60)
  .max(14 * 60);
const shortText = z.string().min(1).max(200);

/** The second person of a two-person act. Without a code the word stays "declared" for ever, on paper too. */
export const secondPerson = z.strictObject({
  office: shortText,
  confirmation: z.enum(['by own code', 'declared, not verified']),
});

export const envelopeShape = {
  id: z.string().regex(entryIdPattern),
  site: z.string().regex(/^[a-z0-9][a-z0-9-]{0,30}$/),
  number: z.int().min(1),
  version: z.int().min(1),
  happenedAtMs: instantMs,
  happenedOffsetMin: offsetMin,
  enteredAtMs: instantMs,
  enteredOffsetMin: offsetMin,
  /** Office of the person who says so: keeper, second, medic, chief, planner, … */
  by: shortText,
  second: secondPerson.exactOptional(),
  /** Crew minutes spent, all people together. */
  crewMinutes: z.number().min(0).max(100_000).exactOptional(),
  people: z.int().min(0).max(1000).exactOptional(),
  /** Who copied it, when it was not the person who did it. */
  source: shortText.exactOptional(),
  note: z.string().min(1).max(4000).exactOptional(),
  /** Why a fact was kept although a rule speaks against it. */
  happened: z.string().min(1).max(1000).exactOptional(),
  /** Why it comes after its day was closed. */
  late: z.string().min(1).max(1000).exactOptional(),
  /** Where it came from when it was read from a file. */
  origin: z
    .strictObject({ format: shortText, ref: shortText, line: z.int().min(1).exactOptional() })
    .exactOptional(),
};

export interface SecondPerson {
  readonly office: string;
  readonly confirmation: 'by own code' | 'declared, not verified';
}

/** What a person adds about an entry, beside what happened. */
export interface Circumstances {
  readonly by: string;
  readonly second?: SecondPerson;
  readonly crewMinutes?: number;
  readonly people?: number;
  readonly source?: string;
  readonly note?: string;
  readonly happened?: string;
  readonly late?: string;
  readonly origin?: { readonly format: string; readonly ref: string; readonly line?: number };
}

/** An entry that has no number yet: the site gives numbers when it keeps it. */
export interface Draft<K extends Kind = Kind> extends Circumstances {
  readonly id: string;
  readonly version: number;
  readonly kind: K;
  readonly happenedAtMs: number;
  readonly happenedOffsetMin: number;
  readonly enteredAtMs: number;
  readonly enteredOffsetMin: number;
  readonly body: Body<K>;
}

/** An entry as the book keeps it, for ever. */
export interface Entry<K extends Kind = Kind> extends Draft<K> {
  readonly site: string;
  /** Counts from 1 without a gap, for each site. */
  readonly number: number;
}

/** Any entry, so that `kind` tells the shape of `body`. */
export type AnyEntry = { [K in Kind]: Entry<K> }[Kind];
/** Any draft, so that `kind` tells the shape of `body`. */
export type AnyDraft = { [K in Kind]: Draft<K> }[Kind];
