// A bare number about water in a text: an amount whose unit somebody left out.

const waterWords = /\b(water|load|fill|filled|litres?|drain|drained|top.?up|request|ask|asked)\b/i;
/** Numbers that are no amounts: days, times, dates, and names that carry a digit such as C-07, H-2 or E0034. */
const noAmounts = [
  /\bD(?:ay)?\s?\d+\b/g,
  /\b\d{1,2}:\d{2}\b/g,
  /\b\d{4}-\d{2}(?:-\d{2})?\b/g,
  /\b[A-Za-z]+-?\d[\w-]*/g,
];
/** A number and the word behind it. A point or comma that ends a sentence is no part of the number. */
const numberAndWord = /(?<![\w.,])(\d+(?:[.,]\d+)?)(?!\w|[.,]\d)(?:\s*([A-Za-z%°µ]+))?/g;
/** Words behind a bare number that do not say what it counts. */
const wordsOfNoUnit = new Set([
  'a',
  'about',
  'and',
  'as',
  'at',
  'but',
  'by',
  'drinking',
  'for',
  'from',
  'if',
  'in',
  'into',
  'is',
  'more',
  'now',
  'of',
  'on',
  'or',
  'please',
  'so',
  'technical',
  'then',
  'this',
  'to',
  'today',
  'tomorrow',
  'was',
  'water',
  'when',
  'with',
  'would',
]);

/**
 * The first number of a text about water that has no unit, as it stands there, or null. A number with a word of its own behind
 * it counts what that word says: litres, strokes, people.
 * @param names names that carry numbers of their own, such as those of vehicles and stores
 */
export function amountWithoutUnit(text: string, names: readonly string[]): string | null {
  if (text.length > 4000 || !waterWords.test(text)) return null;
  let rest = text;
  for (const name of names) rest = rest.replaceAll(name, ' ');
  for (const pattern of noAmounts) rest = rest.replace(pattern, ' ');
  for (const [, digits = '', word] of rest.matchAll(numberAndWord)) {
    if (word === undefined || wordsOfNoUnit.has(word.toLowerCase())) return digits;
  }
  return null;
}
