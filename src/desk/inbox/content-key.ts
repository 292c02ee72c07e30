// What makes two lines of tables the same: headings and cells, not the file, the place in it, or the order of columns.
import { entryId, type Hash } from '../../book/index.ts';

const HEX = '0123456789abcdef';

/** The date of a line that does not write its year is inside as it is understood. */
export function contentKey(
  hash: Hash,
  line: {
    readonly outpost: string;
    readonly headings: readonly string[];
    readonly cells: readonly string[];
    readonly writtenDays: number | null;
  },
): string {
  const pairs: string[] = [];
  for (let k = 0; k < line.cells.length; k++) {
    const cell = line.cells[k]?.trim() ?? '';
    if (cell !== '') pairs.push(`${line.headings[k] ?? ''}\t${cell}`);
  }
  return hash(`${line.outpost}\n${line.writtenDays ?? ''}\n${pairs.sort().join('\n')}`);
}

/**
 * The n-th entry of a line has the same id whenever and wherever that line is read; the line that waits instead has its own.
 * @param part number of the entry, or −1 for the line that waits
 */
export function idOfLine(
  hash: Hash,
  key: string,
  place: { readonly atMs: number; readonly part: number },
): string {
  const { part, atMs } = place;
  const digest = part <= 0 ? key : hash(`${key}\n${part}`);
  // The two ends of one digest, for the two things that a line most often becomes.
  const from = part < 0 ? 40 : 0;
  const bytes = new Uint8Array(10);
  for (let k = 0; k < 10; k++)
    bytes[k] = HEX.indexOf(digest.charAt(from + 2 * k)) * 16 + HEX.indexOf(digest.charAt(from + 2 * k + 1));
  return entryId(Math.max(0, atMs), bytes);
}
