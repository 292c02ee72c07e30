// Every file says in its first line, in a sentence, what it is.
import { isTypeScript, type SourceFile } from '../tree/source-file.ts';
import { type Rule, samples } from './rule.ts';

/** The comment that a file opens with, as one text; empty where it opens with something else. */
export function openingOf(text: string): string {
  const lines = text.split('\n');
  const end = lines.findIndex((line) => !line.startsWith('// '));
  return lines
    .slice(0, end === -1 ? lines.length : end)
    .map((line) => line.slice(3).trim())
    .join(' ');
}

export const openingSentence: Rule = {
  name: 'opening sentence',
  why: 'who opens a file learns first what it is',
  looksAt: (path) => isTypeScript(path) || path.endsWith('.mjs'),
  faults: ({ path, text }: SourceFile) =>
    /^[\p{L}0-9`'"*].{3,}[.:]( |$)/u.test(openingOf(text))
      ? []
      : [{ path, line: 1, says: 'does not open with a comment of one sentence that says what the file is' }],
  caught: samples(
    'src/book/sample.ts',
    'export const a = 1;',
    '// TODO\nexport const a = 1;',
    '// A text without an end\n',
    '/* A block is not the form. */',
    '\n// Not in the first line.\n',
    '//\n// Nor here.\n',
  ),
  passes: [
    ...samples(
      'src/book/sample.ts',
      '// Entries as plain data.\n',
      '// A sentence that goes on\n// over two lines.\n',
      '// tanh.\n',
      '// Places.\n// And more',
    ),
    ...samples('scripts/sample.mjs', '// Runs on Node 20.\n'),
  ],
};
