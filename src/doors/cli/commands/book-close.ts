// `book close`: the paper of a day is frozen; the past stays open to late entries.
import { closeDay } from '../../../desk/index.ts';
import { keptText } from '../../../papers/index.ts';
import type { Call } from '../call.ts';
import { withBook } from '../open-book.ts';
import type { Outcome } from '../outcome.ts';
import { orStop } from '../problem.ts';
import { readDay } from '../whole-number.ts';

export function run(call: Call): Promise<Outcome> {
  const day = call.text('day');
  const dryRun = call.has('dry-run');
  const request = { dryRun, ...(day !== undefined && { day: readDay(day, '--day') }) };
  return withBook(call, { write: !dryRun }, async ({ desk, moment }) => {
    const sheet = orStop(await closeDay(desk, moment, request));
    return { schema: 'kept', data: sheet, text: (options) => keptText(sheet, options) };
  });
}
