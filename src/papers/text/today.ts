// Today as a text: how much, where, fit for what, until when, what needs somebody, what comes next.
import type { TodaySheet } from '../sheets/today.ts';
import * as words from '../words/en/labels.ts';
import type { TextOptions } from './options.ts';
import { proseWidth } from './options.ts';
import { page } from './page.ts';
import { signed } from './signs.ts';
import { coverLines, densityLine, headLines } from './today-head.ts';
import { needLines } from './today-needs.ts';
import { todayPlain } from './today-plain.ts';
import { storeLines } from './today-stores.ts';
import { sumLines } from './today-sum.ts';
import { bestReadingLines } from './worth.ts';
import { hanging, wrap } from './wrap.ts';

/** The order is that of reading: is it old, how long does it last, what needs me, where is it, what comes. */
export function todayText(sheet: TodaySheet, options: TextOptions): string {
  if (options.style === 'plain') return page(todayPlain(sheet, options), options);
  const blocks = [
    silenceLines(sheet, options),
    headLines(sheet.head, options),
    coverLines(sheet, options),
    needsBlock(sheet, options),
    bestReadingLines(sheet, options),
    whereBlock(sheet, options),
    nextBlock(sheet, options),
  ].filter((lines) => lines.length > 0);
  return page(
    blocks.flatMap((lines, k) => (k === 0 ? lines : ['', ...lines])),
    options,
  );
}

/** The doubt of age is said before anything else. */
function silenceLines({ silence }: TodaySheet, options: TextOptions): string[] {
  return silence === null ? [] : wrap(signed(silence.text, options.style), proseWidth(options));
}

function needsBlock({ findings }: TodaySheet, options: TextOptions): string[] {
  if (findings.length === 0) return [words.todayLabels.nothing];
  return [words.todayLabels.needsYou, ...needLines(findings, options)];
}

function whereBlock(sheet: TodaySheet, options: TextOptions): string[] {
  const { todayLabels } = words;
  if (sheet.stores.length === 0) {
    return [todayLabels.noStores, todayLabels.noStoresTry].flatMap((line) => wrap(line, proseWidth(options)));
  }
  const notes = [todayLabels.doubt, densityLine(sheet, options)].filter((note) => note !== '');
  const head = wrap(
    signed(`${todayLabels.whereItIs} (${notes.join(', ')})`, options.style),
    proseWidth(options),
  );
  return [...head, ...storeLines(sheet.stores, options), ...sumLines(sheet, options)];
}

function nextBlock({ visits }: TodaySheet, options: TextOptions): string[] {
  if (visits.length === 0) return [];
  const { next } = words.todayLabels;
  const text = visits
    .map((visit) => signed(words.visitOf(visit), options.style))
    .join(options.style === 'screen' ? ' · ' : '; ');
  return hanging(next, text, { width: proseWidth(options), indent: next.length + 2 });
}
