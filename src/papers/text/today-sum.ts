// All water in one line: parts that add up, as they are printed, to the total that is printed.
import {
  doubtAtPlace,
  plusMinus,
  roundAtPlace,
  roundFigure,
  roundParts,
  styled,
} from '../../ground/units/index.ts';
import type { TodaySheet } from '../sheets/today.ts';
import * as words from '../words/en/labels.ts';
import { type Amount, amountOf, said } from './figures.ts';
import { proseWidth, type TextOptions } from './options.ts';
import { signed } from './signs.ts';
import { hanging } from './wrap.ts';

export function sumLines(sheet: TodaySheet, options: TextOptions): string[] {
  const { inAll } = words.todayLabels;
  const total = amountOf(sheet.total, options);
  const { figures, note } = sumFigures(sheet, options);
  const named = sheet.sums.map(
    ({ name }, k) => `${signed(name, options.style).replaceAll(' ', '\u00A0')}\u00A0${figures[k] ?? ''}`,
  );
  const text = [`${said(total, options)} = ${named.join(' + ')}`, note]
    .filter((part) => part !== '')
    .join(' ');
  return hanging(inAll, text, { width: proseWidth(options), indent: inAll.length + 2 });
}

/** The figures of the parts as they are printed, and what a reader has to know of them. */
export function sumFigures(sheet: Pick<TodaySheet, 'sums' | 'total'>, options: TextOptions): Shown {
  const parts = sheet.sums.map(({ volume }) => amountOf(volume, options));
  return addingUp(parts, amountOf(sheet.total, options), options) ?? bySelf(parts, options);
}

interface Shown {
  readonly figures: readonly string[];
  /** What a reader has to know who compares a part with its figure elsewhere. */
  readonly note: string;
}

/** Every part at the place of the total; null where the parts are not those of the total. */
function addingUp(parts: readonly Amount[], total: Amount, { style }: TextOptions): Shown | null {
  const { place } = roundFigure(total);
  const values = roundParts(
    parts.map(({ value }) => value),
    { total: total.value, place },
  );
  if (values === null) return null;
  const signs = style === 'screen' ? 'screen' : 'plain';
  const figures = parts.map(({ u95, unit }, k) => {
    const doubt = u95 === null ? '?' : styled(doubtAtPlace(u95, place), signs);
    return [styled(values[k] ?? '', signs), plusMinus(signs), doubt, unit].join('\u00A0');
  });
  const isMoved = parts.some(({ value }, k) => roundAtPlace(value, place) !== values[k]);
  return { figures, note: isMoved ? words.todayLabels.toAddUp : '' };
}

function bySelf(parts: readonly Amount[], options: TextOptions): Shown {
  return { figures: parts.map((part) => said(part, options)), note: words.todayLabels.rounded };
}
