// The gallery of findings as a page: for each code how grave it is, when it comes, an input that brings it, and its words.
import type { Severity } from '../../src/ground/units/index.ts';
import { type WordedFinding, wrap } from '../../src/papers/index.ts';

export interface GalleryEntry {
  readonly code: string;
  readonly when: string;
  /** Why nothing was read for it. */
  readonly writtenOut?: string;
  readonly failures: readonly { readonly given: readonly string[]; readonly finding: WordedFinding }[];
}

export interface GalleryRoom {
  readonly name: string;
  /** What its samples are made of. */
  readonly about: string;
  readonly entries: readonly GalleryEntry[];
}

const LEVELS: Readonly<Record<Severity, string>> = {
  error: 'error',
  'act-now': 'act now',
  'act-today': 'act today',
  know: 'know',
};

const HEAD = `# Findings

Made by a test from one failing input for each finding; \`npm run golden\` writes it anew. Do not edit it.

Everything that Waterwright has to say about an input, a file, a book or the water has a code, four sentences (what it is, what was expected, what was received, what to do) and a level:

- **error**: the input was not taken, or the command could not do its work. Nothing was changed, unless the sentences say so.
- **act now**, **act today**, **know**: the entry is kept; this is what it means for the crew.

Look a code up with the search of your reader. Every sample was given to the program as it stands here; the few that were written out say why.
`;

export function errorsPage(rooms: readonly GalleryRoom[]): string {
  const contents = rooms.map(
    ({ name, entries }) => `- [${titleOf(name)}](#${name.replaceAll(' ', '-')}): ${entries.length} findings`,
  );
  return `${[HEAD, `${contents.join('\n')}\n`, ...rooms.map(roomText)].join('\n')}`;
}

function titleOf(name: string): string {
  return name.slice(0, 1).toUpperCase() + name.slice(1);
}

function roomText({ name, about, entries }: GalleryRoom): string {
  return [`## ${titleOf(name)}\n`, `${about}\n`, ...entries.map(entryText)].join('\n');
}

function entryText({ code, when, writtenOut, failures }: GalleryEntry): string {
  const levels = [...new Set(failures.map(({ finding }) => LEVELS[finding.severity]))];
  return [
    `### \`${code}\`\n`,
    `*${levels.join(', ')}* · ${when}${writtenOut === undefined ? '' : ` Written out: ${writtenOut}`}\n`,
    ...failures.flatMap(({ given, finding }) => [block(given), block(printed(finding))]),
  ].join('\n');
}

function block(lines: readonly string[]): string {
  return `\`\`\`text\n${lines.map(visible).join('\n')}\n\`\`\`\n`;
}

const WIDTH = 96;
const INDENT = 12;

/** The four sentences under their place, as a screen of this width shows them. */
function printed(finding: WordedFinding): readonly string[] {
  const place = placeOf(finding);
  return [
    ...(place === '' ? [] : [place]),
    ...wrap(finding.text, WIDTH),
    ...labelled('  expected', finding.expected),
    ...labelled('  received', finding.received),
    ...labelled('  remedy', finding.remedy),
  ];
}

function labelled(label: string, text: string): readonly string[] {
  return wrap(text, WIDTH - INDENT).map((line, k) => (k === 0 ? label : '').padEnd(INDENT) + line);
}

function placeOf({ where }: WordedFinding): string {
  const spot = [where.file, where.line, where.column].filter((part) => part !== undefined).join(':');
  return [spot, where.field].filter((part) => part !== undefined && part !== '').join('  ');
}

/** Signs that nobody sees are spelt out; a space that does not break is a space here. */
function visible(line: string): string {
  return line
    .replaceAll('\u00A0', ' ')
    .replace(
      /[\p{Cc}\p{Cf}\p{Cs}]/gu,
      (sign) => `\\u${(sign.codePointAt(0) ?? 0).toString(16).padStart(4, '0')}`,
    )
    .trimEnd();
}
