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
 * @source RFC 8785, sections 3.2.2 and 3.2.3
 */
export function canonicalJson(value: Json, depth = 0): string {
  if (depth > DEEPEST_NESTING) throw new TypeError(`nested deeper than ${DEEPEST_NESTING}`);
  if (value === null) return 'null';
  if (typeof value === 'string') return spellString(value);
  if (typeof value === 'boolean') return value ? 'true' : 'false';
  if (typeof value === 'number') {
    if (!Number.isFinite(value)) throw new TypeError(`${value} is no JSON number`);
    return JSON.stringify(value);
  }
  if (typeof value !== 'object') throw new TypeError(`${typeof value} is no JSON`);
  return isList(value) ? spellList(value, depth) : spellObject(value, depth);
}

function isList(
  value: readonly Json[] | { readonly [key: string]: Json | undefined },
): value is readonly Json[] {
  return Array.isArray(value);
}

function spellString(text: string): string {
  if (!text.isWellFormed()) throw new TypeError('a lone surrogate is no text');
  return JSON.stringify(text);
}

function spellList(list: readonly Json[], depth: number): string {
  let out = '[';
  for (let i = 0; i < list.length; i++) {
    if (i > 0) out += ',';
    out += canonicalJson(list[i] as Json, depth + 1);
  }
  return `${out}]`;
}

function spellObject(object: { readonly [key: string]: Json | undefined }, depth: number): string {
  // The default order of sort() is the order of UTF-16 code units, which is the one that the standard asks for.
  const keys = Object.keys(object).sort();
  let out = '{';
  for (const key of keys) {
    const value = object[key];
    if (value === undefined) continue;
    if (out.length > 1) out += ',';
    out += `${spellString(key)}:${canonicalJson(value, depth + 1)}`;
  }
  return `${out}}`;
}
