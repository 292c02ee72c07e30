// Table of data of every finding of the desk, as the desk brings it.

import type { FindingData } from '../../src/ground/units/index.ts';
import type { DeskFindingCode } from '../../src/papers/index.ts';

const at = (day: number, hour: number, minute = 0): number => Date.UTC(2147, 2, day, hour, minute);
/** What stands in the data of every finding about an entry. */
const of = { ref: 'E0034', entryNo: 'skerry:35', kind: 'movement', mgPerL: 997_800 };
const litres = (volume: number): number => Math.round(volume * 997_800);

const overdose = { biocide: 'silver', maximumMgPerL: 0.5, presentMgPerL: null, massMg: litres(0.1) };

export const deskData: Readonly<Record<DeskFindingCode, readonly FindingData[]>> = {
  'limits-ask': [
    {
      ...{ what: ['limits of a nation'], stores: ['C-11', 'C-12'], heldL: 41, u95L: 1, off: ['pH range'] },
      ...{ grades: ['drinking'], clashes: ['Correctly dosed water cannot meet it.'] },
    },
    { what: ['limits of a nation'], stores: [], heldL: 0, u95L: 0, off: [], grades: [], clashes: [] },
  ],
  'limit-exposure-differs': [
    { sets: ['crewed exposure by duration'], wasDays: 180, isDays: 10 },
    { sets: ['crewed exposure by duration'], wasDays: 180, isDays: null },
  ],
  'parameter-unknown': [
    { parameter: 'silvr', nearest: ['silver'], known: ['silver', 'TOC'] },
    { parameter: 'zzz', nearest: [], known: ['silver', 'TOC'] },
  ],
  'figure-unread': [
    ...['number', 'negative', 'unit missing', 'unit unknown', 'unit does not fit'].map((why) => ({
      ...{ parameter: 'silver', received: '0.03', why, units: ['mg/L'] },
    })),
    { parameter: 'silver', received: '9e9 mg/L', why: 'too large', units: ['mg/L'], most: 1e6 },
    ...['basis missing', 'basis unknown', 'basis does not fit'].map((why) => ({
      ...{ parameter: 'nitrate', received: '3 mg/L', why, units: ['mg/L'], bases: ['as N', 'as NO3'] },
    })),
  ],
  'sample-of-other': [{ sample: 'S-01', of: 'C-05', told: 'C-06' }],
  'result-before-sample': [{ sample: 'S-01', takenAtMs: at(14, 12), atMs: at(14, 11) }],
  'result-contradicts': [
    { sample: 'S-01', parameter: 'silver', kept: '0.2 mg/L', told: '0.3 mg/L', ref: 'skerry 54' },
    { sample: 'S-01', parameter: 'silver', kept: '0.2 mg/L', told: '0.3 mg/L', ref: null },
  ],
  'sample-waits': [
    { place: 'C-05', samples: ['S-01'] },
    { place: 'C-05', samples: ['S-01', 'S-02'] },
  ],
  'hold-undecided': [
    {
      ...{ sample: 'S-01', parameters: ['silver'], stores: ['C-05', 'C-06'], conditional: ['R2'] },
      ...{ massMg: litres(41), u95Mg: litres(1), mgPerL: 997_800 },
    },
    {
      ...{ sample: 'S-01', parameters: ['silver'], stores: [], conditional: ['R2'] },
      ...{ massMg: 0, u95Mg: 0, mgPerL: 997_800 },
    },
  ],
  'hold-not-proposed': [{ store: 'C-02', proposed: ['C-05', 'C-06'] }],
  'nothing-touched': [{ sample: 'S-01' }],
  'hold-ended': [{ hold: 'Q-01' }],
  'not-on-hold': [
    { hold: 'Q-01', store: 'C-02', stores: ['C-05'] },
    { hold: 'Q-01', store: 'C-02', stores: [] },
  ],
  'medics-code': [{ hold: 'Q-01' }],
  'reckon-unknown': [
    { what: 'transfr', nearest: ['transfer'], all: ['transfer', 'mix'] },
    { what: 'zzz', nearest: [], all: ['transfer', 'mix'] },
  ],
  'reckon-input-missing': [
    { calculator: 'transfer', inputs: ['volume', 'bore'], hasBook: false },
    { calculator: 'transfer', inputs: ['bore'], hasBook: true },
  ],
  'reckon-field-unknown': [
    { field: 'boar', calculator: 'transfer', nearest: ['bore'], known: ['bore', 'length'] },
    { field: 'zzz', calculator: 'transfer', nearest: [], known: ['bore', 'length'] },
  ],
  'reckon-not-positive': [
    { input: 'bore', received: '0mm', wanted: 'above' },
    { input: 'roughness', received: '-1um', wanted: 'from' },
  ],
  'reckon-too-large': [{ input: 'bypass', received: '3', most: 1, unit: '' }],
  'reckon-choice': [{ field: 'receiver', received: 'bucket', choices: ['shell', 'bag', 'outside'] }],
  'reckon-needs-book': [{ field: 'store' }],
  'reckon-outside-range': [
    { quantity: 'temperature of the water', value: 41, unit: '°C', low: 0, high: 40, source: 'tanaka-2001' },
    { quantity: 'flow', value: -1, unit: 'm³/s', low: 0, high: null, source: 'white-fluid' },
  ],
  'reckon-refused': [
    { rule: 'over-rating', wouldKPa: 120, ratingKPa: 100, what: 'the line' },
    { rule: 'rating-missing', what: 'R2' },
    { rule: 'charge-too-high', endKPa: 405.4, ratingKPa: 201.2, safeBottleKPa: 265, fallKPa: 63 },
    { rule: 'charge-too-high', endKPa: 405.4, ratingKPa: 201.2, safeBottleKPa: null, fallKPa: null },
    { rule: 'ullage-missing' },
    { rule: 'power-not-told' },
    { rule: 'loss-not-told' },
    { rule: 'would-boil', endC: 95, boilsAtC: 89.9, cabinKPa: 70 },
    { rule: 'above-maximum', wantedMgPerL: 4, maximumMgPerL: 0.4 },
    { rule: 'coil-not-told', missing: ['bypass'] },
    { rule: 'unequal-lists', list: 'temperature', count: 1, volumes: 2 },
  ],
  'not-in-book': [
    { what: 'store', name: 'C-99', nearest: ['C-09', 'C-19'] },
    { what: 'store', name: 'X', nearest: [] },
    { what: 'entry', name: '9999', nearest: [] },
    { what: 'port', name: 'tap', nearest: [] },
  ],
  'book-not-begun': [{ what: 'outpost file' }, { what: 'opening' }],
  'intention-refused': [
    { rule: 'hold', from: 'C-07', to: 'drink', hold: 'Q-01', reason: 'plate count', sinceMs: at(14, 16, 30) },
    { rule: 'hold', from: 'C-07', to: 'C-08', hold: 'Q-01', reason: 'plate count' },
    { rule: 'biocide', from: 'V-1', to: 'C-03', comes: 'iodine', meets: 'silver', residue: 'residue' },
    { rule: 'biocide', from: 'V-1', to: 'C-03', comes: 'iodine', meets: 'silver', residue: 'content' },
    { rule: 'grade', from: 'FB', to: 'C-05', fromGrade: 'technical', toGrade: 'drinking' },
    { rule: 'grade', from: 'FB', to: 'drink', fromGrade: 'technical', toGrade: 'drink' },
    { rule: 'grade', from: 'X', to: 'drink', fromGrade: null, toGrade: 'drink' },
    {
      rule: 'grade',
      from: 'FB',
      to: 'C-05',
      fromGrade: 'technical',
      toGrade: 'drinking',
      relabelTo: 'technical',
      takesTwo: true,
    },
    {
      rule: 'grade',
      from: 'FB',
      to: 'C-05',
      fromGrade: 'technical',
      toGrade: 'drinking',
      relabelTo: 'technical',
    },
    { rule: 'conditional', from: 'R2', to: 'C-12', hold: 'Q-01', reason: 'plate count' },
    { rule: 'reserve-draw', from: 'R1', to: 'C-12', by: 'keeper', mayBeDrawnBy: 'chief' },
    { rule: 'reserve', from: 'FA', to: 'R2', release: 'none' },
    { rule: 'reserve', from: 'FA', to: 'R2', release: 'loader\u2019s certificate' },
    {
      rule: 'capacity',
      from: 'FA',
      to: 'C-16',
      massMg: litres(20.5),
      thereMg: litres(20.5),
      capacityMg: litres(22),
      mgPerL: 997_800,
    },
    { rule: 'remainder', from: 'FA', to: 'C-16', massMg: litres(20.5), usableMg: litres(3), mgPerL: 997_800 },
  ],
  'trend-places-clash': [{ first: 'store', second: 'point' }],
  'no-beds': [{}],
  'figures-contradict': [
    {
      of: 'conductivity',
      sample: 'S-7',
      place: 'product',
      measured: 120,
      expected: 255,
      u95: 29,
      unit: 'µS/cm',
      inU: -9.3,
      isWhole: true,
    },
    {
      of: 'hardness',
      sample: 'S-7',
      place: 'C-05',
      measured: 60,
      expected: 120,
      u95: 13,
      unit: 'mg/L',
      inU: -9,
      isWhole: false,
    },
  ],
  'no-condensate-expectation': [{ missing: 'norm of vapour' }, { missing: 'counter of a condenser' }],
  'second-needed': [{ act: 'relabel' }, { act: 'waiver' }, { act: 'treatment' }],
  'second-is-first': [{ office: 'keeper' }],
  'before-book': [{ happenedAtMs: at(1, 7), openingMs: at(1, 8) }],
  'in-the-future': [{ happenedAtMs: at(3, 7), nowMs: at(2, 8) }],
  'count-empty': [{}],
  'count-not-begun': [{}],
  'count-under-way': [{ begunMs: at(30, 9, 10), typed: 12 }],
  'count-far-off': [
    {
      store: 'C-07',
      readMg: litres(3),
      readU95Mg: litres(0.4),
      bookMg: litres(19.3),
      bookU95Mg: litres(0.5),
      mgPerL: 997_800,
    },
  ],
  'count-over-capacity': [{ store: 'C-07', massMg: litres(30), capacityMg: litres(22), mgPerL: 997_800 }],
  'count-needs-doubt': [{ store: 'FA', received: '120L' }],
  'count-of-another-day': [
    { day: 30, begunMs: at(30, 9, 10), nowMs: at(31, 10), isClosed: true },
    { day: 30, begunMs: at(30, 9, 10), nowMs: at(31, 10), isClosed: false },
  ],
  'day-closed': [{ day: 13 }],
  'nothing-to-undo': [{ by: 'keeper', withinMin: 15 }],
  'already-undone': [{ ref: 'skerry 34', by: 'skerry 40' }],
  'field-needed': [
    { field: 'amount', received: null, expected: 'an amount with its unit' },
    { field: 'to', received: 'C-01', expected: 'another place than it comes from' },
  ],
  'reading-over-capacity': [{ store: 'C-05', massMg: litres(214), capacityMg: litres(22), mgPerL: 997_800 }],
  'not-correctable': [{ kind: 'hookup', ref: 'corrie 248', entryNo: 'corrie:248' }],
  'cover-out': [
    { grade: 'drinking', q50: 0, freeL: 0.2, u95L: 0.7 },
    { grade: 'technical', q50: 0.4, freeL: 2, u95L: 2 },
  ],
  'source-unsaid': [{ to: 'C-03' }],
  'more-than-there': [
    { from: 'dispenser', massMg: litres(500), hasMg: litres(160), u95Mg: litres(3), mgPerL: 997_800 },
  ],
  'drink-large': [{ massMg: litres(5), mostMg: litres(2.5), mgPerL: 997_800 }],
  'reading-unusual': [
    { of: 'dispenser strokes', value: 99_999, unit: 'strokes', low: 280.4, high: 690.1, fits: null },
    { of: 'product meter', value: 69, unit: 'L', low: 4.11, high: 11.2, fits: 6.9 },
  ],
  'time-ahead': [{ happenedAtMs: at(70, 9), presentMs: at(60, 21), endMs: at(62, 0) }],
  'amount-nothing': [{ received: '0 L' }],
  'figure-not-whole': [{ received: '5.5 strokes', unit: 'strokes' }],
  'counter-below-last': [{ instrument: 'condensate totaliser', value: 400, last: 869 }],
  'day-line-kept': [
    { day: 13, ref: null },
    { day: 13, ref: 'skerry 53' },
  ],
  'opening-kept': [{ openingMs: at(1, 8) }],
  'name-taken': [{ what: 'store', name: 'C-05' }],
  'format-unknown': [{ file: 'a.txt', formats: ['field log', 'waterwright book export'] }],
  'line-not-taken': [{ reason: 'an export has no preview.' }],
  'many-entries': [{ entries: 248 }, { entries: 1 }],
  'book-not-empty': [{ entries: 248 }],
  'office-unknown': [{ office: 'cook', offices: ['keeper', 'medic'] }],
};
