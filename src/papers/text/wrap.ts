// Breaking a text into lines: at spaces, never between a value, its ± and its unit.
import { columnsOf, widthOf } from './width.ts';

/**
 * Lines of at most `width` columns. Spaces that do not break hold together what they join, unless that alone is wider
 * than a line: then even they break, and at last a word is cut.
 */
export function wrap(text: string, width: number): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ').flatMap((each) => pieces(each, width))) {
    if (line === '') line = word;
    else if (widthOf(line) + 1 + widthOf(word) <= width) line = `${line} ${word}`;
    else {
      lines.push(line);
      line = word;
    }
  }
  return line === '' && lines.length > 0 ? lines : [...lines, line];
}

function pieces(word: string, width: number): string[] {
  if (widthOf(word) <= width) return word === '' ? [] : [word];
  return word.split('\u00A0').flatMap((part) => cut(part, width));
}

/** A slash is a place to break at; failing that the word is cut where the line ends. */
function cut(word: string, width: number): string[] {
  if (widthOf(word) <= width) return word === '' ? [] : [word];
  const slash = fitting(word, width).lastIndexOf('/') + 1;
  const head = slash > 0 ? word.slice(0, slash) : fitting(word, width);
  return [head, ...cut(word.slice(head.length), width)];
}

/** The signs that fit into a line, at least one. */
function fitting(word: string, width: number): string {
  let part = '';
  for (const sign of word) {
    if (part !== '' && widthOf(part) + columnsOf(sign) > width) break;
    part += sign;
  }
  return part;
}

/** A text behind a head: `ACT NOW    C-07 …`, the following lines under the first one's text. */
export function hanging(
  head: string,
  text: string,
  at: { readonly width: number; readonly indent: number },
): string[] {
  const { width, indent } = at;
  const room = width - indent;
  // A column that leaves no room is given up: the text goes under its head.
  if (room < 16) return [...wrap(head, width), ...wrap(text, width - 2).map((line) => `  ${line}`)];
  const lines = wrap(text, room);
  const margin = ' '.repeat(indent);
  if (widthOf(head) > indent - 1) return [...wrap(head, width), ...lines.map((line) => margin + line)];
  return lines.map((line, k) => (k === 0 ? head + ' '.repeat(indent - widthOf(head)) : margin) + line);
}
