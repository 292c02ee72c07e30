// The end of every text: lines into one text with its signs, its colours and a line end.
import type { TextOptions } from './options.ts';
import { painted } from './paint.ts';
import { unbound } from './signs.ts';

export function page(lines: readonly string[], options: TextOptions): string {
  // In a record the last fields may be empty, and their tabs say so.
  const text = lines.map((line) => unbound(line).replace(/ +$/, '')).join('\n');
  return text === '' ? '' : `${painted(text, options)}\n`;
}

/** One record a line: fields with a tab between them, in which no tab can stand. */
export function record(fields: readonly string[]): string {
  return fields.join('\t');
}
