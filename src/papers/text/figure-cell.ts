// Figures in a column: values on their decimal points, and every ± under the one above.
import { plusMinus, roundFigure, styled } from '../../ground/units/index.ts';
import type { TextStyle } from './options.ts';
import { padEnd, padStart, widthOf } from './width.ts';

/** A figure whose unit stands in the head of its column. */
export interface FigureCell {
  readonly value: number;
  readonly u95: number | null;
  /** A word behind it, such as `each`. */
  readonly behind?: string;
}

const unknownDoubt = '?';

/** Texts of equal width for the figures of a column; an empty text where the cell is no figure. */
export function figureColumn(cells: readonly (string | FigureCell)[], style: TextStyle): readonly string[] {
  const rounded = cells.map((cell) => (typeof cell === 'string' ? null : parts(cell, style)));
  const values = pointed(rounded.map((each) => each?.value ?? ''));
  const doubts = pointed(rounded.map((each) => each?.u95 ?? ''));
  const behind = rounded.map((each) => each?.behind ?? '');
  const tail = Math.max(0, ...behind.map(widthOf));
  const sign = plusMinus(style === 'screen' ? 'screen' : 'plain');
  return rounded.map((each, k) => {
    if (each === null) return '';
    const figure = `${values[k] ?? ''}\u00A0${sign}\u00A0${doubts[k] ?? ''}`;
    return tail === 0 ? figure : `${figure}\u00A0${padEnd(behind[k] ?? '', tail).replaceAll(' ', '\u00A0')}`;
  });
}

function parts({ value, u95, behind = '' }: FigureCell, style: TextStyle) {
  const figure = roundFigure({ value, u95 });
  const signs = style === 'screen' ? 'screen' : 'plain';
  return {
    value: styled(figure.value, signs),
    u95: figure.u95 === null ? unknownDoubt : styled(figure.u95, signs),
    behind,
  };
}

/** Numbers padded on both sides of their decimal point, with spaces that do not break. */
function pointed(texts: readonly string[]): readonly string[] {
  const split = texts.map((text) => {
    const at = text.indexOf('.');
    return at === -1 ? { whole: text, rest: '' } : { whole: text.slice(0, at), rest: text.slice(at) };
  });
  const left = Math.max(0, ...split.map(({ whole }) => widthOf(whole)));
  const right = Math.max(0, ...split.map(({ rest }) => widthOf(rest)));
  return split.map(({ whole, rest }) =>
    (padStart(whole, left) + padEnd(rest, right)).replaceAll(' ', '\u00A0'),
  );
}
