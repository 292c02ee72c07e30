// The practice log of Corrie for the tests: its lines as objects, to be changed one at a time and read again.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { indexOutpost, type OutpostIndex, readOutpost } from '../../src/outpost/index.ts';

export type LogObject = Readonly<Record<string, unknown>>;

const CORRIE = join(import.meta.dirname, '../../examples/corrie');
export const OUTPOST_TEXT = readFileSync(join(CORRIE, 'outpost.yaml'), 'utf8');
export const LOG_TEXT = readFileSync(join(CORRIE, 'field-log.jsonl'), 'utf8');

const outpost = readOutpost(OUTPOST_TEXT, { file: 'outpost.yaml' });
if (!outpost.ok) throw new Error('the outpost file of Corrie has faults');
export const CORRIE_INDEX = indexOutpost(outpost.outpost);

export const LOG_LINES: readonly string[] = LOG_TEXT.trimEnd().split('\n');
export const LOG_OBJECTS: readonly LogObject[] = LOG_LINES.map((line) => JSON.parse(line) as LogObject);

/** A line of the log with some fields changed; `undefined` takes a field out. */
export function lineWith(id: string, changes: LogObject = {}): LogObject {
  const line = LOG_OBJECTS.find((each) => each['id'] === id);
  if (line === undefined) throw new Error(`the log has no line ${id}`);
  return JSON.parse(JSON.stringify({ ...line, ...changes })) as LogObject;
}

/** Lines as text; what is no text yet becomes JSON. */
export function asLines(lines: readonly (LogObject | string)[]): string[] {
  return lines.map((line) => (typeof line === 'string' ? line : JSON.stringify(line)));
}

/** A reader of logs, given lines of Corrie: all of them, where none are named. */
export function corrieReader<Request extends { outpost: OutpostIndex; file: string }, Read>(
  read: (lines: Iterable<string>, request: Request) => Read,
) {
  return (lines: readonly (LogObject | string)[] = LOG_LINES, request: Partial<Request> = {}): Read =>
    read(asLines(lines), { outpost: CORRIE_INDEX, file: 'field-log.jsonl', ...request } as Request);
}
