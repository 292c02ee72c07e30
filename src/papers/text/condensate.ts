// The sheet of condensate as a text: a table of days, then what stands out, what was found since, and what was learned.
import type { CondensateLine, CondensateSheet } from '../sheets/condensate.ts';
import type { SheetFigure } from '../sheets/figure.ts';
import * as words from '../words/en/condensate.ts';
import { amountOf, fieldsOf, said } from './figures.ts';
import { proseWidth, type TextOptions } from './options.ts';
import { page, record } from './page.ts';
import { signed } from './signs.ts';
import { type Column, table } from './table.ts';
import { headLines } from './today-head.ts';
import { wrap } from './wrap.ts';

const { condensateLabels: labels } = words;

export function condensateText(sheet: CondensateSheet, options: TextOptions): string {
  if (options.style === 'plain') return page(plainLines(sheet), options);
  const { lines } = sheet;
  const prose = (text: string) => wrap(signed(text, options.style), proseWidth(options));
  const body =
    lines.length === 0
      ? prose(labels.none)
      : [
          ...table(columns(options), lines, options).lines,
          '',
          ...condensateSentences(sheet, options).flatMap(prose),
        ];
  return page([...headLines(sheet.head, options), '', ...prose(labels.title), '', ...body], options);
}

function columns(options: TextOptions): readonly Column<CondensateLine>[] {
  const figure = (one: SheetFigure) => {
    const { value, u95 } = amountOf(one, options);
    return { value, u95 };
  };
  const unit = options.units;
  return [
    { head: labels.day, align: 'right', priority: 0, cell: ({ day }) => `${day}` },
    { head: labels.people, align: 'right', priority: 4, cell: words.saidPeople },
    {
      head: `${labels.expected} ${unit}`,
      align: 'figure',
      priority: 3,
      cell: ({ expected }) => figure(expected),
    },
    {
      head: `${labels.collected} ${unit}`,
      align: 'figure',
      priority: 2,
      cell: ({ collected }) => figure(collected),
    },
    {
      head: `${labels.shortfall} ${unit}`,
      align: 'figure',
      priority: 0,
      cell: ({ shortfall }) => figure(shortfall),
    },
    { head: labels.verdict, align: 'left', priority: 0, cell: ({ verdict }) => words.saidVerdict(verdict) },
  ];
}

/** What stands out, what was found since, and what was learned, as sentences. */
export function condensateSentences(sheet: CondensateSheet, options: TextOptions): readonly string[] {
  const { runs, found, foundTotal, rate, norm } = sheet;
  const inUnits = (figure: SheetFigure) => said(amountOf(figure, options), options);
  // What is less or more is told by its size: the words say which of the two it is.
  const size = ({ total }: CondensateSheet['runs'][number]) =>
    inUnits({ ...total, value: Math.abs(total.value) });
  const ofKind = (kind: 'less came' | 'more came') => {
    const those = runs.filter(({ verdict }) => verdict === kind);
    return those.length === 0 ? [] : [...those.map((run) => words.runInWords(run, size(run))), labels[kind]];
  };
  return [
    ...ofKind('less came'),
    ...(found.length === 0 ? [] : [words.foundInWords(found, inUnits(foundTotal))]),
    ...ofKind('more came'),
    words.rateInWords(sheet, { rate: inUnits(rate), norm: inUnits(norm) }),
    words.judgedInWords(sheet),
  ];
}

/** day day days person-days expected ± collected ± missing ± verdict · run verdict first last L ± · found store day L ± · rate L ± norm ± days · judged days held. */
function plainLines(sheet: CondensateSheet): readonly string[] {
  const { lines, runs, found, rate, norm, taughtBy, judged } = sheet;
  return [
    ...lines.map(({ day, days, personDays, expected, collected, shortfall, verdict }) => {
      const figures = [expected, collected, shortfall].flatMap(fieldsOf);
      return record([
        'day',
        `${day}`,
        `${days}`,
        personDays.toFixed(2),
        ...figures,
        words.saidVerdict(verdict),
      ]);
    }),
    ...runs.map(({ verdict, firstDay, lastDay, total }) =>
      record(['run', verdict, `${firstDay}`, `${lastDay}`, ...fieldsOf(total)]),
    ),
    ...found.map(({ store, day, volume }) =>
      record(['found', signed(store, 'plain'), `${day}`, ...fieldsOf(volume)]),
    ),
    record(['rate', ...fieldsOf(rate), ...fieldsOf(norm), `${taughtBy}`]),
    record(['judged', `${judged.days}`, `${judged.held}`]),
  ];
}
