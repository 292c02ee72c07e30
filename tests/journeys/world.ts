// The outposts that journeys go through: what a story may name there, and how their meters run.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Amount, Body } from '../../src/book/index.ts';
import { HOLM } from './holm.ts';
import { at, holmOpening } from './told.ts';

/** A counter that journeys read: what a day adds to it, in its own unit. */
export interface WorldCounter {
  readonly id: string;
  readonly aDay: number;
  readonly step: number;
  /** Running totals only: where it rolls over. */
  readonly rollsOverAt?: number;
  readonly from?: number;
}

export interface World {
  readonly name: string;
  readonly outpost: string;
  readonly mgPerL: number;
  readonly opening: Body<'opening'>;
  /** Stores that a keeper moves water between by hand; the ones of `ports` are hooked up in turn. */
  readonly stores: readonly string[];
  readonly ports: readonly {
    readonly port: string;
    readonly stores: readonly string[];
    readonly counters: readonly string[];
  }[];
  readonly counters: readonly WorldCounter[];
  /** Spot readings of its day lines, with the values between which they are. */
  readonly spots: readonly { readonly id: string; readonly least: number; readonly most: number }[];
  /** The unit that single uses are drawn from, and its counter's litres a count. */
  readonly tap: { readonly unit: string; readonly counter: string; readonly litresPerCount: number };
  /** Stores that counters move water through, whatever a story says. */
  readonly metered: readonly string[];
}

/** The flow by the norm is left out, so that people hold exactly what the tap gave them. */
const DRY_HOLM = HOLM.replace('litresPerPersonDay: 1.5', 'litresPerPersonDay: 0');

export const HOLM_WORLD: World = {
  name: 'Holm',
  outpost: DRY_HOLM,
  mgPerL: 1_000_000,
  opening: holmOpening(),
  stores: ['R1', 'C-01', 'C-02', 'C-03', 'C-04', 'W-01', 'W-02'],
  ports: [
    { port: 'tap feed', stores: ['C-01', 'C-04', 'C-03'], counters: ['strokes', 'product'] },
    { port: 'flush feed', stores: ['C-02', 'C-03'], counters: ['flushes'] },
    { port: 'waste port', stores: ['W-01', 'W-02'], counters: [] },
  ],
  counters: [
    { id: 'condensate', aDay: 3.3, step: 0.1, rollsOverAt: 1000, from: 990 },
    { id: 'product', aDay: 3.1, step: 0.01 },
    { id: 'strokes', aDay: 210, step: 1 },
    { id: 'flushes', aDay: 12, step: 1 },
  ],
  spots: [],
  tap: { unit: 'tap', counter: 'strokes', litresPerCount: 0.025 },
  metered: ['KB', 'PB'],
};

const CORRIE = readFileSync(join(import.meta.dirname, '../../examples/corrie/outpost.yaml'), 'utf8').replace(
  'litresPerPersonDay: 1.42',
  'litresPerPersonDay: 0',
);

function corrieAmount(valueL: number, uL: number): Amount {
  const mgPerUnit = 997_800;
  return {
    massMg: Math.round(valueL * mgPerUnit),
    raw: { value: valueL, unit: 'L', mgPerUnit },
    uMg: Math.round(uL * mgPerUnit),
  };
}

function corrieStocks(): Body<'opening'>['stores'] {
  const many = (ids: readonly string[], valueL: number, grade: string | null) =>
    ids.map((store) => ({ store, amount: corrieAmount(valueL, 0.25), grade }));
  return [
    ...many(['R1', 'R2'], 160, 'drinking'),
    ...many(['C-01', 'C-02', 'C-03', 'C-04'], 20.4, 'drinking'),
    ...many(['C-05', 'C-06'], 0, null),
    ...many(['C-07', 'C-08', 'C-09'], 20.2, 'technical'),
    ...many(['W-01'], 6, 'waste'),
    ...many(['W-02', 'W-03'], 0, 'waste'),
    ...many(['KB'], 4, 'raw'),
    ...many(['PB'], 2, 'drinking'),
  ];
}

export const CORRIE_WORLD: World = {
  name: 'Corrie',
  outpost: CORRIE,
  mgPerL: 997_800,
  opening: {
    asOfMs: at(0, 21),
    dayOneMs: at(1, 0),
    peopleAboard: 4,
    stores: corrieStocks(),
    ports: [
      { port: 'dispenser feed', store: 'C-01' },
      { port: 'electrolyser/flush feed', store: 'C-07' },
      { port: 'waste receptacle', store: 'W-01' },
    ],
    counters: [{ instrument: 'condensate', value: 870.5 }],
    service: [],
    visits: [],
  },
  stores: ['R1', 'R2', 'C-01', 'C-02', 'C-03', 'C-05', 'C-06', 'C-07', 'C-08', 'W-01', 'W-02', 'W-03'],
  ports: [
    { port: 'dispenser feed', stores: ['C-01', 'C-02', 'C-03', 'C-04'], counters: ['strokes', 'product'] },
    {
      port: 'electrolyser/flush feed',
      stores: ['C-07', 'C-08', 'C-09'],
      counters: ['electrolyser-feed', 'flushes'],
    },
    { port: 'waste receptacle', stores: ['W-01', 'W-02', 'W-03'], counters: [] },
  ],
  counters: [
    { id: 'condensate', aDay: 6.9, step: 0.1, rollsOverAt: 1000, from: 870.5 },
    { id: 'product', aDay: 6.6, step: 0.01 },
    { id: 'strokes', aDay: 430, step: 1 },
    { id: 'flushes', aDay: 24, step: 1 },
    { id: 'electrolyser-feed', aDay: 2.9, step: 0.01 },
  ],
  spots: [
    { id: 'humidity', least: 40, most: 60 },
    { id: 'cabin-temperature', least: 20.5, most: 23.5 },
  ],
  tap: { unit: 'dispenser', counter: 'strokes', litresPerCount: 0.025 },
  metered: ['KB', 'PB'],
};
