// What a reading would be worth, in a line: the act, its minutes, and the doubts before and after it.
import { plusMinus, roundFigure, styled } from '../../ground/units/index.ts';
import type { TodaySheet } from '../sheets/today.ts';
import type { BeforeAndAfter, ReadingWorth } from '../sheets/worth.ts';
import * as words from '../words/en/worth.ts';
import { type Amount, amountOf } from './figures.ts';
import { proseWidth, type TextOptions } from './options.ts';
import { signed } from './signs.ts';
import { hanging } from './wrap.ts';

/** More bargains than this are not read on a first page. */
const MOST = 2;

/** The best readings that would change the ± of a cover as it is printed; none where there is no such reading. */
export function bestReadingLines({ readings }: Pick<TodaySheet, 'readings'>, options: TextOptions): string[] {
  const best = worthDoing(readings);
  const { best: head } = words.worthLabels;
  return best.flatMap((worth, k) =>
    hanging(k === 0 ? head : '', worthText(worth, options), {
      width: proseWidth(options),
      indent: head.length + 2,
    }),
  );
}

/** The best bargains among the readings that would change what is printed of a cover. */
export function worthDoing(readings: readonly ReadingWorth[]): readonly ReadingWorth[] {
  return readings.filter((each) => isSeen(each.cover?.days ?? null)).slice(0, MOST);
}

/** `weigh C-07, 14 min: ± 2.4 → ± 0.3 L, cover of drinking water ± 1.1 → ± 0.7 days` */
export function worthText(worth: ReadingWorth, options: TextOptions): string {
  const head = [words.actOf(worth), words.minutesOf(worth.task)].join(', ');
  const content = doubts(inUnits(worth.content, options), options);
  const { cover } = worth;
  const parts = [content, ...(cover === null ? [words.worthLabels.noCover] : coverParts(cover, options))];
  return signed(`${head}: ${parts.join(', ')}`, options.style);
}

function coverParts(cover: NonNullable<ReadingWorth['cover']>, options: TextOptions): string[] {
  const what = words.coverOfWorth(cover);
  if (cover.days === null) return [`${what}: ${words.worthLabels.noEnd}`];
  const both = isSeen(cover.days)
    ? doubts({ ...cover.days, unit: 'd' }, options)
    : `${oneDoubt(cover.days.before.u95, options)}\u00A0d ${words.worthLabels.asBefore}`;
  return [`${what} ${both}`];
}

interface Doubts {
  readonly before: Pick<Amount, 'value' | 'u95'>;
  readonly after: Pick<Amount, 'value' | 'u95'>;
  readonly unit: string;
}

function inUnits({ before, after }: BeforeAndAfter, options: TextOptions): Doubts {
  const shown = amountOf(before, options);
  return { before: shown, after: amountOf(after, options), unit: shown.unit };
}

/** `± 2.4 → ± 0.3 L` */
function doubts({ before, after, unit }: Doubts, options: TextOptions): string {
  return `${oneDoubt(before.u95, options)} \u2192 ${oneDoubt(after.u95, options)}\u00A0${unit}`;
}

function oneDoubt(u95: number | null, { style }: TextOptions): string {
  const signs = style === 'screen' ? 'screen' : 'plain';
  return `${plusMinus(signs)}\u00A0${u95 === null ? '?' : styled(digitsOf(u95), signs)}`;
}

function digitsOf(u95: number): string {
  return roundFigure({ value: 0, u95 }).u95 ?? '';
}

/** The ± after it is printed otherwise than the ± before. */
function isSeen(both: Pick<Doubts, 'before' | 'after'> | null): boolean {
  return both !== null && digitsOf(both.before.u95 ?? 0) !== digitsOf(both.after.u95 ?? 0);
}

/** ± of a record: before and after, as they are printed. */
export function doubtFields(both: Pick<Doubts, 'before' | 'after'> | null): readonly [string, string] {
  return both === null ? ['', ''] : [digitsOf(both.before.u95 ?? 0), digitsOf(both.after.u95 ?? 0)];
}
