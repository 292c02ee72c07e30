// Canonical JSON of RFC 8785: one spelling for one value, so that a seal can be taken over it.

/** What JSON can say. */
export type Json =
  | string
  | number
  | boolean
  | null
  | readonly Json[]
  | { readonly [key: string]: Json | undefined };

/** Deeper nesting than this is refused: no entry needs it, and it bounds the recursion. */
export const DEEPEST_NESTING = 32;

/**
 * Spells a value in canonical JSON: keys sorted by UTF-16 code units, no white space, numbers as ECMAScript prints them.
 * A key whose value is undefined is left out.
 * @throws TypeError for NaN, infinities, lone surrogates, other types, or nesting deeper than {@link DEEPEST_NESTING}
 * @source rfc-8785, sections 3.2.2 and 3.2.3
 */
export function canonicalJson(value: Json): string {
  return spell(value, 0);
}

function spell(value: Json, depth: number): string {
  switch (typeof value) {
    case 'string':
      return spellString(value);
    case 'number':
      return spellNumber(value);
    case 'boolean':
      return value ? 'true' : 'false';
    case 'object':
      if (value === null) return 'null';
      if (depth >= DEEPEST_NESTING) throw new TypeError(`nested deeper than ${DEEPEST_NESTING}`);
      return isList(value) ? spellList(value, depth) : spellObject(value, depth);
    default:
      throw new TypeError(`${typeof value} is no JSON`);
  }
}

function isList(
  value: readonly Json[] | { readonly [key: string]: Json | undefined },
): value is readonly Json[] {
  return Array.isArray(value);
}

/** ECMAScript prints a finite number in the way that the standard asks for; minus zero is 0. */
function spellNumber(value: number): string {
  if (!Number.isFinite(value)) throw new TypeError(`${value} is no JSON number`);
  return `${value}`;
}

/** Printable ASCII without quote and backslash: most texts of a book, and they are spelled as they are. */
const PLAIN = /^[ !#-[\]-~]*$/;

function spellString(text: string): string {
  if (PLAIN.test(text)) return `"${text}"`;
  if (!text.isWellFormed()) throw new TypeError('a lone surrogate is no text');
  return JSON.stringify(text);
}

function spellList(list: readonly Json[], depth: number): string {
  let out = '[';
  for (let i = 0; i < list.length; i++) {
    if (i > 0) out += ',';
    out += spell(list[i] as Json, depth + 1);
  }
  return `${out}]`;
}

function spellObject(object: { readonly [key: string]: Json | undefined }, depth: number): string {
  let out = '';
  for (const key of sortedKeys(object)) {
    const value = object[key];
    if (value === undefined) continue;
    out += `${out === '' ? '{' : ','}${spellString(key)}:${spell(value, depth + 1)}`;
  }
  return out === '' ? '{}' : `${out}}`;
}

/** What was read from a book is sorted already, and looking costs less than sorting. */
function sortedKeys(object: object): readonly string[] {
  const keys = Object.keys(object);
  for (let i = 1; i < keys.length; i++) {
    // Both compare by UTF-16 code units, which is the order that the standard asks for.
    if ((keys[i - 1] as string) > (keys[i] as string)) return keys.sort();
  }
  return keys;
}
