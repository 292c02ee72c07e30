// Table of the data of questions about entries, one row for each way of asking; the words are held against all of them.
import type { FindingData } from '../../src/ground/units/index.ts';

const MG_PER_L = 997_800;
const at = (day: number, hour: number, minute = 0): number => Date.UTC(2147, 2, day, hour, minute);
const of = { ref: 'E0034', entryNo: 'skerry:35', kind: 'movement', mgPerL: MG_PER_L };

const figure = {
  ...of,
  of: 'water',
  value: 205,
  unit: 'L',
  low: 17.8,
  high: 23.6,
  name: 'H-1',
  fits: 20.5,
  slip: 'point',
};
const against = [
  'source',
  'hose',
  'other legs',
  'counter',
  'other counter',
  'usual',
  'time of day',
  'capacity',
  'loaded mass',
  'usual fill',
  'raw readings',
  'store',
  'cabin',
].map((each) => ({ ...figure, against: each }));
const slips = ['sign', 'mL', 'lb', 'gal', 'counts in litres', 'counts in millilitres'].map((slip) => ({
  ...figure,
  ...{ against: 'usual', slip },
}));
const things = ['content', 'rest', 'sample', 'dose', 'product meter', 'dispenser strokes'].map((thing) => ({
  ...figure,
  ...{
    of: thing,
    unit: thing.endsWith('strokes') ? 'strokes' : 'L',
    against: 'usual',
    low: 0,
    fits: null,
    slip: null,
  },
}));
const unreadable = { ...figure, against: 'raw readings', low: 0, high: 0, fits: null, slip: null };

const times = [
  { why: 'written late', minutes: 2100 },
  { why: 'line twice', day: 5, otherRef: 'E0009', otherAtMs: at(5, 21) },
  { why: 'line hour', minutes: 720, dueMs: at(5, 21) },
  { why: 'port empty', port: 'dispenser feed', minutes: 330, sinceMs: at(5, 12, 41) },
  { why: 'flow length', minutes: 15.8, spanMin: 735 },
  { why: 'hose busy', hose: 'H-1', otherRef: 'E0022', otherStartMs: at(7, 12), otherEndMs: at(7, 12, 16) },
  { why: 'unusual hour', minute: 1336, fromMinute: 567, toMinute: 819, count: 9 },
  { why: 'visit day', visit: 'Pannier 8', day: 7, plannedDay: 6 },
  {
    why: 'counters',
    instruments: ['dispenser strokes', 'product meter'],
    shiftMin: 720,
    fitsAtMs: at(5, 12, 41),
  },
];

const orders = [
  { why: 'after entered', enteredAtMs: at(5, 9), happenedAtMs: at(5, 12) },
  { why: 'ends before start', startMs: at(7, 22), endMs: at(7, 10, 16) },
  { why: 'off after on', port: 'dispenser feed', other: 'C-01', otherAtMs: at(5, 12, 41), otherRef: 'E0011' },
  { why: 'off after on', port: 'dispenser feed', other: 'C-01', otherAtMs: at(5, 12, 41), otherRef: null },
  { why: 'result before sample', sample: 'SMP-05' },
  { why: 'people before', people: 7, otherRef: 'E0153', otherAtMs: at(35, 21) },
  { why: 'check after flow', what: 'leak', visit: 'Pannier 8', movedAtMs: at(7, 13, 39) },
];

const stores = [
  'fits other',
  'not on port',
  'empty on feed',
  'full on sink',
  'other grade',
  'held',
  'full',
  'emptied already',
  'sample of other',
  'not held',
  'other label',
].flatMap((why) =>
  [['C-08', 'C-09'], []].map((candidates) => {
    const doubt = { ...of, why, candidates, port: 'dispenser feed', massMg: 20 * MG_PER_L };
    return { ...doubt, other: 'drinking', grade: 'technical' };
  }),
);

export const questionData = {
  'amount-implausible': [...against, ...slips, ...things],
  'reading-implausible': [unreadable, ...things],
  'counter-replaced': [{ ...of, instrument: 'condensate totaliser', last: 155.5, value: 4.2, unit: 'L' }],
  'copy-proposed': ['clock apart', 'double tap', 'another source'].map((reason) => ({
    ...{ ...of, reason, apartMin: 330, atMs: at(9, 14, 46), firstAtMs: at(9, 9, 16) },
    ...{ firstRef: 'E0033', firstEntryNo: 'skerry:34' },
  })),
  'time-implausible': times.map((each) => ({ ...of, ...each })),
  'order-impossible': orders.map((each) => ({ ...of, ...each })),
  'store-doubtful': stores,
  'people-differ': [
    { ...of, said: 7, fewest: 4, most: 4 },
    { ...of, said: 1, fewest: 2, most: 4 },
  ],
} satisfies Readonly<Record<string, readonly FindingData[]>>;
