// The trend sheet of a parameter at a place.
import { type PaperDocument, trendSheetPaper } from '../../papers/index.ts';
import { type Answer, yes } from '../answer.ts';
import type { Desk, Moment, Sight } from '../desk.ts';
import { qualityTrend } from '../quality/trend.ts';
import type { TrendQuery } from '../quality/trend-names.ts';
import { bookSeal } from './book-seal.ts';

export async function trendPaperSheet(
  desk: Desk,
  query: TrendQuery & { readonly parameter: string },
  sight: Sight,
  moment: Moment,
): Promise<Answer<PaperDocument>> {
  const shown = await qualityTrend(desk, query, sight, moment);
  if (!shown.ok) return shown;
  const sheet = shown.value;
  if (sheet.trend === null) throw new Error(`no trend of ${query.parameter}`);
  return yes(trendSheetPaper({ book: await bookSeal(desk), sheet }, sheet.trend));
}
