// `today`: one screen of how much, where, fit for what, until when, what needs somebody.
import { today } from '../../../desk/index.ts';
import { todayText } from '../../../papers/index.ts';
import type { Call } from '../call.ts';
import { withBook } from '../open-book.ts';
import type { Outcome } from '../outcome.ts';
import { orStop } from '../problem.ts';
import { sightOf } from '../sight.ts';

export function run(call: Call): Promise<Outcome> {
  return withBook(call, { write: false }, async ({ desk, moment }) => {
    const sight = await sightOf(call, desk, moment);
    const sheet = orStop(await today(desk, sight, moment));
    const findings = sheet.silence === null ? sheet.findings : [sheet.silence, ...sheet.findings];
    return { schema: 'today', data: sheet, text: (options) => todayText(sheet, options), findings };
  });
}
