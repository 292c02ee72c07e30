// A bare number about water in a text: an amount whose unit somebody left out.

const waterWords = /\b(water|load|fill|filled|litres?|drain|drained|top.?up|request|ask)\b/i;
const number = /(?<![\w.,-])(\d+(?:[.,]\d+)?)(?![\w.,-])(\s*)([A-Za-z%°µ/]*)/g;
const unitWords = new Set(
  ['l', 'ml', 'kg', 'g', 'mg', 'lb', 'gal', 't', 'litre', 'litres', 'kilograms', 'pounds', 'strokes', 'containers', 'bags', 'tanks', 'days', 'day', 'd', 'h', 'min', '%', 'c', '°c', 'kpa', 'bar', 'people', 'times', 'x'],
);

/**
 * The first number of a text about water that has no unit, as it stands there, or null.
 * @param names names that carry numbers of their own, such as those of vehicles and stores
 */
export function amountWithoutUnit(text: string, names: readonly string[]): string | null {
  if (text.length > 4000 || !waterWords.test(text)) return null;
  let rest = text;
  for (const name of names) rest = rest.replaceAll(name, ' ');
  // Times and days are no amounts.
  rest = rest.replace(/\bD(?:ay)?\s?\d+\b/g, ' ').replace(/\b\d{1,2}:\d{2}\b/g, ' ');
  for (const match of rest.matchAll(number)) {
    const [, digits = '', , word = ''] = match;
    if (!unitWords.has(word.toLowerCase())) return digits;
  }
  return null;
}
