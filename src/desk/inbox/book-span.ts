// The time in which what a table tells can have happened: from the opening stocks to now.
import type { Fold } from '../../account/index.ts';
import { LATEST_INSTANT_MS } from '../../book/index.ts';
import { msPerDay } from '../../ground/units/index.ts';
import type { Desk } from '../desk.ts';
import type { BookSpan } from './date-order.ts';

/** A practice book has its own present, and goes on with what is tried in it: a year ahead. */
const PRACTICE_AHEAD_MS = 366 * msPerDay;

export function bookSpan(desk: Desk, fold: Fold, presentMs: number): BookSpan {
  const untilMs = desk.info.purpose === 'practice' ? presentMs + PRACTICE_AHEAD_MS : presentMs;
  return {
    fromMs: fold.openingMs ?? fold.dayRule.dayOneUtcMs,
    untilMs: Math.min(untilMs, LATEST_INSTANT_MS),
  };
}
