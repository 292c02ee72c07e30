// Colour: three words and nothing else, and always with the word itself.
import type { TextOptions } from './options.ts';

const boldRed = '\u001B[1;31m';
const bold = '\u001B[1m';
const reset = '\u001B[0m';

const paints: ReadonlyMap<string, string> = new Map([
  ['ACT NOW', boldRed],
  ['HOLD', boldRed],
  ['ACT TODAY', bold],
]);

/** Attributes take no columns, so they come last, when every line has its width. */
export function painted(text: string, { colour, style }: TextOptions): string {
  if (!colour || style === 'plain') return text;
  return text.replace(
    /\b(?:ACT NOW|ACT TODAY|HOLD)\b/g,
    (word) => `${paints.get(word) ?? ''}${word}${reset}`,
  );
}
