// Every finding of the account and every refusal of the desk has four whole sentences, for the data that comes with it.
import { describe, expect, test } from 'vitest';
import { qualityData } from '../../../../tests/papers/quality-data.ts';
import { questionData } from '../../../../tests/papers/question-data.ts';
import type { AccountFindingCode } from '../../../account/index.ts';
import type { FindingData, Where } from '../../../ground/units/index.ts';
import type { DeskFindingCode } from '../desk-codes.ts';
import type { Sentences, WordsContext } from '../shape.ts';
import { accountWords } from './account.ts';
import { deskWords } from './desk.ts';
import { englishTables, englishWords } from './index.ts';

const context: WordsContext = {
  dayRule: { dayOneUtcMs: Date.UTC(2147, 2, 1), lineMinuteOfDay: 1260 },
  mgPerL: null,
};
const at = (day: number, hour: number, minute = 0): number => Date.UTC(2147, 2, day, hour, minute);
/** What stands in the data of every finding about an entry. */
const of = { ref: 'E0034', entryNo: 'skerry:35', kind: 'movement', mgPerL: 997_800 };
const litres = (volume: number): number => Math.round(volume * 997_800);

const account: Readonly<Record<AccountFindingCode, readonly FindingData[]>> = {
  ...questionData,
  'store-unknown': [
    { ...of, name: 'C-99', nearest: [] },
    { ...of, name: 'C 07', nearest: ['C-07', 'C-08'] },
  ],
  'port-unknown': [{ ...of, port: 'tap' }],
  'instrument-unknown': [{ ...of, name: 'flow-9' }],
  'before-opening': [{ ...of, openingMs: at(1, 8) }],
  'opening-missing': [{}],
  'duplicate-proposed': [
    {
      ...of,
      ref: 'E0035',
      entryNo: 'skerry:36',
      reason: 'clock apart',
      massMg: litres(20.5),
      from: 'FA',
      to: 'C-16',
      atMs: at(9, 14, 46),
      firstAtMs: at(9, 9, 16),
      firstRef: 'E0034',
      firstEntryNo: 'skerry:35',
      apartMin: 330,
      wouldHoldMg: litres(41),
      capacityMg: litres(22),
    },
    {
      ...of,
      reason: 'double tap',
      massMg: litres(0.2),
      from: 'dispenser',
      to: 'people',
      atMs: at(9, 9, 16),
      firstAtMs: at(9, 9, 15),
      firstRef: 'skerry 40',
      firstEntryNo: 'skerry:40',
      apartMin: 1,
      wouldHoldMg: null,
      capacityMg: null,
    },
    {
      ...of,
      reason: 'another source',
      massMg: litres(5),
      from: 'FA',
      to: 'C-16',
      atMs: at(9, 9, 36),
      firstAtMs: at(9, 9, 16),
      firstRef: 'E0034',
      firstEntryNo: 'skerry:35',
      apartMin: 20,
      wouldHoldMg: null,
      capacityMg: null,
    },
  ],
  'over-capacity': [{ ...of, massMg: litres(41), u95Mg: litres(0.5), capacityMg: litres(22) }],
  'stands-over-capacity': [
    { massMg: litres(188), u95Mg: litres(4), capacityMg: litres(22), mgPerL: 997_800 },
  ],
  'negative-stock': [{ massMg: litres(-1.2), u95Mg: litres(0.6), mgPerL: 997_800 }],
  'never-weighed': [{ ...of, u95Mg: litres(5), capacityMg: litres(22) }],
  'reading-far-off': [
    { ...of, readMg: litres(10.1), expectedMg: litres(20.3), u95Mg: litres(0.8), how: 'weighed' },
  ],
  'labels-swapped': [
    {
      ...of,
      other: 'C-07',
      otherRef: 'E0033',
      otherEntryNo: 'skerry:34',
      readMg: litres(19.9),
      expectedMg: litres(18),
      otherReadMg: litres(18.1),
      otherExpectedMg: litres(20),
    },
  ],
  'opening-off': ['opening', 'loader\u2019s certificate', 'none'].flatMap((toldBy) =>
    [
      { offMg: litres(-5.1), perDayMg: litres(0.1) },
      { offMg: litres(-5.1), perDayMg: null },
      { offMg: litres(5.1), perDayMg: litres(0.1) },
    ].map((off) => ({
      ...of,
      ...off,
      toldBy,
      toldMg: litres(150),
      toldAtMs: at(0, 21),
      u95Mg: litres(2.8),
      days: 55,
      how: 'gauged',
    })),
  ),
  'air-does-not-close': [
    { ...of, offMg: litres(-1.5), u95Mg: litres(0.3), percent: 50.3 },
    { ...of, offMg: litres(1.5), u95Mg: litres(0.3), percent: 50 },
  ],
  'means-disagree': [
    { ...of, saidMg: litres(18.5), otherMg: litres(17.1), means: 'weight', u95Mg: litres(0.5) },
  ],
  'doubts-do-not-fit': ['instrument', 'way', 'assumption'].flatMap((kind) =>
    [1.73, 0.29].map((factor) => ({ of: 'declared empty', kind, readings: 24, factor })),
  ),
  'reading-before-calibration': [{ ...of, instrument: 'balance', calibratedOn: '2147-01-05' }],
  'counter-gap': [
    { ...of, instrument: 'dispenser strokes', massMg: litres(3.1), u95Mg: litres(0.9) },
    { ...of, instrument: 'dispenser strokes', massMg: null, u95Mg: 0 },
  ],
  'reading-skipped': [{ ...of, kind: 'weigh' }],
  'count-missing': [{ ...of, instrument: 'dispenser strokes' }],
  'counter-backwards': [{ ...of, instrument: 'condensate totaliser', last: 869, value: 400, unit: 'L' }],
  'counter-leaps': [{ ...of, instrument: 'product meter', massMg: litres(100), mostMg: litres(30) }],
  'drinks-exceed-counter': [
    { ...of, instrument: 'dispenser strokes', singleMg: litres(5.2), countedMg: litres(5) },
  ],
  'port-empty': [{ ...of, port: 'dispenser feed' }],
  'unmetered-inflow': [{ ...of, unit: 'condenser', massMg: litres(1.2) }],
  'legs-differ': [{ ...of, givenMg: litres(78.8), gotMg: litres(78) }],
  'run-unknown': [{ ...of, run: 'T-12' }],
  'tank-not-run-dry': [
    { ...of, bookMg: litres(11), remainderMg: litres(6) },
    { ...of, bookMg: null, remainderMg: litres(6) },
  ],
  'grade-mismatch': [{ ...of, said: 'technical', believed: 'drinking' }],
  'grade-may-not-flow': [
    { ...of, from: 'FB', to: 'C-05', fromGrade: 'technical', toGrade: 'drinking', happened: null },
    { ...of, from: 'FB', to: 'C-05', fromGrade: 'technical', toGrade: 'drinking', happened: 'wrong hose' },
  ],
  'grade-went-up': [{ ...of, fromGrade: 'waste', toGrade: 'drinking' }],
  'biocides-meet': [
    { ...of, from: 'V-1', to: 'C-03', comes: 'iodine', meets: 'silver', residue: 'residue', happened: null },
    {
      ...of,
      from: 'V-1',
      to: 'C-03',
      comes: 'iodine',
      meets: 'silver',
      residue: 'content',
      happened: 'a slip',
    },
  ],
  'reserve-unreleased': [
    { ...of, from: 'FA', to: 'R2', release: 'loader\u2019s certificate', happened: null },
    { ...of, from: 'C-01', to: 'R2', release: 'none', happened: 'told to' },
  ],
  'reserve-drawn': [
    { ...of, massMg: litres(1.3), said: true },
    { ...of, massMg: litres(1.3), said: false },
    { ...of, massMg: litres(2.1), said: false, times: 9, day: 61 },
  ],
  'held-water-moved': [
    { ...of, from: 'C-05', to: 'C-06', hold: 'Q-01', reason: 'plate count', happened: null },
    { ...of, from: 'C-05', to: 'C-06', hold: 'rule skerry 7', reason: 'biocides-meet', happened: 'too late' },
  ],
  'conditional-water-moved': [
    { ...of, from: 'R2', to: 'C-12', hold: 'Q-01', reason: 'plate count', happened: null },
    { ...of, from: 'R2', to: 'C-12', hold: 'Q-01', reason: 'plate count', happened: 'no other left' },
  ],
  'hold-open': [
    {
      hold: 'Q-01',
      reason: 'plate count',
      sinceMs: at(14, 16, 30),
      stores: ['C-05', 'C-06'],
      massMg: litres(41),
      u95Mg: litres(0.8),
      mgPerL: 997_800,
    },
  ],
  'conditional-reserve': [
    {
      hold: 'Q-01',
      reason: 'plate count',
      sinceMs: at(14, 16, 30),
      stores: ['R2'],
      massMg: litres(179.5),
      u95Mg: litres(12),
      mgPerL: 997_800,
    },
  ],
  'reserve-below-floor': [
    { massMg: litres(280), u95Mg: litres(9), floorMg: litres(300), mgPerL: 997_800, stores: ['R1', 'R2'] },
  ],
  'waste-limit': [{ massMg: litres(197), u95Mg: litres(1), limitMg: litres(194), mgPerL: 997_800 }],
  'release-unproven': [
    { ...of, stores: ['C-05'], reasons: ['silver: below', 'plate count: missing', 'nothing-required'] },
  ],
  'release-over': [{ untilMs: 0, by: 'medic', release: 'own sample' }],
  'treatment-not-allowed': [
    { ...of, recipe: 'boil it', why: 'no such recipe', neverHeld: [] },
    { ...of, recipe: 'technical to drinking', why: 'not allowed', neverHeld: [] },
    { ...of, recipe: 'technical to drinking', why: 'other grade', neverHeld: [] },
    { ...of, recipe: 'technical to drinking', why: 'has held', neverHeld: ['iodine', 'raw'] },
  ],
  'hold-unknown': [{ ...of, hold: 'Q-9' }],
  'result-unanswered': [{ sample: 'SMP-03', stores: ['FA'], parameters: ['plate count', 'silver'] }],
  'limit-off': [{ rows: ['silver at most'], parameters: ['silver'] }],
  'parked-over': [{ hold: 'Q-1', owner: 'medic', untilMs: 0 }],
  'alone-for-two': [
    { ...of, act: 'relabel' },
    { ...of, act: 'waiver' },
    { ...of, act: 'treatment' },
  ],
  'refused-recorded': [{ ...of, what: 'pour V-1 into C-03', rule: 'biocides must not meet' }],
  'unit-doubt': [{ ...of, amount: '430', text: 'water load 430', by: 'planner' }],
  'unit-alarm': [
    {
      ...of,
      unit: 'R2 heater',
      state: 'alarm',
      reading: 1.6,
      readingName: 'temperature',
      readingUnit: '\u00B0C',
    },
    { ...of, unit: 'purifier', state: 'failed', reading: null, readingName: null, readingUnit: null },
  ],
  'late-in-closed-day': [{ ...of, day: 13, late: 'found on paper' }],
  'no-reading': [
    { lastMs: at(44, 21), days: 2 },
    { lastMs: at(44, 21), days: 1 },
  ],
};

const desk: Readonly<Record<DeskFindingCode, readonly FindingData[]>> = {
  ...qualityData,
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

const where: Where = { store: 'C-16', entry: 'an id' };

/** A sentence for people: whole, calm, and without a trace of the machine that made it. */
function expectSound(said: Sentences): void {
  for (const sentence of [said.text, said.remedy]) expect(sentence).toMatch(/[.?]$/);
  for (const part of Object.values(said)) {
    expect(part.trim()).not.toBe('');
    expect(part).not.toMatch(
      /undefined|NaN|null|\[object|Infinity|!|please|oops|fit to drink|\s{2}| \.|\.\.$/i,
    );
  }
}

type Sample = readonly [code: string, data: FindingData];
const flat = (samples: Readonly<Record<string, readonly FindingData[]>>): readonly Sample[] =>
  Object.entries(samples).flatMap(([code, list]) => list.map((data) => [code, data] as const));

describe('the account', () => {
  test.each(flat(account))('%s %#', (code, data) => {
    expectSound(accountWords[code as AccountFindingCode](data, where, context));
  });

  test.each(flat(account))('%s %# before the days are counted', (code, data) => {
    expectSound(accountWords[code as AccountFindingCode](data, where));
  });

  test('a copy by another clock: litres, times, the difference, what the store would hold, and that it waits', () => {
    const [first = {}] = account['duplicate-proposed'];
    const { text, remedy } = accountWords['duplicate-proposed'](first, where, context);
    expect(text.replaceAll('\u00A0', ' ')).toBe(
      '20.5 L from FA to C-16 seems to stand twice in the book, as E0034 and E0035: told by two sources whose clocks differ by +5:30 (Day 9 09:16 UTC and Day 9 14:46 UTC). With both, C-16 would hold 41.0 L against its capacity of 22.0 L. E0035 is left out of the position until somebody decides.',
    );
    expect(remedy).toContain('waterwright log decide skerry:35 skerry:36 merge.');
    expect(remedy).toContain('waterwright log decide skerry:35 skerry:36 both.');
  });

  const textOf = (code: 'opening-off' | 'doubts-do-not-fit' | 'counter-gap', k: number): string => {
    const { text, remedy } = accountWords[code](account[code][k] ?? {}, where, context);
    return `${text} ${remedy}`.replaceAll('\u00A0', ' ');
  };

  test('a slow loss is thought of only where water is missing, and over more than a few days', () => {
    const slow = 'A slow loss of 0.1 L a day since then would look the same.';
    expect([0, 1, 2].map((k) => textOf('opening-off', k).includes(slow))).toEqual([true, false, false]);
    expect(textOf('opening-off', 0)).toContain(
      'C-16 held 5.1 ± 2.8 L less than the opening said (150.0 L at Day 0 21:00 UTC)',
    );
    expect(textOf('opening-off', 3)).toContain('less than the loader\u2019s figure said');
    expect(textOf('opening-off', 6)).toContain('less than its first entry said');
  });

  test('what can be looked at is an instrument; a way of reading and an assumption are not', () => {
    const looked = [0, 1, 2, 3, 4, 5].map((k) => textOf('doubts-do-not-fit', k).includes('looked at.'));
    expect(looked).toEqual([true, false, false, false, false, false]);
    expect(textOf('doubts-do-not-fit', 1)).toContain('surer than their ± says');
    expect(textOf('doubts-do-not-fit', 2)).toContain('Give such a reading its own ±');
    expect(textOf('doubts-do-not-fit', 4)).toContain('norms of people');
  });

  test('a gap says what stands in, or that nothing does', () => {
    expect(textOf('counter-gap', 0)).toContain('Its daily mean stands in: 3.1 ± 0.9 L.');
    expect(textOf('counter-gap', 1)).toContain('Nothing stands in for it');
  });

  test('data that a room forgot is its fault, and is said at once', () => {
    expect(() => accountWords['over-capacity']({ massMg: 1 }, where, context)).toThrow(/ref/);
  });
});

describe('the desk', () => {
  test.each(flat(desk))('%s %#', (code, data) => {
    expectSound(deskWords[code as DeskFindingCode](data, where, context));
  });

  test.each(desk['intention-refused'].map((data) => [data['rule'], data] as const))(
    'a refusal by the rule %s says that nothing was written, and the way out',
    (_rule, data) => {
      const { text, remedy } = deskWords['intention-refused'](data, where, context);
      expect(text).toMatch(/^Refused: .*\. Nothing was written\.$/);
      expect(remedy).toContain('waterwright ');
      expect(remedy).toContain('--happened "REASON"');
    },
  );

  test('a rule without words is a fault of the program', () => {
    expect(() => deskWords['intention-refused']({ rule: 'moon' }, where, context)).toThrow(/moon/);
  });
});

test('no two tables share a code, so that a code has one meaning', () => {
  const owners = new Map<string, string[]>();
  for (const [room, table] of Object.entries(englishTables)) {
    for (const code of Object.keys(table)) owners.set(code, [...(owners.get(code) ?? []), room]);
  }
  expect([...owners].filter(([, rooms]) => rooms.length > 1)).toEqual([]);
  expect(englishWords.size).toBe(owners.size);
  expect(owners.size).toBeGreaterThan(150);
});
