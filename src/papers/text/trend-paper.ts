// The trend sheet as a paper: its lines of text and its picture, for whoever puts the two on one page.
import type { TrendSheet } from '../sheets/quality-trend.ts';
import { trendPlot } from '../svg/trend-plot.ts';
import type { TextOptions } from './options.ts';
import { qualityTrendText } from './quality-trend.ts';

export interface TrendPaper {
  readonly lines: readonly string[];
  /** Null where no parameter was asked for. */
  readonly svg: string | null;
}

/** @param options `plain` is for programs, and no paper: it is set as `ascii` */
export function trendPaper(sheet: TrendSheet, options: TextOptions): TrendPaper {
  const style = options.style === 'plain' ? 'ascii' : options.style;
  const text = qualityTrendText(sheet, { ...options, style, colour: false });
  return {
    lines: text.trimEnd().split('\n'),
    svg: sheet.trend === null ? null : trendPlot(sheet.trend, sheet.head),
  };
}
