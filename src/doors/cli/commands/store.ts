// `store list` and `store show`: what is in the stores, and whether it may be used.
import { storeList, storeShow } from '../../../desk/index.ts';
import {
  gaugingPlot,
  gaugingTable,
  plotFileName,
  type StoreSheet,
  storesText,
  storeText,
} from '../../../papers/index.ts';
import type { Call } from '../call.ts';
import { withBook } from '../open-book.ts';
import type { Outcome } from '../outcome.ts';
import { holdPlotForms } from '../plot-forms.ts';
import { orStop } from '../problem.ts';
import { sightOf } from '../sight.ts';

export function run(call: Call): Promise<Outcome> {
  holdPlotForms(call);
  return withBook(call, { write: false }, async ({ desk, moment }) => {
    const sight = await sightOf(call, desk, moment);
    if (call.command.path[1] === 'list') {
      const sheet = orStop(await storeList(desk, sight, moment));
      return { schema: 'stores', data: sheet, text: (options) => storesText(sheet, options) };
    }
    const history = call.wholeNumber('history', { least: 1, most: 100_000 });
    const query = { store: call.arg(0), ...(history !== undefined && { history }) };
    const sheet = orStop(await storeShow(desk, query, sight, moment));
    if (call.has('svg')) return drawn(sheet, 'svg', gaugingPlot(sheet));
    if (call.has('csv')) return drawn(sheet, 'csv', gaugingTable(sheet));
    return {
      schema: 'store',
      data: sheet,
      text: (options) => storeText(sheet, options),
      findings: sheet.findings,
    };
  });
}

function drawn(sheet: StoreSheet, ending: 'svg' | 'csv', text: string): Outcome {
  return { raw: [text], fileName: plotFileName(`store ${sheet.store.id}`, sheet.head, ending) };
}
