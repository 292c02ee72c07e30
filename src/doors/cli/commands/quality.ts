// `quality today`: the medic's queue.
import { qualityToday } from '../../../desk/index.ts';
import { qualityText } from '../../../papers/index.ts';
import type { Call } from '../call.ts';
import { withBook } from '../open-book.ts';
import type { Outcome } from '../outcome.ts';
import { orStop } from '../problem.ts';
import { sightOf } from '../sight.ts';

export function run(call: Call): Promise<Outcome> {
  return withBook(call, { write: false }, async ({ desk, moment }) => {
    const sight = await sightOf(call, desk, moment);
    const sheet = orStop(await qualityToday(desk, sight, moment));
    return {
      schema: 'quality',
      data: sheet,
      text: (options) => qualityText(sheet, options),
      findings: sheet.findings,
    };
  });
}
