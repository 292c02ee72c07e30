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

/** How often each sign stands outside of quotes, for every line that is not blank. A line end in quotes ends no line. */
function countsIn(text: string): ReadonlyMap<Delimiter, readonly number[]> {
  const lines: string[] = [];
  let inQuotes = false;
  for (let from = 0; from < text.length && lines.length <= LINES_LOOKED_AT; ) {
    const end = text.indexOf('\n', from);
    const line = text.slice(from, end < 0 ? text.length : end);
    from = end < 0 ? text.length : end + 1;
    const pieces = line.split('"');
    const outside = pieces.filter((_, k) => (k % 2 === 0) !== inQuotes).join('');
    if (inQuotes) lines[lines.length - 1] += outside;
    else if (line.trim() !== '') lines.push(outside);
    if (pieces.length % 2 === 0) inQuotes = !inQuotes;
  }
  return new Map(SIGNS.map((sign) => [sign, lines.map((line) => line.split(sign).length - 1)]));
}

function isAlike(counts: readonly number[]): boolean {
  const having = counts.filter((count) => count > 0);
  if (having.length === 0) return false;
  const often = new Map<number, number>();
  for (const count of having) often.set(count, (often.get(count) ?? 0) + 1);
  return Math.max(...often.values()) >= SHARE_ALIKE * counts.length;
}
