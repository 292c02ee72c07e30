// What a formula says when it is asked beyond the range of its source.

/** The sign at the end of a range that is open. */
export const OPEN_END = Number.POSITIVE_INFINITY;

export interface RangeLeft {
  /** What was given, in plain words of the trade: "temperature of the water". */
  readonly quantity: string;
  readonly value: number;
  readonly unit: string;
  readonly low: number;
  /** Whether the lower end itself is outside. */
  readonly lowIsOpen?: boolean;
  /** `OPEN_END` where the source names no upper end. */
  readonly high: number;
  /** A key of `docs/sources.md`. */
  readonly source: string;
}

/** A value outside the range in which a formula holds. It carries the range and its source, so that a finding can name them. */
export class OutsideRange extends RangeError {
  readonly left: RangeLeft;

  constructor(left: RangeLeft) {
    const { quantity, value, unit, low, high, source } = left;
    const from = left.lowIsOpen === true ? 'above' : 'from';
    const to = high === OPEN_END ? ` ${unit}${from === 'from' ? ' on' : ''}` : ` to ${high} ${unit}`;
    super(`${quantity}: known here ${from} ${low}${to}, not at ${value} (${source})`);
    this.name = 'OutsideRange';
    this.left = left;
  }
}
