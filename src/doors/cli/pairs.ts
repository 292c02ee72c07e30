// Pairs of a name and a value on a command line: `strokes=455`.
import { wrongUse } from './problem.ts';

export function readPairs(texts: readonly string[], flag: string): Record<string, string> {
  const pairs: Record<string, string> = Object.create(null) as Record<string, string>;
  for (const text of texts) {
    const at = text.indexOf('=');
    const name = text.slice(0, Math.max(0, at)).trim();
    if (name === '') {
      const wanted = ['NAME=VALUE, such as strokes=455'];
      throw wrongUse('flag-value-wrong', { flag, received: text.slice(0, 60), wanted, nearest: [] });
    }
    if (Object.hasOwn(pairs, name)) throw wrongUse('flag-twice', { flag: `${flag} ${name.slice(0, 40)}` });
    pairs[name] = text.slice(at + 1).trim();
  }
  return pairs;
}
