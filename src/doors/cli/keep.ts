// Entering for a call: with the circumstances that its flags tell, and the print of what the entry changed.
import { type LogRequest, log, type RequestWith } from '../../desk/index.ts';
import { keptText } from '../../papers/index.ts';
import type { Call } from './call.ts';
import { type OpenBook, withBook } from './open-book.ts';
import type { Sheet } from './outcome.ts';
import { orStop } from './problem.ts';

export function keepFor(call: Call, request: LogRequest): Promise<Sheet> {
  return withBook(call, { write: !call.has('dry-run') }, (open) => keepIn(open, request));
}

/** @param at when it happened, where no flag tells */
export async function keepIn(
  { desk, moment, call }: OpenBook,
  request: LogRequest,
  at?: string,
  more: RequestWith = {},
): Promise<Sheet> {
  const sheet = orStop(await log(desk, moment, request, { ...circumstancesOf(call, at), ...more }));
  return { schema: 'kept', data: sheet, text: (options) => keptText(sheet, options) };
}

export function circumstancesOf(call: Call, usualAt: string | undefined): RequestWith {
  const at = call.text('at') ?? usualAt;
  const minutes = call.wholeNumber('minutes', { least: 0, most: 100_000 });
  const people = call.wholeNumber('crew', { least: 0, most: 1000 });
  const [note, source, happened, late] = ['note', 'source', 'happened', 'late'].map((name) =>
    call.text(name),
  );
  return {
    ...(at !== undefined && { at }),
    ...(minutes !== undefined && { minutes }),
    ...(people !== undefined && { people }),
    ...(note !== undefined && { note }),
    ...(source !== undefined && { source }),
    ...(happened !== undefined && { happened }),
    ...(late !== undefined && { late }),
    ...(call.has('dry-run') && { dryRun: true }),
  };
}
