// `book show`: the daybook, or every finding of the book.
import { allFindings, type BookQuery, COMMAND_OF_KIND, formKinds, showBook } from '../../../desk/index.ts';
import { bookText, findingsText } from '../../../papers/index.ts';
import type { Call } from '../call.ts';
import { withBook } from '../open-book.ts';
import type { Outcome } from '../outcome.ts';
import { orStop } from '../problem.ts';
import { sightOf } from '../sight.ts';
import { readDay } from '../whole-number.ts';

export function run(call: Call): Promise<Outcome> {
  const query = queryOf(call);
  return withBook(call, { write: false }, async ({ desk, moment }) => {
    const sight = await sightOf(call, desk, moment);
    if (call.has('findings')) {
      const findings = orStop(await allFindings(desk, sight, moment));
      return {
        schema: 'findings',
        data: { findings },
        text: (options) => findingsText(findings, options),
        findings,
      };
    }
    const sheet = orStop(await showBook(desk, query, sight, moment));
    return { schema: 'book', data: sheet, text: (options) => bookText(sheet, options) };
  });
}

function queryOf(call: Call): BookQuery {
  const day = call.text('day');
  const most = call.wholeNumber('most', { least: 1, most: 100_000 });
  const store = call.text('store');
  const find = call.text('find');
  const kind = call.oneOf('kind', [...formKinds, ...Object.keys(COMMAND_OF_KIND)]);
  return {
    ...(day !== undefined && { day: readDay(day, '--day') }),
    ...(kind !== undefined && { kind }),
    ...(store !== undefined && { store }),
    ...(find !== undefined && { find }),
    ...(most !== undefined && { most }),
  };
}
