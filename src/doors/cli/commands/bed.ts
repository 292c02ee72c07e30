// `bed list`, `bed show` and `bed forecast`: the purifier beds.
import { bedList, bedShow } from '../../../desk/index.ts';
import {
  type BedSheet,
  bedForecastText,
  bedPlot,
  bedsText,
  bedTable,
  bedText,
  plotFileName,
} from '../../../papers/index.ts';
import type { Call } from '../call.ts';
import { withBook } from '../open-book.ts';
import type { Outcome } from '../outcome.ts';
import { holdPlotForms } from '../plot-forms.ts';
import { orStop } from '../problem.ts';
import { sightOf } from '../sight.ts';

export function run(call: Call): Promise<Outcome> {
  const act = call.command.path[1];
  if (act === 'show') holdPlotForms(call);
  return withBook(call, { write: false }, async ({ desk, moment }) => {
    const sight = await sightOf(call, desk, moment);
    if (act === 'list') {
      const sheet = orStop(await bedList(desk, sight, moment));
      return {
        schema: 'beds',
        data: sheet,
        text: (options) => bedsText(sheet, options),
        findings: sheet.findings,
      };
    }
    const bed = call.args[0];
    const sheet = orStop(await bedShow(desk, bed === undefined ? {} : { bed }, sight, moment));
    if (act === 'show' && call.has('svg')) return drawn(sheet, 'svg', bedPlot(sheet));
    if (act === 'show' && call.has('csv')) return drawn(sheet, 'csv', bedTable(sheet));
    const textOf = act === 'forecast' ? bedForecastText : bedText;
    return {
      schema: 'bed',
      data: sheet,
      text: (options) => textOf(sheet, options),
      findings: sheet.findings,
    };
  });
}

function drawn({ bed, head }: BedSheet, ending: 'svg' | 'csv', text: string): Outcome {
  return { raw: [text], fileName: plotFileName(`bed ${bed.id}`, head, ending) };
}
