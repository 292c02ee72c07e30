// A paper as one self-contained HTML file for print: no script, nothing fetched, every text of a person escaped.

import { bookState, footLines } from '../document/book-state.ts';
import { headOfColumn, saidCell } from '../document/cell.ts';
import {
  type DocumentCell,
  type DocumentPart,
  type DocumentTable,
  type PaperDocument,
  used,
} from '../document/document.ts';
import { escaped } from '../svg/element.ts';
import type { TextOptions } from '../text/options.ts';
import { safe } from '../text/signs.ts';
import { paperLabels as words } from '../words/en/papers-quality.ts';
import { marginOf, type PaperSize, styleOf } from './style.ts';

export interface PrintOptions {
  readonly size: PaperSize;
  readonly units: TextOptions['units'];
}

/** Well-formed as XML, too: every element is closed, every attribute quoted. */
export function documentHtml(document: PaperDocument, options: PrintOptions): string {
  const { language, title, head, parts } = document;
  const margin = marginOf(document, { practice: words.practice, foot: bookState(document) });
  return `<!DOCTYPE html>
<html lang="${language}">
<head>
<meta charset="utf-8"/>
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'"/>
<meta name="viewport" content="width=device-width"/>
<title>${escaped(safe(`${title}, ${head.outpost}, Day ${head.day}`))}</title>
<style>
${styleOf({ size: options.size, isWide: document.isWide }, margin)}</style>
</head>
<body>
<header>
${head.practice ? `${inside('p', words.practice, 'practice')}\n` : ''}${inside('h1', title)}
${inside('p', words.under(head), 'under')}
</header>
<main>
${parts.map((part) => partHtml(part, options)).join('\n')}
</main>
<footer>
${footLines(document)
  .map((line) => inside('p', line))
  .join('\n')}
</footer>
</body>
</html>
`;
}

/** `C-16`, `SMP-05`: no line ends within a name. It looks at escaped text, in which no entity has a hyphen. */
const NAME = /\b[A-Za-z]{1,6}-\d{1,4}\b/g;

/** Text without signs that could turn or hide what stands beside it, as HTML. */
function text(said: string): string {
  return escaped(safe(said)).replace(NAME, '<span class="whole">$&</span>');
}

function inside(name: string, said: string, kind = ''): string {
  return `<${name}${kind === '' ? '' : ` class="${kind}"`}>${text(said)}</${name}>`;
}

const wrapped = (name: string, kind: string, lines: readonly string[]): string =>
  `<${name}${kind === '' ? '' : ` class="${kind}"`}>${lines.join('')}</${name}>`;

function partHtml(part: DocumentPart, options: PrintOptions): string {
  switch (part.part) {
    case 'verdict':
      return wrapped('div', 'verdict', [inside('strong', part.word), text(part.text)]);
    case 'heading':
      return inside('h2', part.text);
    case 'text':
      return inside('p', part.text);
    case 'list':
      return wrapped(
        'ul',
        '',
        part.items.map((item) => inside('li', item)),
      );
    case 'facts':
      return factsHtml(part.facts);
    case 'tree':
      return treeHtml(part.nodes);
    case 'table':
      return tableHtml(part, options);
    case 'hazard':
      return wrapped('div', 'step', [
        wrapped('div', `hazard ${part.signal.toLowerCase()}`, [
          SIGNS[part.signal],
          inside('strong', part.signal),
          ` ${text(part.text)}`,
        ]),
        ...part.step.map((step) => partHtml(step, options)),
      ]);
    case 'drawing':
      return wrapped('figure', '', [part.svg.trim()]);
    case 'lines':
      return wrapped('div', 'lines', [
        inside('div', part.label),
        ...Array.from({ length: part.count }, () => '<div class="line"></div>'),
      ]);
    case 'ticks':
      return part.items.map((item) => inside('div', item, 'tick')).join('\n');
    case 'signatures':
      return part.people.map(signHtml).join('\n');
  }
}

/** The triangle of a warning, and the square of information. @source ISO 3864-1, shapes from memory */
const SIGNS = {
  WARNING: triangle(),
  CAUTION: triangle(),
  NOTICE:
    '<svg viewBox="0 0 22 20" aria-hidden="true"><rect x="2" y="1" width="18" height="18" fill="none" stroke="#000" stroke-width="2"/><path d="M11 5v2M11 9v6" stroke="#000" stroke-width="2.4"/></svg>',
} as const;

function triangle(): string {
  return '<svg viewBox="0 0 22 20" aria-hidden="true"><path d="M11 1L21 19H1Z" fill="none" stroke="#000" stroke-width="2" stroke-linejoin="round"/><path d="M11 7v6M11 15v2" stroke="#000" stroke-width="2.2"/></svg>';
}

function factsHtml(facts: readonly { readonly name: string; readonly said: string }[]): string {
  return wrapped(
    'dl',
    '',
    facts.map(({ name, said }) => inside('dt', name) + inside('dd', said, said === '' ? 'write' : '')),
  );
}

/** Nested lists from nodes with their depth; a node that skips a depth stands one under its parent. */
function treeHtml(nodes: readonly { readonly depth: number; readonly text: string }[]): string {
  let open = 0;
  const parts = nodes.map(({ depth, text: said }) => {
    const to = Math.min(Math.max(0, depth), open) + 1;
    const before = to > open ? '<ol>' : `</li>${'</ol></li>'.repeat(open - to)}`;
    open = to;
    return `${before}<li>${text(said)}`;
  });
  const body = `${parts.join('')}${'</li></ol>'.repeat(open)}`;
  return body.replace('<ol>', '<ol class="tree">');
}

function tableHtml(table: DocumentTable, options: PrintOptions): string {
  const { columns, rows, empty } = used(table);
  if (rows.length === 0) return inside('p', empty);
  const kinds = columns.map(({ align }) => (align === 'figure' ? 'figure' : ''));
  const heads = columns.map((column, k) => inside('th', headOfColumn(column, options), kinds[k]));
  return wrapped('table', '', [
    wrapped('thead', '', [wrapped('tr', '', heads)]),
    wrapped(
      'tbody',
      '',
      rows.map((row) =>
        wrapped(
          'tr',
          '',
          columns.map((_, k) => cellHtml(row[k] ?? null, kinds[k] ?? '', options)),
        ),
      ),
    ),
  ]);
}

function cellHtml(cell: DocumentCell, kind: string, { units }: PrintOptions): string {
  if (cell === null) return '<td class="write"></td>';
  return inside('td', saidCell(cell, { width: 80, style: 'screen', colour: false, units }), kind);
}

function signHtml({ office, says }: { readonly office: string; readonly says: string }): string {
  return wrapped('div', 'sign', [
    inside('strong', office),
    `: ${text(says)}`,
    wrapped('div', '', [inside('span', words.sign), inside('span', words.signedAt)]),
  ]);
}
