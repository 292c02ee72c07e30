// A reading drawn in plain signs: where it lies against what was believed, and how wide the ± of both are.

/** In the order in which they are drawn: a later one stands over an earlier one. ASCII takes their place by signs.ts. */
export const BAR_SIGNS = {
  believed: '\u2591',
  middle: '\u2502',
  from: '\u251C',
  line: '\u2500',
  to: '\u2524',
  read: '\u25CF',
} as const;

const blank = '\u00A0';

/** Numbers on one scale, in any unit; the middle of the bar is what was believed. */
export interface BarParts {
  /** Reading less belief. */
  readonly difference: number;
  /** The ± of the reading and of the belief. */
  readonly readU95: number;
  readonly believedU95: number;
  /** What half of the bar stands for; more than zero. */
  readonly span: number;
}

/**
 * What lies outside the span is drawn at its edge.
 * @param columns an odd number
 */
export function gaugeBar(parts: BarParts, columns: number): string {
  const { difference, readU95, believedU95, span } = parts;
  const middle = (columns - 1) / 2;
  const at = (value: number) =>
    Math.min(columns - 1, Math.max(0, middle + Math.round((value / span) * middle)));
  const signs = Array.from({ length: columns }, (): string => blank);
  const draw = (from: number, to: number, sign: string) => signs.fill(sign, at(from), at(to) + 1);
  draw(-believedU95, believedU95, BAR_SIGNS.believed);
  draw(0, 0, BAR_SIGNS.middle);
  const [low, high] = [difference - readU95, difference + readU95];
  draw(low, high, BAR_SIGNS.line);
  draw(low, low, BAR_SIGNS.from);
  draw(high, high, BAR_SIGNS.to);
  draw(difference, difference, BAR_SIGNS.read);
  return signs.join('');
}
