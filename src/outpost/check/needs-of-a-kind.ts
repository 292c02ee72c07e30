// Keys that a kind of store or instrument cannot do without, and keys that mean nothing there.

import type { Path } from '../outpost-finding.ts';
import type { OutpostFile } from '../shape/file-schema.ts';
import type { Placed, SoundPart } from './sound-part.ts';

type Store = OutpostFile['stores'][number];
type Instrument = OutpostFile['instruments'][number];

/** [holds for, key, why]: the reason is a word that the table of sentences knows. */
type Need<Item> = readonly [(item: Item) => boolean, keyof Item, string];

const STORE_NEEDS: readonly Need<Store>[] = [
  [({ kind }) => kind === 'wasteContainer', 'fullAtL', 'waste-container'],
  [({ fullAtL }) => fullAtL !== undefined, 'fullAtDoubtL', 'full-at'],
  [({ kind }) => kind === 'vehicleTank', 'comesWith', 'vehicle-tank'],
  [({ gaugedBy }) => gaugedBy === 'gas injection', 'gauging', 'gas-injection'],
  [({ gaugedBy }) => gaugedBy === 'dip stick', 'gaugeTable', 'dip-stick'],
  [
    ({ gaugedBy }) => ['gas injection', 'weighing', 'dip stick', 'level gauge'].includes(gaugedBy),
    'gauge',
    'gauged',
  ],
];

/** Keys that say something about other kinds only. */
const STORE_KEYS_OF: readonly (readonly [keyof Store, readonly Store['kind'][]])[] = [
  ['wasteLimitL', ['vehicleTank']],
  ['fullAtL', ['wasteContainer']],
];

const isCounted = ({ unit }: Instrument) => unit === 'strokes' || unit === 'flushes' || unit === 'counts';
const isCounter = ({ measures, reading }: Instrument) =>
  measures === 'flow' && (reading === 'sinceLine' || reading === 'runningTotal');

const INSTRUMENT_NEEDS: readonly Need<Instrument>[] = [
  [isCounted, 'litresPerCount', 'counted'],
  [({ measures }) => measures === 'pressure', 'pressureIs', 'pressure'],
  [({ measures }) => measures === 'quality', 'quantity', 'quality'],
  [({ doubtFromStore }) => !doubtFromStore, 'random', 'doubt'],
  [(item) => isCounter(item) && item.route === undefined, 'meters', 'counter'],
];

function checkNeeds<Item extends object>(
  part: SoundPart,
  { item, path }: Placed<Item>,
  needs: readonly Need<Item>[],
  code: 'store-needs-key' | 'instrument-needs-key',
): void {
  for (const [applies, key, why] of needs) {
    const value = item[key];
    const empty = typeof value === 'object' && value !== null && Object.keys(value).length === 0;
    if (applies(item) && (value === undefined || empty)) part.add(code, path, { key: String(key), why });
  }
}

function checkStore(part: SoundPart, { item, path }: Placed<Store>): void {
  if ((item.id === undefined) === (item.ids === undefined))
    part.add('store-id-or-ids', path, { both: item.id !== undefined });
  for (const [key, kinds] of STORE_KEYS_OF) {
    if (item[key] !== undefined && !kinds.includes(item.kind))
      part.add('store-key-not-for-kind', [...path, key], { key, kind: item.kind, kinds });
  }
  if (item.reserve && (item.kind === 'vehicleTank' || item.kind === 'wasteContainer')) {
    part.add('store-key-not-for-kind', [...path, 'reserve'], {
      key: 'reserve',
      kind: item.kind,
      kinds: ['tank', 'container', 'softBag', 'buffer'],
    });
  }
}

const CONTENT_GAUGES = ['gas injection', 'weighing', 'dip stick', 'level gauge'];

/** The instrument that gauges a store must measure what is in it. */
function checkGauges(part: SoundPart): void {
  const instruments = new Map(part.each('instruments').map(({ item }) => [item.id, item]));
  for (const { item, path } of part.each('stores')) {
    const gauge = item.gauge === undefined ? undefined : instruments.get(item.gauge);
    if (gauge === undefined || gauge.measures === 'content' || !CONTENT_GAUGES.includes(item.gaugedBy))
      continue;
    part.add('gauge-measures-other', [...path, 'gauge'], {
      gauge: gauge.id,
      measures: gauge.measures,
      gaugedBy: item.gaugedBy,
    });
  }
}

function checkRoute(part: SoundPart, { item, path }: Placed<Instrument>): void {
  if (item.meters !== undefined && item.route !== undefined)
    part.add('route-twice', [...path, 'route'] as Path, { meters: item.meters });
}

export function checkNeedsOfAKind(part: SoundPart): void {
  for (const placed of part.each('stores')) {
    checkStore(part, placed);
    checkNeeds(part, placed, STORE_NEEDS, 'store-needs-key');
  }
  for (const placed of part.each('instruments')) {
    checkRoute(part, placed);
    checkNeeds(part, placed, INSTRUMENT_NEEDS, 'instrument-needs-key');
  }
  checkGauges(part);
}
