// Table of data of every finding of the account, as the account brings it.

import type { AccountFindingCode } from '../../src/account/index.ts';
import type { FindingData } from '../../src/ground/units/index.ts';
import { questionData } from './question-data.ts';

const at = (day: number, hour: number, minute = 0): number => Date.UTC(2147, 2, day, hour, minute);
/** What stands in the data of every finding about an entry. */
const of = { ref: 'E0034', entryNo: 'skerry:35', kind: 'movement', mgPerL: 997_800 };
const litres = (volume: number): number => Math.round(volume * 997_800);

const overdose = { biocide: 'silver', maximumMgPerL: 0.5, presentMgPerL: null, massMg: litres(0.1) };

export const accountData: Readonly<Record<AccountFindingCode, readonly FindingData[]>> = {
  ...questionData,
  'store-unknown': [
    { ...of, name: 'C-99', nearest: [] },
    { ...of, name: 'C 07', nearest: ['C-07', 'C-08'] },
  ],
  'dose-above-maximum': [
    { ...of, ...overdose, wantedMgPerL: 2, resultMgPerL: null, happened: 'the medic said so' },
    { ...of, ...overdose, wantedMgPerL: null, resultMgPerL: 1.9423, happened: null },
  ],
  'biocide-over-age': ['dose', 'fill', 'opening', 'delivery'].map((by) => ({
    ...{ biocide: 'silver', days: 131, mostDays: 120, sinceMs: at(1, 8), by },
  })),
  'line-stood-too-long': [true, false].map((flowed) => ({
    ...{ line: 'dispenser feed', kind: 'port', days: 131, mostDays: 120, sinceMs: at(1, 8), flowed },
  })),
  'container-life-near': [
    { fills: 46, days: 12, lifeCycles: 50, lifeDays: null, sinceMs: at(1, 8), since: 'first in the book' },
    { fills: 1, days: 350, lifeCycles: null, lifeDays: 365, sinceMs: at(1, 8), since: 'disinfected' },
  ],
  'container-life-over': [
    { fills: 51, days: 366, lifeCycles: 50, lifeDays: 365, sinceMs: at(1, 8), since: 'disinfected' },
  ],
  'taste-repeated': [{ ...of, source: 'dispenser cold', times: 2, withinDays: 14 }],
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
