// The sign that parts the cells: proven by lines that have it alike, never taken from the name of the file.
import { TableFault } from './table-fault.ts';

export type Delimiter = '\t' | ';' | '|' | ',';

/** A comma comes last: inside cells it is the decimal sign of half the world. */
const SIGNS: readonly Delimiter[] = ['\t', ';', '|', ','];
const LINES_LOOKED_AT = 200;
/** Titles and empty lines have their own count; of the others so many have to agree. */
const SHARE_ALIKE = 0.6;

export function delimiterOf(text: string): Delimiter {
  const counts = countsIn(text);
  const found = SIGNS.find((sign) => isAlike(counts.get(sign) ?? []));
  if (found === undefined) throw new TableFault('table-delimiter-open', { signs: ['tab', ';', '|', ','] });
  return found;
}

/** How often each sign stands outside of quotes, for every line that is not blank. */
function countsIn(text: string): ReadonlyMap<Delimiter, readonly number[]> {
  const counts = new Map<Delimiter, number[]>(SIGNS.map((sign) => [sign, []]));
  let inQuotes = false;
  let blank = true;
  let current = new Map<string, number>();
  let lines = 0;
  for (let at = 0; at <= text.length && lines < LINES_LOOKED_AT; at += 1) {
    const letter = text[at] ?? '\n';
    if (letter === '"') inQuotes = !inQuotes;
    else if (letter === '\n' && (!inQuotes || at === text.length)) {
      if (!blank) for (const sign of SIGNS) counts.get(sign)?.push(current.get(sign) ?? 0);
      if (!blank) lines += 1;
      current = new Map();
      blank = true;
    } else if (!inQuotes) {
      if (counts.has(letter as Delimiter)) current.set(letter, (current.get(letter) ?? 0) + 1);
    }
    if (letter !== '\n' && letter !== '\r' && letter !== ' ') blank = false;
  }
  return counts;
}

function isAlike(counts: readonly number[]): boolean {
  const having = counts.filter((count) => count > 0);
  if (having.length === 0) return false;
  const often = new Map<number, number>();
  for (const count of having) often.set(count, (often.get(count) ?? 0) + 1);
  return Math.max(...often.values()) >= SHARE_ALIKE * counts.length;
}
