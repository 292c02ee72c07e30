// How a text is to be made: for which width, in which signs, with or without colour, in litres or kilograms.

/** `screen` has the true signs, `ascii` the same page for a terminal without them, `plain` one record a line for programs. */
export type TextStyle = 'screen' | 'ascii' | 'plain';

export interface TextOptions {
  /** Columns of the terminal; `plain` does not look at it. */
  readonly width: number;
  readonly style: TextStyle;
  /** Only ACT NOW, ACT TODAY and HOLD are ever coloured, and never without the word. */
  readonly colour: boolean;
  readonly units: 'L' | 'kg';
}

/** Narrower than this no figure fits with its ±. */
const NARROWEST = 20;
/** Longer lines of prose are hard to read; tables may be wider. */
const WIDEST_PROSE = 100;

export function tableWidth({ width }: TextOptions): number {
  return Math.max(NARROWEST, width);
}

export function proseWidth(options: TextOptions): number {
  return Math.min(tableWidth(options), WIDEST_PROSE);
}
