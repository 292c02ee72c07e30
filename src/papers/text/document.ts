// A paper as a text: the same parts in the same order as on the printed page, for a terminal or a plain file.

import { footLines } from '../document/book-state.ts';
import { headOfColumn, isFigure, saidCell } from '../document/cell.ts';
import type { DocumentCell, DocumentPart, DocumentTable, PaperDocument } from '../document/document.ts';
import { paperLabels as words } from '../words/en/papers-quality.ts';
import { amountOf, fieldsOf } from './figures.ts';
import { proseWidth, type TextOptions } from './options.ts';
import { page, record } from './page.ts';
import { signed } from './signs.ts';
import { type Column, table } from './table.ts';
import { widthOf } from './width.ts';
import { hanging, wrap } from './wrap.ts';

const WRITE_ON = '________';

export function documentText(document: PaperDocument, options: TextOptions): string {
  if (options.style === 'plain') return page(records(document), options);
  const say = saying(options);
  const { title, head, parts } = document;
  const rule = (options.style === 'screen' ? '\u2500' : '-').repeat(proseWidth(options));
  const top = [...(head.practice ? say(words.practice) : []), ...say(title), ...say(words.under(head)), rule];
  const blocks = parts.map((part) => partLines(part, options)).filter((lines) => lines.length > 0);
  return page(
    [...top, ...blocks.flatMap((lines) => ['', ...lines]), '', rule, ...footLines(document).flatMap(say)],
    options,
  );
}

const saying =
  (options: TextOptions) =>
  (text: string): string[] =>
    wrap(signed(text, options.style), proseWidth(options));

/** The widest line of a hazard box, with its two edges. */
const BOX = 76;

function partLines(part: DocumentPart, options: TextOptions): string[] {
  const say = saying(options);
  switch (part.part) {
    case 'verdict':
      return [...say(part.word), ...say(part.text)];
    case 'heading':
      return say(part.text.toUpperCase());
    case 'text':
      return say(part.text);
    case 'list':
      return part.items.flatMap((item) => hung('  -', item, { options, indent: 4 }));
    case 'facts':
      return factLines(part.facts, options);
    case 'tree':
      return part.nodes.flatMap(({ depth, text }) =>
        hung(depth === 0 ? '' : `${'   '.repeat(depth - 1)}+-`, text, { options, indent: depth * 3 }),
      );
    case 'table':
      return tableLines(part, options);
    case 'hazard':
      return [
        ...boxed(`${part.signal}  ${part.text}`, options),
        ...part.step.flatMap((step) => partLines(step, options)),
      ];
    case 'drawing':
      return say(part.says);
    case 'lines':
      return [...say(part.label), ...Array.from({ length: part.count }, () => writeOn(options))];
    case 'ticks':
      return part.items.flatMap((item) => hung('[ ]', item, { options, indent: 4 }));
    case 'signatures':
      return part.people.flatMap(({ office, says }) => [
        ...say(`${office}: ${says}`),
        ...say(`   ${words.sign} ${WRITE_ON.repeat(2)}  ${words.signedAt} ${WRITE_ON.repeat(2)}`),
      ]);
  }
}

function hung(
  head: string,
  text: string,
  { options, indent }: { readonly options: TextOptions; readonly indent: number },
): string[] {
  const said = signed(text, options.style);
  return indent === 0
    ? wrap(said, proseWidth(options))
    : hanging(head, said, { width: proseWidth(options), indent });
}

const writeOn = (options: TextOptions): string => '_'.repeat(Math.min(BOX, proseWidth(options)));

function factLines(
  facts: readonly { readonly name: string; readonly said: string }[],
  options: TextOptions,
): string[] {
  const indent = Math.max(0, ...facts.map(({ name }) => widthOf(name))) + 3;
  return facts.flatMap(({ name, said }) => hung(name, said === '' ? WRITE_ON : said, { options, indent }));
}

function boxed(text: string, options: TextOptions): string[] {
  const width = Math.min(BOX, proseWidth(options));
  const edge = `+${'-'.repeat(width - 2)}+`;
  const lines = wrap(signed(text, options.style), width - 4);
  return [edge, ...lines.map((line) => `| ${line}${' '.repeat(width - 4 - widthOf(line))} |`), edge];
}

type Row = readonly DocumentCell[];

function tableLines({ columns, rows, empty }: DocumentTable, options: TextOptions): string[] {
  if (rows.length === 0) return saying(options)(empty);
  const list = columns.map((column, k): Column<Row> => {
    const aligned = column.align === 'figure' && rows.every((row) => isFigure(row[k] ?? null));
    return {
      head: headOfColumn(column, options),
      align: column.align === 'left' ? 'left' : aligned ? 'figure' : 'right',
      priority: 0,
      cell: (row) => cellOf(row[k] ?? null, options, aligned),
      ...(column.least !== undefined && { least: column.least }),
    };
  });
  return [...table(list, rows, options).lines];
}

function cellOf(cell: DocumentCell, options: TextOptions, aligned: boolean) {
  if (cell === null) return WRITE_ON;
  if (aligned && isFigure(cell) && cell.u95 !== null) return amountOf(cell, options);
  return saidCell(cell, options);
}

/** paper · title · seal · then each part by its kind: fact name said · row table cell … */
function records(document: PaperDocument): string[] {
  const { paper, of, title, head, book, parts } = document;
  const plain = (fields: readonly string[]) => record(fields.map((field) => signed(field, 'plain')));
  return [
    plain(['paper', paper, of, title, head.at]),
    plain(['book', `${head.entries}`, `${book.kept}`, book.last.join('; '), book.digest]),
    ...parts.flatMap(recordsOf).map(plain),
  ];
}

function recordsOf(part: DocumentPart): readonly (readonly string[])[] {
  switch (part.part) {
    case 'verdict':
      return [['verdict', part.word, part.text]];
    case 'heading':
    case 'text':
      return [[part.part, part.text]];
    case 'list':
      return part.items.map((item) => ['item', item]);
    case 'facts':
      return part.facts.map(({ name, said }) => ['fact', name, said]);
    case 'tree':
      return part.nodes.map(({ depth, text }) => ['node', `${depth}`, text]);
    case 'table':
      return part.rows.map((row) => ['row', part.name, ...row.flatMap((cell) => fieldsOfCell(cell))]);
    case 'hazard':
      return [['hazard', part.signal, part.text], ...part.step.flatMap(recordsOf)];
    case 'drawing':
      return [['drawing', part.says]];
    case 'lines':
      return [['lines', part.label, `${part.count}`]];
    case 'ticks':
      return part.items.map((item) => ['tick', item]);
    case 'signatures':
      return part.people.map(({ office, says }) => ['sign', office, says]);
  }
}

/** A figure takes two fields: its value, and its ± or nothing. */
function fieldsOfCell(cell: DocumentCell): readonly string[] {
  if (cell === null) return [''];
  if (isFigure(cell)) return fieldsOf(cell);
  return [saidCell(cell, { width: 80, style: 'plain', colour: false, units: 'L' })];
}
