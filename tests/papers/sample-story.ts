// The past of an invented store: the family of its water and its readings.
import type { FamilyNode, GaugingPoint, GaugingSheet } from '../../src/papers/index.ts';
import { at, volume } from './sample-figures.ts';

export const family: readonly FamilyNode[] = [
  {
    kind: 'store',
    name: 'FA',
    grade: 'drinking',
    volume: volume(19.21, 0.38),
    share: 0.94,
    days: { first: 7, last: 7 },
    refs: ['skerry 34'],
    entryCount: 1,
    parts: [
      {
        kind: 'delivery',
        name: 'Pannier 8',
        grade: 'drinking',
        volume: volume(19.21, 0.38),
        share: 0.94,
        days: { first: 6, last: 6 },
        refs: ['skerry 30'],
        entryCount: 1,
        parts: [],
      },
    ],
  },
  {
    kind: 'pool',
    name: 'cabin air',
    grade: null,
    volume: volume(1.16, 0.1),
    share: 0.0565,
    days: { first: 3, last: 41 },
    refs: ['skerry 51', 'skerry 44'],
    entryCount: 12,
    parts: [],
  },
  {
    kind: 'older',
    name: '',
    grade: null,
    volume: volume(0.07, 0.024),
    share: 0.0035,
    days: null,
    refs: [],
    entryCount: 0,
    parts: [],
  },
];

export const gauging: GaugingSheet = {
  capacityL: 22,
  remainderL: 0.6,
  estimates: [
    { ...moment(3, 10), when: 'before', volume: volume(20.5, 1.2) },
    { ...moment(3, 10), when: 'after', volume: volume(20.13, 0.4) },
    { ...moment(4, 21), when: 'line', volume: volume(20.13, 0.4) },
    { ...moment(44, 8), when: 'before', volume: volume(20.13, 0.42) },
    { ...moment(44, 8), when: 'after', volume: volume(20.44, 0.29) },
    { ...moment(45, 21), when: 'line', volume: volume(20.44, 0.29) },
  ],
  readings: [
    gauged('skerry 2', 1, { how: 'opening', read: [20.5, 1.2], believed: null, difference: null }),
    gauged('skerry 7', 3, {
      how: 'weighed',
      read: [20.1, 0.4],
      believed: [20.5, 1.2],
      difference: [-0.4, 1.3],
    }),
    gauged('skerry 53', 44, {
      how: 'weighed',
      read: [20.8, 0.4],
      believed: [20.13, 0.42],
      difference: [0.67, 0.58],
    }),
  ],
};

function moment(day: number, hour: number): { readonly day: number; readonly at: string } {
  return { day: day + hour / 24, at: new Date(at(day, hour)).toISOString().replace('.000', '') };
}

type Pair = readonly [value: number, u95: number];

function gauged(
  ref: string,
  day: number,
  told: {
    readonly how: string;
    readonly read: Pair;
    readonly believed: Pair | null;
    readonly difference: Pair | null;
  },
): GaugingPoint {
  const { how, read, believed, difference } = told;
  const figure = (pair: Pair | null) => (pair === null ? null : volume(...pair));
  return {
    ...moment(day, 10),
    ref,
    id: ref,
    stamp: `Day ${day} 10:00 UTC`,
    how,
    read: volume(...read),
    believed: figure(believed),
    difference: figure(difference),
  };
}
