// What may happen in a story, in small numbers that shrink well.
import fc from 'fast-check';

/** What may happen. Words that stand twice come up twice as often. */
const WHATS = [
  'move',
  'move',
  'move',
  'drink',
  'drink',
  'use',
  'line',
  'line',
  'line',
  'swap',
  'swap',
  'weigh',
  'weigh',
  'full',
  'hold',
  'release',
  'berth',
  'depart',
  'undo',
  'undo',
  'correct',
  'correct',
  'copy',
  'copy',
  'decide',
  'decide',
  'decide',
  'run',
  'push',
  'sample',
  'count',
  'relabel',
  'claim',
  'nowhere',
  'opening',
  'close',
  'twice',
  'calibrate',
  'replace',
] as const;

/** One act in small numbers: what, three choices, minutes since the act before, and how many later acts are written down before it. */
export interface Act {
  readonly what: (typeof WHATS)[number];
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly minutes: number;
  readonly late: number;
}

const small = fc.nat({ max: 999 });
/** Most entries are written down at once. */
const late = fc.oneof(
  { weight: 6, arbitrary: fc.constant(0) },
  { weight: 1, arbitrary: fc.integer({ min: 1, max: 9 }) },
);

const anyAct: fc.Arbitrary<Act> = fc.record({
  what: fc.constantFrom(...WHATS),
  a: small,
  b: small,
  c: small,
  minutes: fc.integer({ min: 0, max: 900 }),
  late,
});

export const anyJourney: fc.Arbitrary<readonly Act[]> = fc.array(anyAct, {
  minLength: 4,
  maxLength: 40,
  size: 'max',
});
