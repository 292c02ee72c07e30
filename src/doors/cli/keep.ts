// Entering for a call: with the circumstances that its flags tell, and the print of what the entry changed.
import { type Answer, type LogRequest, log, type RequestWith } from '../../desk/index.ts';
import type { Finding } from '../../ground/units/index.ts';
import { codeLabels, keptText } from '../../papers/index.ts';
import type { Call } from './call.ts';
import { EXIT } from './exit-code.ts';
import { type OpenBook, withBook } from './open-book.ts';
import type { Sheet } from './outcome.ts';
import { CliProblem, orStop } from './problem.ts';
import { saysYes } from './says-yes.ts';

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
  const how = { ...circumstancesOf(call, at), ...more };
  const answer = await log(desk, moment, request, how);
  await tellOfCode(call, desk);
  const sheet =
    answer.ok || answer.problem !== 'ask first' || !call.mayAsk()
      ? orStop(answer)
      : await keepIfSure({ call, findings: answer.findings }, () =>
          log(desk, moment, request, { ...how, sure: true }),
        );
  return { schema: 'kept', data: sheet, text: (options) => keptText(sheet, options) };
}

/** What is only tried asks nobody for a code. */
async function tellOfCode(call: Call, desk: OpenBook['desk']): Promise<void> {
  const second = call.text('second');
  if (second === undefined || !call.has('dry-run') || !(await desk.codes.has(second))) return;
  call.notes.push(codeLabels.askedLater(second));
}

/** What would be asked first is asked, where somebody sits in front of it. */
async function keepIfSure<T>(
  { call, findings }: { readonly call: Call; readonly findings: readonly Finding[] },
  keep: () => Promise<Answer<T>>,
): Promise<T> {
  if (!(await saysYes(call, findings))) throw new CliProblem(EXIT.wrongUse, [], ['Nothing was written.']);
  return orStop(await keep());
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
    ...(call.has('yes') && { sure: true }),
    ...(call.has('dry-run') && { dryRun: true }),
  };
}
