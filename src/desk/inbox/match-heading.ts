// What one heading means: by its whole words, never by a part that could mean something else.
import { findUnit } from '../../ground/units/index.ts';
import { HEADING_WORDS } from './heading-words.ts';
import { type Meaning, type Means, ROLES, readZone, spellMeaning } from './meaning.ts';
import { bare, type Vocabulary, wordsOf } from './vocabulary.ts';

/** Words beside the name of a store that say no more than that it is its content. */
const OF_A_CONTENT = new Set([
  'content',
  'of',
  'in',
  'gauge',
  'gauged',
  'weighed',
  'weight',
  'level',
  'left',
  'the',
]);
const UNIT_WORDS: ReadonlyMap<string, string> = new Map([
  ['litre', 'L'],
  ['litres', 'L'],
  ['liter', 'L'],
  ['liters', 'L'],
  ['ltr', 'L'],
  ['millilitres', 'mL'],
  ['kilograms', 'kg'],
  ['kgs', 'kg'],
  ['pounds', 'lb'],
  ['lbs', 'lb'],
  ['percent', '%'],
  ['gallons', 'gal'],
]);
const AMOUNT_UNITS = new Set(['L', 'mL', 'kg', 'g', 'lb', 'gal', 'm3']);
const ZONE_IN_TEXT = /\b(?:UTC|GMT)(?:\s?[+\-\u2212]\s?\d{1,2}(?::\d{2})?)?(?!\w)/i;

const byWord: ReadonlyMap<string, (typeof ROLES)[number]> = new Map(
  ROLES.flatMap((role) => HEADING_WORDS[role].map((word) => [keyOf(word), role] as const)),
);

/** A sign such as ± has no letters; it is its own key. */
function keyOf(word: string): string {
  return bare(word) === '' ? word.trim() : bare(word);
}

export function unitOf(text: string): string | null {
  const word = text.trim();
  const name = findUnit(word)?.name ?? UNIT_WORDS.get(word.toLowerCase()) ?? null;
  return name;
}

interface Parted {
  readonly words: string;
  readonly unit: string | null;
  readonly zoneMin: number | null;
}

/** Takes unit and clock out of a heading: `Product (L)`, `amount, kg`, `Time UTC+5:30`. */
export function partHeading(heading: string): Parted {
  const zone = ZONE_IN_TEXT.exec(heading)?.[0] ?? null;
  const rest = (zone === null ? heading : heading.replace(zone, ' ')).replace(/[([]\s*[)\]]/g, ' ').trim();
  const zoneMin = zone === null ? null : readZone(zone);
  const bracket = /[([]\s*(?:in\s+)?([^()[\]]+?)\s*[)\]]/.exec(rest);
  const inBracket = bracket === null ? null : unitOf(bracket[1] ?? '');
  if (bracket !== null && inBracket !== null) {
    return { words: rest.replace(bracket[0], ' ').trim(), unit: inBracket, zoneMin };
  }
  const last = /^(.*?)[\s,/]+(?:in\s+)?(\S+)$/.exec(rest);
  const lastUnit = last === null ? null : unitOf(last[2] ?? '');
  if (last !== null && lastUnit !== null) return { words: last[1] ?? '', unit: lastUnit, zoneMin };
  return { words: rest, unit: null, zoneMin };
}

/** Everything that a heading may mean here; one is a match, more are a question, none is a column of notes. */
export function meaningsOf(heading: string, vocabulary: Vocabulary): readonly Meaning[] {
  const whole = meansOfWords(heading, vocabulary);
  const { words, unit, zoneMin } = partHeading(heading);
  const parted = words === '' ? meansOfUnit(unit, vocabulary) : meansOfWords(words, vocabulary);
  const found = whole.length > 0 && zoneMin === null ? whole : parted;
  const aloneUnit = unit ?? unitOf(heading);
  const meanings = found.map((means) => ({ means, unit: aloneUnit, zoneMin }));
  return [...new Map(meanings.map((each) => [spellMeaning(each), each])).values()];
}

function meansOfWords(text: string, vocabulary: Vocabulary): readonly Means[] {
  const instrument = vocabulary.instrument(text);
  if (instrument !== null) return [{ what: 'instrument', id: instrument }];
  const role = byWord.get(keyOf(text));
  if (role !== undefined) return [{ what: role }];
  const store = storeIn(text, vocabulary);
  if (store !== null) return [{ what: 'content', store }];
  const words = wordsOf(text);
  if (words.length === 0) return [];
  return vocabulary.metersWith(words).map((id) => ({ what: 'instrument', id }));
}

function storeIn(text: string, vocabulary: Vocabulary): string | null {
  const whole = vocabulary.store(text);
  if (whole !== null) return whole;
  const words = text.split(/[\s,:]+/).filter((word) => !OF_A_CONTENT.has(word.toLowerCase()));
  return words.length === 1 ? vocabulary.store(words[0] ?? '') : null;
}

/** A column that is called by its unit alone. */
function meansOfUnit(unit: string | null, vocabulary: Vocabulary): readonly Means[] {
  if (unit === null) return [];
  if (AMOUNT_UNITS.has(unit)) return [{ what: 'amount' }];
  return vocabulary.metersIn(unit).map((id) => ({ what: 'instrument', id }));
}
