// `report list` and `report show`: the papers that a book can give.
import { quirks } from '../../../desk/index.ts';
import { quirksText, reportsText } from '../../../papers/index.ts';
import type { Call } from '../call.ts';
import { withBook } from '../open-book.ts';
import type { Outcome } from '../outcome.ts';
import { orStop, wrongUse } from '../problem.ts';
import { sightOf } from '../sight.ts';

/** Papers by name; `report list` says what each is. */
const REPORTS = ['quirks'] as const;

export function run(call: Call): Promise<Outcome> {
  if (call.command.path[1] === 'list') return Promise.resolve(listed);
  return show(call);
}

const listed: Outcome = {
  schema: 'reports',
  data: { reports: REPORTS },
  text: (options) => reportsText(REPORTS, options),
};

function show(call: Call): Promise<Outcome> {
  const name = call.arg(0);
  if (!REPORTS.some((each) => each === name)) {
    const data = { flag: 'REPORT', received: name.slice(0, 60), wanted: [...REPORTS], nearest: [] };
    throw wrongUse('flag-value-wrong', data);
  }
  return withBook(call, { write: false }, async ({ desk, moment }) => {
    const sheet = orStop(await quirks(desk, await sightOf(call, desk, moment), moment));
    return { schema: 'quirks', data: sheet, text: (options) => quirksText(sheet, options) };
  });
}
