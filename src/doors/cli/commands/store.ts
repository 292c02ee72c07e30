// `store list` and `store show`: what is in the stores, and whether it may be used.
import { storeList, storeShow } from '../../../desk/index.ts';
import { storesText, storeText } from '../../../papers/index.ts';
import type { Call } from '../call.ts';
import { withBook } from '../open-book.ts';
import type { Outcome } from '../outcome.ts';
import { orStop } from '../problem.ts';
import { sightOf } from '../sight.ts';

export function run(call: Call): Promise<Outcome> {
  return withBook(call, { write: false }, async ({ desk, moment }) => {
    const sight = await sightOf(call, desk, moment);
    if (call.command.path[1] === 'list') {
      const sheet = orStop(await storeList(desk, sight, moment));
      return { schema: 'stores', data: sheet, text: (options) => storesText(sheet, options) };
    }
    const sheet = orStop(await storeShow(desk, call.arg(0), sight, moment));
    return {
      schema: 'store',
      data: sheet,
      text: (options) => storeText(sheet, options),
      findings: sheet.findings,
    };
  });
}
