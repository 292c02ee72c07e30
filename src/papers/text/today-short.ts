// Today in short: the doubt of age, place and time, cover, reserve, and how much needs somebody.
import type { Severity } from '../../ground/units/index.ts';
import type { TodaySheet } from '../sheets/today.ts';
import * as words from '../words/en/labels.ts';
import { proseWidth, type TextOptions } from './options.ts';
import { page } from './page.ts';
import { signed } from './signs.ts';
import { coverLines, headLines } from './today-head.ts';
import { needsOf } from './today-needs.ts';
import { wrap } from './wrap.ts';

export function todayShortText(sheet: TodaySheet, options: TextOptions): string {
  const silence =
    sheet.silence === null ? [] : wrap(signed(sheet.silence.text, options.style), proseWidth(options));
  const blocks = [silence, headLines(sheet.head, options), coverLines(sheet, options), [needs(sheet)]];
  const shown = blocks.filter((lines) => lines.length > 0);
  return page(
    shown.flatMap((lines, k) => (k === 0 ? lines : ['', ...lines])),
    options,
  );
}

/** From the gravest on; the same things that the whole page lists. */
const LEVELS: readonly Exclude<Severity, 'error'>[] = ['act-now', 'act-today', 'know'];

function needs({ findings }: TodaySheet): string {
  const all = needsOf(findings).map(({ finding }) => finding.severity);
  const counts = LEVELS.map((level) => [level, all.filter((each) => each === level).length] as const);
  const said = counts
    .filter(([, count]) => count > 0)
    .map(([level, count]) => words.needsCounted(level, count));
  return said.length === 0 ? words.todayLabels.nothing : `${words.todayLabels.needsYou}  ${said.join(', ')}`;
}
