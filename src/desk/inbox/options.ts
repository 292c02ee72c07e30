// What a person declares of a table, so that nothing in it has to be guessed.

export type Decimal = 'comma' | 'point';
export type DateOrder = 'day-first' | 'month-first';
export type Shape = 'days' | 'acts';

export interface TableOptions {
  readonly shape?: Shape;
  readonly decimal?: Decimal;
  readonly dates?: DateOrder;
  /** Minutes that the clock of the table is ahead of UTC. */
  readonly zoneMin?: number;
  /** Date that the table calls its Day 1, as days since 1970-01-01; absent: that of the outpost. */
  readonly dayOneDays?: number;
  /** Meaning of a column by its heading: `Water` to `amount [L]`; an empty meaning leaves the column out. */
  readonly columns?: Readonly<Record<string, string>>;
}
