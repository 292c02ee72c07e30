// The small shapes that the lines of a field log are made of: ids, names, texts, litres, pressures and counts with their ranges.
import * as z from 'zod';

/** Order of writing: letters and digits with . _ - between them, such as `E0035`. */
export const LINE_ID_PATTERN = /^[A-Za-z0-9][A-Za-z0-9._-]{0,23}$/;
/** One line of at least one visible sign; no blank at either end. Lone surrogates are no text: no seal can be taken over them. */
export const NAME_PATTERN = /^(?!\s)[^\p{Cc}\p{Cs}]+(?<!\s)$/u;
/** As a name, and line ends and tabs as well. */
export const TEXT_PATTERN = /^(?:[^\p{Cc}\p{Cs}]|[\t\n\r])+$/u;
export const DATE_PATTERN = /^\d{4}-\d{2}-\d{2}$/;
/** A letter of the outpost file's grades, or `-` for a store that was never used. */
export const GRADE_PATTERN = /^(?:[A-Z]|-)$/;
/** A grade, with a 0 behind it when the store had been emptied and held that grade last. */
export const WAS_PATTERN = /^(?:[A-Z]0?|-)$/;

/** Ninety cubic metres: with it no amount leaves the range that the book keeps, at any density of water. */
const MOST_LITRES = 90_000;
const MOST_COUNTED = 1e9;

/** What is a person's word, at most so long. */
function texts() {
  const name = (longest: number) => z.string().max(longest).regex(NAME_PATTERN);
  const text = (longest: number) => z.string().max(longest).regex(TEXT_PATTERN);
  return {
    lineId: z.string().regex(LINE_ID_PATTERN),
    name: name(80),
    point: name(55),
    office: name(200),
    text: text(1000),
    note: text(4000),
    date: z.string().regex(DATE_PATTERN),
    /** Read by the one reader of instants; only length and signs are a matter of shape. */
    instant: name(64),
    grade: z.string().regex(GRADE_PATTERN),
    was: z.string().regex(WAS_PATTERN),
  };
}

function numbers() {
  const between = (least: number, greatest: number) => z.number().min(least).max(greatest);
  return {
    yesNo: z.boolean(),
    day: z.int().min(-100_000).max(100_000),
    people: z.int().min(0).max(10_000),
    litres: between(0, MOST_LITRES),
    capacityL: z.number().positive().max(MOST_LITRES),
    millilitres: between(0, 1e6),
    loadedKg: between(0, 90_000),
    minutes: z.number().positive().max(1e6),
    crewMinutes: between(0, 100_000),
    pressureKPaAbs: z.number().positive().max(10_000),
    pushKPa: between(0, 10_000),
    dropKPa: between(-10_000, 10_000),
    temperatureC: between(-150, 1500),
    percent: between(0, 100),
    counted: between(0, MOST_COUNTED),
    count: z.int().min(0).max(MOST_COUNTED),
    mgPerL: between(0, 1e6),
    microsiemens: between(0, 1e7),
  };
}

/** Made when the first log is read: building a schema takes longer than judging a line by it. */
export function makeAtoms() {
  const atoms = { ...texts(), ...numbers() };
  return {
    ...atoms,
    names: z.array(atoms.name).max(1000),
    someNames: z.array(atoms.name).min(1).max(1000),
    /** What every line has, and may have. */
    head: {
      id: atoms.lineId,
      t: atoms.instant,
      day: atoms.day,
      by: atoms.office.exactOptional(),
      crew_min: atoms.crewMinutes.exactOptional(),
      note: atoms.note.exactOptional(),
      source: atoms.office.exactOptional(),
    },
  };
}

export type Atoms = ReturnType<typeof makeAtoms>;
