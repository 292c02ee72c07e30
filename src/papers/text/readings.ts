// The gauging plot as a text: each reading beside what was believed before it, with a bar of both.
import { roundFigure } from '../../ground/units/index.ts';
import type { SheetFigure } from '../sheets/figure.ts';
import type { StoreSheet } from '../sheets/store.ts';
import type { GaugingPoint } from '../sheets/store-story.ts';
import { dropped as droppedWords } from '../words/en/labels.ts';
import * as words from '../words/en/store-story.ts';
import { amountOf, fieldsOf } from './figures.ts';
import { BAR_SIGNS, gaugeBar } from './gauge-bar.ts';
import { proseWidth, type TextOptions, tableWidth } from './options.ts';
import { record } from './page.ts';
import { signed } from './signs.ts';
import { type Column, table } from './table.ts';
import { wrap } from './wrap.ts';

/** Readings that are shown, the youngest ones. */
const MOST_READINGS = 8;
/** On a narrower page there is no room for bars. */
const NARROWEST_WITH_BARS = 72;

/** Every bar of a table has the same span, so that they can be compared. */
interface Bars {
  readonly span: number;
  readonly columns: number;
}

export function readingLines({ gauging, store }: StoreSheet, options: TextOptions): string[] {
  const { readings, estimates } = gauging;
  if (estimates.length === 0) return [];
  const prose = (text: string) => wrap(signed(text, options.style), proseWidth(options));
  const title = prose(words.storyLabels.readings);
  const shown = readings.slice(-MOST_READINGS);
  const bars = barsOf(shown, options);
  const draw = prose(words.storyLabels.drawIt(store.id));
  if (readings.every(({ believed }) => believed === null))
    return [...title, ...prose(words.storyLabels.noReadings), ...draw];
  const { lines, dropped } = table(columns(bars, options), shown, options);
  const bar = bars === null ? null : spanHead(bars.span);
  const lost = dropped.filter((head) => head !== signed(bar ?? '', options.style));
  const hasBars = bar !== null && lost.length === dropped.length;
  const older = readings.length - shown.length;
  return [
    ...title,
    ...lines,
    ...(hasBars ? prose(barNote()) : []),
    ...(lost.length === 0 ? [] : prose(droppedWords(lost))),
    ...(older === 0 ? [] : prose(words.olderReadings(older))),
    ...draw,
  ];
}

function barsOf(shown: readonly GaugingPoint[], options: TextOptions): Bars | null {
  const size = (figure: SheetFigure) => amountOf(figure, options);
  const reach = shown.flatMap(({ read, believed, difference }) =>
    believed === null || difference === null
      ? []
      : [Math.abs(size(difference).value) + (size(read).u95 ?? 0), size(believed).u95 ?? 0],
  );
  const span = Math.max(0, ...reach);
  const width = tableWidth(options);
  if (span === 0 || width < NARROWEST_WITH_BARS) return null;
  return { span, columns: width < 110 ? 13 : 25 };
}

function barNote(): string {
  const { middle, believed, from, line, read, to } = BAR_SIGNS;
  return words.storyLabels.barNote({ middle, believed, read: `${from}${line}${read}${line}${to}` });
}

function columns(bars: Bars | null, options: TextOptions): readonly Column<GaugingPoint>[] {
  const { day, how, read, believed, difference, entry } = words.storyLabels;
  const head = (text: string) => (options.units === 'kg' ? text.replace(/L$/, 'kg') : text);
  const figure = (of: SheetFigure | null) => (of === null ? '' : amountOf(of, options));
  return [
    { head: day, align: 'right', priority: 0, cell: ({ day: when }) => `${Math.floor(when)}` },
    { head: how, align: 'left', priority: 1, cell: (point) => point.how, least: 8 },
    { head: head(read), align: 'figure', priority: 0, cell: (point) => figure(point.read) },
    { head: head(believed), align: 'figure', priority: 2, cell: (point) => figure(point.believed) },
    { head: head(difference), align: 'figure', priority: 0, cell: (point) => figure(point.difference) },
    ...(bars === null
      ? []
      : [
          {
            head: spanHead(bars.span),
            align: 'left',
            priority: 4,
            cell: (point: GaugingPoint) => barOf(point, bars, options),
          } as const,
        ]),
    { head: entry, align: 'left', priority: 3, cell: ({ ref }) => ref },
  ];
}

/** What half of a bar stands for, in two digits. */
function spanHead(span: number): string {
  const { u95 } = roundFigure({ value: 0, u95: span });
  return words.storyLabels.span(u95 ?? '');
}

function barOf(point: GaugingPoint, { span, columns }: Bars, options: TextOptions): string {
  const { believed, difference } = point;
  if (believed === null || difference === null) return '';
  const [off, read, was] = [difference, point.read, believed].map((figure) => amountOf(figure, options));
  const parts = { difference: off?.value ?? 0, readU95: read?.u95 ?? 0, believedU95: was?.u95 ?? 0, span };
  return gaugeBar(parts, columns);
}

/** reading · ref · id · at · how · read ± · believed ± · difference ± · unit. */
export function readingRecords(readings: readonly GaugingPoint[], options: TextOptions): string[] {
  return readings.map(({ ref, id, at, how, read, believed, difference }) => {
    const pair = (of: SheetFigure | null) => (of === null ? ['', ''] : fieldsOf(amountOf(of, options)));
    const figures = [read, believed, difference].flatMap(pair);
    const { unit } = amountOf(read, options);
    return record(['reading', signed(ref, 'plain'), id, at, signed(how, 'plain'), ...figures, unit]);
  });
}
