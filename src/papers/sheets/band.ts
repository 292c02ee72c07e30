// Where a content may lie: its best value with its ±, and never less than nothing or more than the store takes.
import type { SheetFigure } from './figure.ts';

export interface Band {
  readonly low: number;
  readonly high: number;
}

/**
 * Between empty and full, in the unit of the figure. A best value beyond a wall is told as it is, and the band reaches it.
 * @param capacity 0 or more, in the unit of the figure
 */
export function bandWithin({ value, u95 }: Pick<SheetFigure, 'value' | 'u95'>, capacity: number): Band {
  const doubt = u95 ?? 0;
  return {
    low: Math.min(value, Math.max(0, value - doubt)),
    high: Math.max(value, Math.min(capacity, value + doubt)),
  };
}
