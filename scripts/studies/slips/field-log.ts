// The practice log as the study handles it: lines as objects, when each was written down, and the evening on which it was imported.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { indexOutpost, readOutpost } from '../../../src/outpost/index.ts';

export type Line = Readonly<Record<string, unknown>> & {
  readonly id: string;
  readonly t: string;
  readonly kind: string;
};

/** A line with the true time of its writing: an evening's import takes what was written until then. */
export interface Written {
  readonly line: Line;
  readonly writtenMs: number;
}

const CORRIE = join(import.meta.dirname, '../../../examples/corrie');
const read = readOutpost(readFileSync(join(CORRIE, 'outpost.yaml'), 'utf8'), { file: 'outpost.yaml' });
if (!read.ok) throw new Error('the outpost file of the practice book has faults');
export const OUTPOST = indexOutpost(read.outpost);

export const PRACTICE: readonly Line[] = readFileSync(join(CORRIE, 'field-log.jsonl'), 'utf8')
  .trimEnd()
  .split('\n')
  .map((text) => JSON.parse(text) as Line);

const DAY_MS = 86_400_000;
/** The log is imported every evening, half an hour after the day line. */
const IMPORT_AT_MS = 21.5 * 3_600_000;

export function msOf(time: string): number {
  return Date.parse(time.replace('Z', ':00Z'));
}

/** `2147-03-07T10:16Z` */
export function timeOf(ms: number): string {
  return `${new Date(ms).toISOString().slice(0, 16)}Z`;
}

/** Day of the log, counted from that of its opening. */
export function dayOfLog(lines: readonly Line[], ms: number): number {
  const dayOne = msOf(`${String(lines.find(({ kind }) => kind === 'opening_balance')?.['day_1'])}T00:00Z`);
  return Math.floor((ms - dayOne) / DAY_MS) + 1;
}

/** The order of ids is the order of writing: a line was written when all before it had happened, and not before itself. */
export function written(lines: readonly Line[]): Written[] {
  let latest = Number.NEGATIVE_INFINITY;
  return [...lines]
    .sort((a, b) => (a.id < b.id ? -1 : 1))
    .map((line) => {
      latest = Math.max(latest, msOf(line.t));
      return { line, writtenMs: latest };
    });
}

/** The import that a line comes in with. */
export function eveningOf(writtenMs: number): number {
  const sinceImport = writtenMs - IMPORT_AT_MS;
  return Math.ceil(sinceImport / DAY_MS) * DAY_MS + IMPORT_AT_MS;
}

export function nextEvening(eveningMs: number): number {
  return eveningMs + DAY_MS;
}
