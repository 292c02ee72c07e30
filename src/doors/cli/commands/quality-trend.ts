// `quality trend`: one parameter over time, as text, picture or table.
import { qualityTrend, type TrendQuery } from '../../../desk/index.ts';
import {
  plotFileName,
  qualityTrendText,
  type Trend,
  type TrendSheet,
  trendPlot,
  trendTable,
} from '../../../papers/index.ts';
import type { Call } from '../call.ts';
import { withBook } from '../open-book.ts';
import type { Outcome } from '../outcome.ts';
import { orStop, wrongUse } from '../problem.ts';
import { sightOf } from '../sight.ts';

export function run(call: Call): Promise<Outcome> {
  holdFlags(call);
  const query = queryOf(call);
  return withBook(call, { write: false }, async ({ desk, moment }) => {
    const sheet = orStop(await qualityTrend(desk, query, await sightOf(call, desk, moment), moment));
    const { trend } = sheet;
    if (trend !== null && call.has('svg')) return drawn(sheet, trend, 'svg');
    if (trend !== null && call.has('csv')) return drawn(sheet, trend, 'csv');
    return { schema: 'quality-trend', data: sheet, text: (options) => qualityTrendText(sheet, options) };
  });
}

/** One place and one form at a time; a picture is of one parameter. */
function holdFlags(call: Call): void {
  call.holdApart('store', 'point');
  call.holdApart('store', 'grade');
  call.holdApart('point', 'grade');
  call.holdApart('svg', 'csv');
  for (const form of ['svg', 'csv'] as const) {
    call.holdApart(form, 'json');
    call.holdApart(form, 'plain');
    if (call.has(form) && call.arg(0) === '')
      throw wrongUse('argument-missing', {
        argument: 'PARAMETER',
        command: 'quality trend',
        example: 'waterwright quality trend TOC --svg',
      });
  }
}

function queryOf(call: Call): TrendQuery {
  const [store, point, grade] = [call.text('store'), call.text('point'), call.text('grade')];
  return {
    ...(call.arg(0) !== '' && { parameter: call.arg(0) }),
    ...(store !== undefined && { store }),
    ...(point !== undefined && { point }),
    ...(grade !== undefined && { grade }),
  };
}

function drawn({ head }: TrendSheet, trend: Trend, ending: 'svg' | 'csv'): Outcome {
  const text = ending === 'svg' ? trendPlot(trend, head) : trendTable(trend);
  return { raw: [text], fileName: plotFileName(`${trend.parameter} ${trend.place.name}`, head, ending) };
}
