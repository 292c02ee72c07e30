// An amount of water as an entry keeps it: whole milligrams, and the raw reading that they came from.
import * as z from 'zod';

/** Largest amount that is taken, in milligrams: a hundred tonnes, far below the limit of exact integers. */
export const LARGEST_AMOUNT_MG = 100_000_000_000;

export const massMg = z.int().min(0).max(LARGEST_AMOUNT_MG);

/** What was read, and the factor that was in force then: milligrams = value × mgPerUnit, rounded once. */
export const rawReading = z.strictObject({
  value: z.number(),
  unit: z.string().min(1).max(40),
  mgPerUnit: z.number().positive(),
});

export const amount = z.strictObject({
  massMg,
  raw: rawReading,
  /** One standard deviation that the entry itself declares, in milligrams; absent: the instrument's own. */
  uMg: massMg.exactOptional(),
});

export interface RawReading {
  readonly value: number;
  readonly unit: string;
  readonly mgPerUnit: number;
}

export interface Amount {
  readonly massMg: number;
  readonly raw: RawReading;
  readonly uMg?: number;
}

/** Id of a store, port, instrument, unit, hose or visit, or one of the accounts that are no stores. */
export const placeName = z.string().min(1).max(80);

/** A counter's reading: null says that it was not read, which is never zero. */
export const counterReading = z.strictObject({ instrument: placeName, value: z.number().nullable() });

export interface CounterReading {
  readonly instrument: string;
  readonly value: number | null;
}
