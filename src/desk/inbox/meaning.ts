// What a column means: when, what, where, how much, a meter, the content of a store; and how that is spelled in a command.
import { findUnit, nearest } from '../../ground/units/index.ts';
import type { Vocabulary } from './vocabulary.ts';

/** Meanings that are the same at every outpost. */
export const ROLES = [
  'time',
  'date',
  'clock',
  'day',
  'act',
  'store',
  'from',
  'to',
  'port',
  'amount',
  'doubt',
  'unit',
  'use',
  'grade',
  'people',
  'person',
  'note',
  'by',
] as const;
export type Role = (typeof ROLES)[number];

export type Means =
  | { readonly what: Role }
  | { readonly what: 'instrument'; readonly id: string }
  | { readonly what: 'content'; readonly store: string };

export interface Meaning {
  readonly means: Means;
  /** The unit that the heading gives to every bare number under it. */
  readonly unit: string | null;
  /** The offset of the clock that the heading names, in minutes. */
  readonly zoneMin: number | null;
}

/** `amount [L]`, `strokes`, `content of KB [kg]`, `time [+05:30]`: what `--columns` takes and the book keeps. */
export function spellMeaning({ means, unit, zoneMin }: Meaning): string {
  const word =
    means.what === 'instrument'
      ? means.id
      : means.what === 'content'
        ? `content of ${means.store}`
        : means.what;
  // A counter that is called by its unit needs no second word.
  const beside = (unit === word ? null : unit) ?? (zoneMin === null ? null : spellZone(zoneMin));
  return beside === null ? word : `${word} [${beside}]`;
}

/** Null for a word that means nothing at this outpost. */
export function readMeaning(text: string, vocabulary: Vocabulary): Meaning | null {
  const match = /^\s*([^[\]]{1,120}?)\s*(?:\[([^[\]]{1,20})\])?\s*$/.exec(text);
  if (match === null) return null;
  const [, word = '', beside] = match;
  const means = meansOf(word, vocabulary);
  if (means === null) return null;
  const zoneMin = beside === undefined ? null : readZone(beside);
  const unit = beside === undefined || zoneMin !== null ? null : (findUnit(beside)?.name ?? null);
  return beside !== undefined && unit === null && zoneMin === null ? null : { means, unit, zoneMin };
}

function meansOf(word: string, vocabulary: Vocabulary): Means | null {
  const role = ROLES.find((each) => each === word.toLowerCase());
  if (role !== undefined) return { what: role };
  const instrument = vocabulary.instrument(word);
  if (instrument !== null) return { what: 'instrument', id: instrument };
  const store = vocabulary.store(word.replace(/^content of /i, ''));
  return store === null ? null : { what: 'content', store };
}

export function nearestMeanings(word: string, vocabulary: Vocabulary): readonly string[] {
  return nearest(word.replace(/\[.*/, '').trim().slice(0, 60), [...ROLES, ...vocabulary.instrumentNames]);
}

/** `+05:30`, `UTC+5:30`, `UTC`, `Z`; null for anything else. */
export function readZone(text: string): number | null {
  const match = /^(?:UTC|GMT|Z)?\s*(?:([+\-\u2212])\s?(\d{1,2})(?::?(\d{2}))?)?$/i.exec(text.trim());
  if (match === null || text.trim() === '') return null;
  const [, sign, hours = '0', minutes = '0'] = match;
  const size = digits(hours) * 60 + digits(minutes);
  if (size > MOST_OFFSET_MIN || digits(minutes) > 59) return null;
  return sign === '-' || sign === '\u2212' ? 0 - size : size;
}

const MOST_OFFSET_MIN = 14 * 60;

export function digits(text: string): number {
  let value = 0;
  for (const digit of text) value = value * 10 + '0123456789'.indexOf(digit);
  return value;
}

/** `+05:30` */
export function spellZone(zoneMin: number): string {
  const size = Math.abs(zoneMin);
  const two = (value: number) => `${value}`.padStart(2, '0');
  return `${zoneMin < 0 ? '-' : '+'}${two(Math.floor(size / 60))}:${two(size % 60)}`;
}
