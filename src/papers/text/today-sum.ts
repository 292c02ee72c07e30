// All water in one line: parts that add up, as they are printed, to the total that is printed.
import { doubtAtPlace, plusMinus, roundFigure, roundParts, styled } from '../../ground/units/index.ts';
import type { TodaySheet } from '../sheets/today.ts';
import * as words from '../words/en/labels.ts';
import { type Amount, amountOf, said } from './figures.ts';
import { proseWidth, type TextOptions } from './options.ts';
import { signed } from './signs.ts';
import { hanging } from './wrap.ts';

export function sumLines(sheet: TodaySheet, options: TextOptions): string[] {
  const total = amountOf(sheet.total, options);
  const parts = sheet.sums.map(({ volume }) => amountOf(volume, options));
  const shown = addingUp(parts, total, options);
  const figures = shown ?? parts.map((part) => said(part, options));
  const named = sheet.sums.map(
    ({ name }, k) => `${signed(name, options.style).replaceAll(' ', '\u00A0')}\u00A0${figures[k] ?? ''}`,
  );
  const note = shown === null ? ` (${words.todayLabels.rounded})` : '';
  const text = `${said(total, options)} = ${named.join(' + ')}${note}`;
  return hanging(words.todayLabels.inAll, text, {
    width: proseWidth(options),
    indent: words.todayLabels.inAll.length + 2,
  });
}

/** Every part at the place of the total; null where the parts are not those of the total. */
function addingUp(parts: readonly Amount[], total: Amount, { style }: TextOptions): readonly string[] | null {
  const { place } = roundFigure(total);
  const values = roundParts(
    parts.map(({ value }) => value),
    { total: total.value, place },
  );
  if (values === null) return null;
  const signs = style === 'screen' ? 'screen' : 'plain';
  return parts.map(({ u95, unit }, k) => {
    const doubt = u95 === null ? '?' : styled(doubtAtPlace(u95, place), signs);
    return [styled(values[k] ?? '', signs), plusMinus(signs), doubt, unit].join('\u00A0');
  });
}
