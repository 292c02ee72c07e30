// The signs of a text: what a terminal can show of them, and nothing that could move its cursor.
import type { TextStyle } from './options.ts';

/** Our own signs in ASCII. */
const inAscii: ReadonlyMap<string, string> = new Map([
  ['\u00B1', '+/-'],
  ['\u2212', '-'],
  ['\u2013', '-'],
  ['\u2014', '-'],
  ['\u2026', '...'],
  ['\u2018', "'"],
  ['\u2019', "'"],
  ['\u201C', '"'],
  ['\u201D', '"'],
  ['\u00B7', ','],
  ['\u2192', '->'],
  ['\u00B5', 'u'],
  ['\u00B0', 'deg'],
  ['\u00B3', '3'],
  ['\u00B2', '2'],
  ['\u202F', ''],
  // The signs of a bar: see gauge-bar.ts.
  ['\u2591', '.'],
  ['\u2502', '|'],
  ['\u2500', '-'],
  ['\u251C', '['],
  ['\u2524', ']'],
  ['\u25CF', 'o'],
]);

// Control signs, and signs that turn the direction of writing: a note must not be able to rewrite the screen.
// biome-ignore lint/suspicious/noControlCharactersInRegex: these are the signs to be found
const unseen = /[\u0000-\u001F\u007F-\u009F\u200B-\u200F\u202A-\u202E\u2060-\u2069\uFEFF]/g;

/** One line of text that is safe to show; line ends become spaces. */
export function safe(text: string): string {
  return text.replace(/[\t\n\r]+/g, ' ').replace(unseen, '\uFFFD');
}

/**
 * The text in the signs of a style, before anything is measured: a sign may be wider in ASCII.
 * In `plain` letters of any script stay, since they are data; a terminal without them gets a question mark.
 */
export function signed(text: string, style: TextStyle): string {
  const clean = safe(text);
  if (style === 'screen') return clean;
  // The dot between parts of a stamp is a comma in ASCII, which stands at the word before it.
  const own = clean
    .replace(/ \u00B7 /g, ', ')
    .replace(/[^\u0020-\u007E\u00A0]/g, (sign) => inAscii.get(sign) ?? sign);
  // biome-ignore lint/suspicious/noControlCharactersInRegex: all of ASCII is meant
  return style === 'plain' ? own : own.replace(/[^\u0000-\u007F\u00A0]/gu, '?');
}

/** Spaces that must not break have done their work once lines are made; a reader who copies or searches wants plain ones. */
export function unbound(text: string): string {
  return text.replace(/\u00A0/g, ' ');
}
