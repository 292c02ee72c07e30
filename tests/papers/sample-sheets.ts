// Table of sheets of an invented outpost, made by hand: what the desk would hand out, small enough to be read.

import type {
  BookSheet,
  CoverFigure,
  KeptSheet,
  ReadingWorth,
  SheetFigure,
  SheetHead,
  StoreLine,
  StoreSheet,
  TodaySheet,
  WordedFinding,
} from '../../src/papers/index.ts';
import { wordFinding } from '../../src/papers/index.ts';
import { fallingBiocide, usedLife } from './sample-biocide.ts';
import { at, because, mass, volume } from './sample-figures.ts';
import { onHold } from './sample-quality.ts';
import { family, gauging } from './sample-story.ts';

const dayRule = { dayOneUtcMs: Date.UTC(2147, 2, 1), lineMinuteOfDay: 1260 };

const days = (value: number, u95: number): SheetFigure => ({ value, u95, unit: 'd', because });

export const head: SheetHead = {
  outpost: 'Skerry',
  practice: false,
  stamp: 'Day 46 \u00B7 2147-04-15 Sat \u00B7 21:00 UTC',
  day: 46,
  at: '2147-04-15T21:00:00Z',
  view: 'now',
  closedToDay: 31,
  peopleAboard: 4,
  entries: 202,
};

type Told = Partial<Omit<StoreLine, 'mass' | 'volume' | 'band'>> & {
  readonly id: string;
  readonly litres: readonly [number, number | null];
};

export function store({ id, litres, ...told }: Told): StoreLine {
  return {
    id,
    name: `portable container ${id}`,
    kind: 'container',
    capacityL: 22,
    place: 'rack',
    grade: 'drinking',
    emptied: false,
    held: false,
    conditional: false,
    reserve: false,
    mark: '',
    port: null,
    howKnown: 'weighed',
    standing: 'deduced',
    age: 30,
    ...told,
    band: {
      low: Math.max(0, litres[0] - (litres[1] ?? 0)),
      high: litres[0] + (litres[1] ?? 0),
      unit: 'L',
    },
    mass: mass(...litres),
    volume: volume(...litres),
  };
}

const stores: readonly StoreLine[] = [
  store({
    id: 'R1',
    litres: [172.04, 6.1],
    kind: 'tank',
    place: 'outside',
    reserve: true,
    howKnown: 'opening',
    age: 1104,
  }),
  store({
    id: 'R2',
    litres: [173.6, 3.2],
    kind: 'tank',
    place: 'outside',
    reserve: true,
    howKnown: 'gauged',
    age: 5,
  }),
  store({ id: 'C-01', litres: [13.21, 0.48], port: 'dispenser feed', howKnown: 'reckoned', age: 17 }),
  store({ id: 'C-02', litres: [20.5, 0.4] }),
  store({ id: 'C-03', litres: [20.5, 0.4], age: 60 }),
  store({ id: 'C-04', litres: [20.5, 0.4] }),
  store({ id: 'C-05', litres: [20.41, 0.41], howKnown: 'reckoned', age: 200 }),
  store({ id: 'C-06', litres: [0.6, 0.4], emptied: true, mark: 'EMPTY', howKnown: 'declared empty' }),
  store({ id: 'C-07', litres: [0.6, 0.4], emptied: true, mark: 'EMPTY', howKnown: 'declared empty' }),
  store({ id: 'C-08', litres: [0.6, 0.4], emptied: true, mark: 'EMPTY', howKnown: 'declared empty' }),
  store({
    id: 'C-09',
    litres: [8.12, 0.63],
    grade: 'technical',
    port: 'electrolyser/flush feed',
    howKnown: 'reckoned',
    age: 70,
  }),
  store({ id: 'KB', litres: [4.9, 0.52], kind: 'buffer', grade: 'raw', howKnown: 'reckoned', age: 1104 }),
  store({
    id: 'FA',
    litres: [196.83, 4.5],
    kind: 'vehicleTank',
    place: 'Dory 3',
    grade: 'waste',
    howKnown: 'reckoned',
    age: 969,
  }),
];

const sums: TodaySheet['sums'] = [
  { name: 'reserve', volume: volume(345.64, 6.9) },
  { name: 'drinking', volume: volume(95.12, 0.94) },
  { name: 'in emptied stores', volume: volume(1.8, 0.69) },
  { name: 'technical', volume: volume(8.12, 0.63) },
  { name: 'raw', volume: volume(4.9, 0.52) },
  { name: 'waste', volume: volume(196.83, 4.5) },
];

const drinking: CoverFigure = {
  q05: 17.96,
  q50: 18.93,
  q95: 20.2,
  unit: 'd',
  basis: 'learned',
  free: volume(92.12, 1.3),
  use: {
    value: 4.87,
    u95: 0.31,
    unit: 'L/d',
    because: { ...because, inputs: [...because.inputs, { name: 'days', value: 29, unit: 'd' }] },
  },
  outDayQ05: 63,
  outDayQ50: 64,
  toFloor: { q05: 26.3, q50: 28.1, q95: 30 },
  atRates: [
    {
      rate: 'planning',
      litresPerPersonDay: 2.5,
      people: 4,
      free: days(9.21, 0.13),
      toFloor: days(13.77, 0.74),
      reserve: days(33.76, 0.7),
    },
    {
      rate: 'survival',
      litresPerPersonDay: 2,
      people: 4,
      free: days(11.52, 0.16),
      toFloor: days(17.22, 0.92),
      reserve: days(42.2, 0.88),
    },
  ],
  because,
};

const technical: CoverFigure = {
  ...drinking,
  q05: 1.87,
  q50: 2.01,
  basis: 'norm',
  free: volume(7.52, 0.66),
  use: { value: 4.03, u95: 0.1, unit: 'L/d', because },
  outDayQ05: 48,
  toFloor: null,
  atRates: null,
};

/** A reading that narrows a cover, one that teaches a cover nothing that is printed, and one on which no cover hangs. */
export const readings: readonly ReadingWorth[] = [
  {
    store: 'C-09',
    way: 'weighing',
    instrument: 'balance',
    task: { id: 'weigh a container', minutes: 14, people: 1 },
    readingU95L: 0.4,
    content: { before: volume(8.12, 0.63), after: volume(8.12, 0.33) },
    cover: {
      grade: 'technical',
      reach: 'free',
      stock: { before: volume(7.52, 0.66), after: volume(7.52, 0.38) },
      days: { before: days(2.01, 0.21), after: days(2.01, 0.14) },
    },
  },
  {
    store: 'R1',
    way: 'gas injection',
    instrument: 'gas-injection',
    task: { id: 'gauge a tank', minutes: 50, people: 2 },
    readingU95L: 3.2,
    content: { before: volume(172.04, 6.1), after: volume(172.04, 2.8) },
    cover: {
      grade: 'drinking',
      reach: 'to floor',
      stock: { before: volume(137.76, 7), after: volume(137.76, 4.3) },
      days: { before: days(28.1, 2.6), after: days(28.1, 1.9) },
    },
  },
  {
    store: 'C-05',
    way: 'weighing',
    instrument: 'balance',
    task: null,
    readingU95L: 0.4,
    content: { before: volume(20.41, 0.41), after: volume(20.41, 0.29) },
    cover: {
      grade: 'drinking',
      reach: 'free',
      stock: { before: volume(92.12, 1.3), after: volume(92.12, 1.26) },
      days: { before: days(18.93, 1.12), after: days(18.93, 1.11) },
    },
  },
  {
    store: 'KB',
    way: 'sight glass',
    instrument: null,
    task: { id: 'look at a sight glass', minutes: 2, people: 1 },
    readingU95L: 0.4,
    content: { before: volume(4.9, 0.52), after: volume(4.9, 0.32) },
    cover: null,
  },
];

const finding = (
  code: string,
  severity: WordedFinding['severity'],
  data: Readonly<Record<string, string | number | boolean | null | readonly string[]>>,
  where: WordedFinding['where'] = {},
): WordedFinding =>
  wordFinding(
    { code, severity, data, where, entries: ['0f000000-0000-7000-8000-000000000002'] },
    { dayRule, mgPerL: 997_800 },
  );

const litres = (value: number): number => Math.round(value * 997_800);
const of = { ref: 'E0035', entryNo: 'skerry:36', kind: 'movement', mgPerL: 997_800 };

export const copy = finding(
  'duplicate-proposed',
  'act-today',
  {
    ...of,
    reason: 'clock apart',
    massMg: litres(20.5),
    from: 'FA',
    to: 'C-05',
    atMs: at(45, 14, 46),
    firstAtMs: at(45, 9, 16),
    firstRef: 'E0034',
    firstEntryNo: 'skerry:35',
    apartMin: 330,
    wouldHoldMg: litres(40.9),
    capacityMg: litres(22),
  },
  { store: 'C-05' },
);
const slip = (ref: string) =>
  finding(
    'over-capacity',
    'act-today',
    { ...of, ref, massMg: litres(11.6), u95Mg: litres(0.26), capacityMg: litres(10) },
    { store: 'KB' },
  );

/** A day like others: little needs anybody. */
export const normal: TodaySheet = {
  head,
  silence: null,
  cover: { drinking, technical },
  reserve: { volume: volume(345.64, 6.9), floorL: 300, capacityL: 366, conditionalL: 0 },
  stores,
  sums,
  total: volume(652.41, 8.4),
  closureMg: 0,
  readings,
  findings: [
    copy,
    slip('E0177'),
    slip('E0176'),
    finding('count-missing', 'know', { ...of, instrument: 'dispenser strokes' }, { field: 'strokes' }),
  ],
  visits: [
    { visit: 'Dory 3', berthDay: 6, departDay: 51, aboard: true },
    { visit: 'Dory 4', berthDay: 66, departDay: null, aboard: false },
  ],
};

const heldIds = ['C-02', 'C-03', 'C-04', 'C-05'];
const heldStores = stores.map((each): StoreLine => {
  if (heldIds.includes(each.id)) return { ...each, held: true, mark: 'HOLD' };
  return each.id === 'R2' ? { ...each, conditional: true, mark: 'CONDITIONAL' } : each;
});

/** Half of the drinking water on hold, and more findings than a page takes. */
export const held: TodaySheet = {
  ...normal,
  head: { ...head, practice: true, view: 'as known at', closedToDay: null },
  cover: {
    drinking: { ...drinking, q05: null, q50: null, outDayQ05: null },
    technical: {
      ...technical,
      q05: null,
      q50: null,
      q95: null,
      basis: 'not enough data',
      use: null,
      outDayQ05: null,
    },
  },
  reserve: { volume: volume(345.64, 6.9), floorL: 300, capacityL: 366, conditionalL: 173.6 },
  stores: heldStores,
  findings: [
    finding('hold-open', 'act-now', {
      hold: 'Q-01',
      reason: 'plate count',
      sinceMs: at(46, 16, 30),
      stores: heldIds,
      massMg: litres(81.9),
      u95Mg: litres(0.8),
      mgPerL: 997_800,
    }),
    finding('conditional-reserve', 'act-now', {
      hold: 'Q-01',
      reason: 'plate count',
      sinceMs: at(46, 16, 30),
      stores: ['R2'],
      massMg: litres(173.6),
      u95Mg: litres(3.2),
      mgPerL: 997_800,
    }),
    ...['E0101', 'E0102', 'E0103', 'E0104', 'E0105', 'E0106', 'E0107', 'E0108'].map((ref) =>
      finding('refused-recorded', 'know', {
        ...of,
        ref,
        what: 'pour V-1 into C-03',
        rule: 'biocides must not meet',
      }),
    ),
  ],
};

/** Nobody has entered anything for two days. */
export const silent: TodaySheet = {
  ...normal,
  silence: finding('no-reading', 'act-today', { lastMs: at(44, 21), days: 2 }),
  findings: [],
};

/** A book with its outpost file and nothing else. */
export const empty: TodaySheet = {
  head: { ...head, peopleAboard: 0, entries: 1, closedToDay: null },
  silence: null,
  cover: {},
  reserve: null,
  stores: [],
  sums: [],
  total: volume(0, 0),
  closureMg: 0,
  readings: [],
  findings: [finding('opening-missing', 'act-today', {})],
  visits: [],
};

export const oneStore: StoreSheet = {
  head,
  store: heldStores[4] as StoreLine,
  answer:
    'No. HOLD Q-01 since Day 46 16:30 UTC (plate count). It waits for a release, a waiver or a downgrade.',
  quality: onHold,
  facts: [
    { name: 'capacity', text: '22 L' },
    { name: 'last reading', text: 'weighed, Day 44 08:10 UTC' },
  ],
  worth: { ...(readings[2] as ReadingWorth), store: 'C-03' },
  gradeHistory: ['drinking'],
  biocides: ['silver'],
  biocide: fallingBiocide,
  life: { ...usedLife },
  history: [
    {
      ref: 'skerry 7',
      id: 'a',
      stamp: 'Day 3 10:15 UTC',
      kind: 'weigh',
      text: 'weigh C-03: 20.1\u00A0\u00B1\u00A00.4\u00A0L, by balance',
      undoneBy: null,
      correctedBy: 'skerry 9',
      now: 'weigh C-03: 20.6 \u00B1 0.4\u00A0L, by balance',
    },
    {
      ref: 'skerry 55',
      id: 'b',
      stamp: 'Day 46 16:30 UTC',
      kind: 'hold',
      text: 'HOLD Q-01 on C-02, C-03, C-04 and C-05; CONDITIONAL R2: plate count',
      undoneBy: null,
      correctedBy: null,
      now: null,
    },
  ],
  olderEvents: 5,
  family,
  gauging,
  findings: [normal.findings[0] as WordedFinding],
};

const line: BookSheet['lines'][number] = {
  ref: 'skerry 34',
  id: '0f000000-0000-7000-8000-000000000022',
  happened: 'Day 7 10:16 UTC',
  entered: 'Day 7 10:16 UTC',
  kind: 'movement',
  text: 'fill 20.5\u00A0L from FA to C-05 by flow meter, started Day 7 10:00 UTC, through H-1 in 15.8\u00A0min at 50\u00A0kPa over cabin',
  by: 'keeper',
  source: null,
  note: null,
  undoneBy: null,
  correctedBy: null,
  now: null,
  mayCorrect: 'amount',
  fileRef: null,
  late: false,
};

export const book: BookSheet = {
  head,
  more: true,
  lines: [
    line,
    {
      ...line,
      ref: 'skerry 35',
      entered: 'Day 9 08:00 UTC',
      source: 'ground copy of voice log',
      note: 'from the voice loop',
      by: 'second',
    },
    {
      ...line,
      ref: 'skerry 36',
      kind: 'hookup',
      text: 'hook-up: C-03 on dispenser feed',
      undoneBy: 'skerry 37',
      correctedBy: 'skerry 38',
      late: true,
    },
  ],
};

export const kept: KeptSheet = {
  kept: true,
  became: ['C-20 is technical from now on; it was drinking.'],
  line: {
    ...line,
    ref: 'skerry 1045',
    text: 'drink 200\u00A0mL (8\u00A0strokes) from dispenser',
    happened: 'Day 46 14:09 UTC',
  },
  stores: [
    { before: { valueL: 13.21, u95L: 0.48 }, after: { id: 'C-01', valueL: 13.01, u95L: 0.48 } },
    { before: null, after: { id: 'C-20', valueL: 20.5, u95L: 0.6 } },
  ],
  cover: [{ grade: 'drinking', beforeQ05: 33.4, afterQ05: 30.2 }],
  findings: [],
};

/** Errors: a place in a file, a field, and one about nothing in particular. */
export const errors: readonly WordedFinding[] = [
  finding(
    'unit-unknown',
    'error',
    { received: '20 Q', unit: 'Q', allowed: ['L', 'mL'], nearest: [] },
    { file: 'log.csv', line: 12, column: 5, field: 'litres' },
  ),
  finding('intention-refused', 'error', {
    rule: 'hold',
    from: 'C-07',
    to: 'C-08',
    hold: 'Q-01',
    reason: 'plate count',
    sinceMs: at(46, 13, 40),
  }),
  finding(
    'not-in-book',
    'error',
    { what: 'store', name: 'C-99', nearest: ['C-09'] },
    { line: 3, field: 'store' },
  ),
];
