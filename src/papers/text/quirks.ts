// Learned quirks as a text: a sentence each with the entries to look at, then how readings keep to their declared doubts.
import type { Quirk, QuirksSheet, ScatterLine } from '../sheets/quirks.ts';
import { quirkLabels } from '../words/en/quirks.ts';
import { proseWidth, type TextOptions } from './options.ts';
import { page, record } from './page.ts';
import { signed } from './signs.ts';
import { type Column, table } from './table.ts';
import { headLines } from './today-head.ts';
import { hanging } from './wrap.ts';

export function quirksText(sheet: QuirksSheet, options: TextOptions): string {
  if (options.style === 'plain') return page(plainLines(sheet), options);
  const { quirks, scatter } = sheet;
  const learned =
    quirks.length === 0
      ? [quirkLabels.none]
      : [quirkLabels.head, ...quirks.flatMap((quirk) => lines(quirk, options))];
  return page(
    [
      ...headLines(sheet.head, options),
      '',
      ...learned,
      ...(scatter.length === 0 ? [] : ['', quirkLabels.scatter, ...table(columns, scatter, options).lines]),
    ],
    options,
  );
}

function lines({ text, shown }: Quirk, options: TextOptions): string[] {
  const width = proseWidth(options);
  return [
    ...hanging('  ', signed(text, options.style), { width, indent: 2 }),
    ...hanging(`    ${quirkLabels.showMe}`, shown.join(', '), { width, indent: 12 }),
  ];
}

const columns: readonly Column<ScatterLine>[] = [
  { head: quirkLabels.instrument, align: 'left', priority: 0, cell: ({ of }) => of },
  { head: quirkLabels.readings, align: 'right', priority: 1, cell: ({ readings }) => `${readings}` },
  { head: quirkLabels.factor, align: 'right', priority: 0, cell: ({ factor }) => factor.toFixed(2) },
];

/** quirk kind name value u95 unit lessons · scatter name readings factor. */
function plainLines({ quirks, scatter }: QuirksSheet): string[] {
  return [
    ...quirks.map(({ kind, name, figure, lessonsInAll }) =>
      record(['quirk', kind, name, `${figure.value}`, `${figure.u95 ?? ''}`, figure.unit, `${lessonsInAll}`]),
    ),
    ...scatter.map(({ of, readings, factor }) => record(['scatter', of, `${readings}`, `${factor}`])),
  ];
}
