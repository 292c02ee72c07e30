// One entry or more of every kind, as somebody of an invented outpost would make them.
import type { Kind } from '../../src/book/index.ts';

const MG_PER_L = 997_800;
const at = (day: number, hour: number, minute = 0): number => Date.UTC(2147, 2, day, hour, minute);
const litres = (value: number, uL?: number) => ({
  massMg: Math.round(value * MG_PER_L),
  raw: { value, unit: 'L', mgPerUnit: MG_PER_L },
  ...(uL !== undefined && { uMg: Math.round(uL * MG_PER_L) }),
});
const kilograms = (value: number) => ({
  massMg: Math.round(value * 1_000_000),
  raw: { value, unit: 'kg', mgPerUnit: 1_000_000 },
});
const strokes = (value: number) => ({
  massMg: Math.round(value * 0.025 * MG_PER_L),
  raw: { value, unit: 'strokes', mgPerUnit: 24_945 },
});
const targets = ['0f000000-0000-7000-8000-00000000abcd', '0f000000-0000-7000-8000-00000000dcba'] as const;
const flow = {
  startAtMs: at(7, 10),
  hose: 'H-1',
  flowMinutes: 15.8,
  pushOverCabinKPa: 50,
  method: 'flow meter',
  grade: 'drinking',
};

/** A medic who drank; no line may ever show it. */
export const HIDDEN_PERSON = 'medic-who-drank';

/** Bodies by kind. */
export const bodies: Readonly<Record<Kind, readonly unknown[]>> = {
  outpost: [{ text: 'format: waterwright outpost', reason: 'a new tank' }],
  opening: [
    {
      asOfMs: at(0, 21),
      dayOneMs: at(1, 0),
      peopleAboard: 4,
      stores: [
        { store: 'R1', amount: litres(172, 3), grade: 'drinking', how: 'gauged' },
        { store: 'C-05', amount: litres(0, 0.05), grade: null },
      ],
      ports: [{ port: 'dispenser feed', store: 'C-04' }],
      counters: [{ instrument: 'condensate', value: 862.4 }],
      service: [],
      visits: [{ visit: 'Dory 3', berthDay: 6, departDay: 51 }],
    },
  ],
  'day-line': [
    {
      day: 13,
      peopleAboard: 4,
      readings: [
        { instrument: 'condensate', value: 951.5 },
        { instrument: 'strokes', value: 455 },
        { instrument: 'humidity', value: null },
      ],
    },
    { day: 1, peopleAboard: 1, readings: [] },
  ],
  meter: [{ readings: [{ instrument: 'product', value: 4.11 }] }],
  movement: [
    {
      from: 'FA',
      to: 'C-05',
      amount: litres(20.5),
      ...flow,
      receiverWas: 'drinking',
      receiverWasEmptied: true,
    },
    { from: 'C-05', to: 'C-06', amount: kilograms(21.4) },
    {
      from: 'FA',
      to: 'C-05',
      amount: litres(20.5),
      hose: 'H-1',
      method: 'flow meter',
      alsoRead: [
        { amount: kilograms(20.1), method: 'weight before and after' },
        { amount: strokes(812), instrument: 'hand-pump' },
      ],
    },
    { from: 'dispenser', to: 'people', amount: strokes(8), use: 'drink', person: HIDDEN_PERSON },
    {
      from: 'C-05',
      to: 'people',
      amount: litres(1.2, 0.1),
      use: 'hygiene',
      person: HIDDEN_PERSON,
      instrument: 'jug',
    },
    { from: 'C-05', to: 'lost', amount: litres(0.75), use: 'spill-lost' },
    { from: 'FA', to: 'C-05', amount: litres(20.5), receiverWasEmptied: true, flowMinutes: 16 },
  ],
  push: [
    {
      from: [
        { store: 'W-01', amount: litres(19.7) },
        { store: 'W-02', amount: litres(19.7) },
      ],
      to: [{ store: 'FA', amount: litres(39.4) }],
      amount: litres(39.4, 0.3),
      hose: 'H-3',
      method: 'flow meter',
    },
  ],
  'run-start': [{ run: 'T-1', from: 'FA', to: 'C-11', planned: litres(20.5), hose: 'H-1' }],
  'run-pause': [
    { run: 'T-1', from: 'FA', to: 'C-11', amount: litres(11.4), lineContentMg: 299_340, hose: 'H-1' },
  ],
  'run-resume': [{ run: 'T-1' }],
  'run-finish': [{ run: 'T-1', amount: litres(9.1), method: 'flow meter' }],
  'source-change': [
    {
      counter: 'strokes',
      store: 'R1',
      sinceMs: at(58, 18, 23),
      amount: litres(1.3),
      reserve: true,
      how: 'strokes minus product',
    },
    { counter: 'strokes', store: 'C-01', sinceMs: at(58, 18, 23), amount: litres(1.3), reserve: false },
  ],
  hookup: [{ store: 'C-03', port: 'dispenser feed' }],
  weigh: [
    { store: 'C-08', amount: litres(20.1, 0.2), method: 'balance' },
    { store: 'C-09', amount: null },
  ],
  gauge: [{ store: 'R1', amount: litres(171, 1.6), instrument: 'dip stick' }],
  pvt: [
    {
      store: 'R2',
      amount: litres(173.6, 1.6),
      bookBeforeMg: 179_105_100,
      bottleVolumeL: 10,
      tankVolumeL: 180,
      bottleBeforeKPaAbs: 600,
      bottleAfterKPaAbs: 585,
      bottleBeforeC: 22.1,
      bottleAfterC: 22,
      tankBeforeKPaAbs: 101.28,
      tankAfterKPaAbs: 124.43,
      tankBeforeC: 21.8,
      tankAfterC: 21.9,
    },
  ],
  'declared-empty': [
    {
      store: 'C-04',
      port: 'dispenser feed',
      residual: litres(0.6, 0.2),
      counters: [{ instrument: 'strokes', value: 194 }],
    },
    { store: 'FA', flowStopped: false, bookMg: 10_975_800, counters: [] },
    { store: 'FB', flowStopped: true, residual: litres(6, 0.5), counters: [] },
  ],
  'declared-full': [{ store: 'W-01', amount: litres(20.3), port: 'waste receptacle' }],
  'stock-count': [
    {
      count: 'count 3',
      readings: [
        { store: 'C-01', amount: litres(20.4, 0.2), method: 'weighed' },
        { store: 'C-02', amount: null, method: 'weighed' },
      ],
    },
  ],
  sample: [
    {
      store: 'C-13',
      sample: 'S-03',
      tests: ['silver', 'plate count'],
      volumeMg: 249_450,
      drawnFrom: 'fill hose',
    },
    { store: 'C-13', sample: 'S-04', tests: [] },
  ],
  result: [
    {
      sample: 'S-03',
      store: 'C-13',
      values: [
        { parameter: 'silver', value: 0.03, unit: 'mg/L' },
        { parameter: 'TOC', value: 0.05, unit: 'mg/L', below: true },
      ],
      verdict: 'FAIL',
    },
    { sample: 'count at the tap', point: 'the tap', values: [] },
  ],
  hold: [
    {
      hold: 'Q-01',
      stores: ['C-05', 'C-06'],
      conditional: ['R2'],
      reason: 'plate count',
      also: 'R2 got the same water',
    },
    { hold: 'Q-02', stores: ['C-07'], conditional: [], reason: 'smell' },
  ],
  'result-set-aside': [
    { sample: 'SMP-03', parameter: 'silver', reason: 'bottle of another store' },
    { sample: 'SMP-04', reason: 'read twice' },
  ],
  parked: [{ hold: 'Q-01', owner: 'medic', untilDay: 30, reason: 'waits for the laboratory' }],
  'limits-chosen': [
    {
      sets: [
        {
          set: 'skerry rules',
          name: 'rules of Skerry',
          rows: [
            {
              id: 'silver at most',
              parameter: 'silver',
              basis: 'as itself',
              unit: 'mg/L',
              limit: { atMost: 0.1 },
              remembered: null,
              evidence: 'seen',
              exposure: 'any',
              source: 'invented for the tests',
              locator: 'row 1',
              cause: 'dosed twice',
              consequence: 'more than is allowed',
              firstAct: 'dilute',
              timeToActH: 24,
              requiredFor: ['drink'],
              neededOf: 'every store',
              degassed: false,
              noneIfBelow: null,
              duplicatesWithinShare: null,
              note: '',
              typed: null,
            },
          ],
        },
      ],
      exposureDays: 180,
      reason: 'the medic asks for it',
    },
  ],
  'limit-typed': [
    {
      set: 'skerry rules',
      row: 'silver at most',
      atMost: 0.1,
      unit: 'mg/L',
      basis: 'as itself',
      copy: 'edition 2, table 1',
    },
  ],
  release: [
    {
      hold: 'Q-01',
      stores: ['C-05'],
      values: [{ parameter: 'silver', value: 0.19, unit: 'mg/L' }],
      untilDay: 60,
    },
    { stores: ['C-06'], values: [] },
  ],
  waiver: [{ hold: 'Q-01', stores: ['C-05'], reason: 'no other water', untilDay: 20 }],
  downgrade: [
    { hold: 'Q-01', store: 'C-06', fromGrade: 'drinking', toGrade: 'technical', values: [] },
    { store: 'C-07', fromGrade: 'drinking', toGrade: 'waste', values: [] },
  ],
  treatment: [{ store: 'C-06', recipe: 'silver', toGrade: 'drinking', dose: litres(0.01) }],
  dose: [
    { stores: ['C-05', 'C-06'], biocide: 'silver', doseEach: litres(0.01), targetMgPerL: 0.2 },
    { stores: ['C-05'], biocide: 'silver', doseEach: litres(0.01) },
  ],
  relabel: [
    { store: 'FA', fromLabel: 'drinking', toGrade: 'waste', twoPersons: true, photo: 'P-1' },
    { store: 'FB', fromLabel: 'technical', toGrade: 'waste', twoPersons: false },
  ],
  taste: [
    { store: 'C-05', words: 'metallic', who: 'keeper', strength: 2 },
    { point: 'dispenser cold', words: 'smells of plastic' },
  ],
  check: [
    { what: 'labels', ok: true, items: ['FA circle'] },
    {
      what: 'leak',
      ok: false,
      visit: 'Dory 3',
      hose: 'H-1',
      items: [],
      pressureKPaAbs: 150,
      holdMinutes: 10,
      dropKPa: 0.3,
    },
  ],
  'store-added': [
    { store: 'C-20', kind: 'container', place: 'rack', capacityL: 22, usableRemainderL: 0.6, grade: null },
    {
      store: 'C-21',
      kind: 'container',
      capacityL: 22,
      usableRemainderL: 0.6,
      grade: 'drinking',
      amount: litres(20.5, 0.3),
    },
  ],
  roster: [
    { change: 'arrive', people: 3 },
    { change: 'depart', people: 1 },
  ],
  'visit-berth': [
    {
      visit: 'Dory 3',
      departDay: 51,
      peopleArrive: 1,
      stores: [
        {
          store: 'FA',
          kind: 'vehicleTank',
          capacityL: 200,
          usableRemainderL: 6,
          grade: 'drinking',
          amount: litres(198, 2),
        },
      ],
    },
    { visit: 'Skiff 1', peopleArrive: 0, stores: [] },
  ],
  'visit-slip': [{ visit: 'Dory 4', plannedDay: 52, newDay: 66 }],
  'visit-depart': [
    { visit: 'Dory 3', peopleDepart: 3, took: ['FA', 'FB'], declared: litres(388) },
    { visit: 'Skiff 1', peopleDepart: 0, took: [] },
  ],
  service: [
    { item: 'lead bed', what: 'bed changed', readings: [{ name: 'throughput', value: 857, unit: 'L' }] },
  ],
  'unit-condition': (['on', 'off', 'limited', 'failed', 'repaired', 'alarm'] as const).map((state) => ({
    unit: 'R2 heater',
    state,
    readings: state === 'alarm' ? [{ name: 'temperature', value: 1.6, unit: '\u00B0C' }] : [],
  })),
  'cabin-window': [{ beforeKPaAbs: 101.2, duringKPaAbs: 97.3, untilMs: at(32, 5, 30) }],
  'part-received': [{ part: 'filter', count: 3 }],
  'part-used': [{ part: 'tape', count: 1.5, unit: 'm' }],
  'part-counted': [{ part: 'filter', count: 0 }],
  'instrument-calibrated': [
    { instrument: 'strokes', calibrationRelative: 0.004, litresPerCount: 0.0247, how: '40 strokes weighed' },
    { instrument: 'balance', calibrationAbsolute: 0.05 },
    { instrument: 'condensate' },
  ],
  'instrument-replaced': [
    { instrument: 'strokes', serial: 'DS-32', endedAt: 212, startsAt: 0, litresPerCount: 0.025 },
    {
      instrument: 'condensate',
      serial: 'CT-03',
      endedAt: null,
      startsAt: 12.4,
      calibrationRelative: 0.01,
      reason: 'the display is blind',
    },
  ],
  note: [{ about: 'Dory 4', text: 'water load 430' }, { text: 'two\nlines' }],
  refused: [{ what: 'pour V-1 into C-03', rule: 'biocides must not meet' }],
  anomaly: [
    { anomaly: 'A-1', symptom: 'water on the wall', stores: ['C-05'] },
    { anomaly: 'A-2', symptom: 'a drip', stores: [] },
  ],
  explanation: [
    {
      anomaly: 'A-1',
      where: 'quick disconnect',
      cause: 'seal nicked',
      evidence: [targets[0]],
      rateMgPerDay: 548_790,
      recoveredMg: 997_800,
      expiresDay: 60,
    },
    { where: 'nowhere', evidence: [] },
  ],
  undo: [{ target: targets[0], reason: 'entered twice' }, { target: targets[1] }],
  correction: [{ target: targets[0], reason: 'misread', body: { store: 'C-08', amount: litres(20.2) } }],
  'duplicate-decision': [
    { first: targets[0], second: targets[1], decision: 'merge' },
    { first: targets[0], second: targets[1], decision: 'both are true' },
  ],
  'day-close': [
    { day: 31, what: 'month', figures: [{ name: 'reserve', massMg: 350_000_000, uMg: 6_000_000 }] },
    { day: 13, what: 'day', figures: [] },
  ],
  'waiting-line': [
    {
      key: 'ab'.repeat(32),
      file: 'april.csv',
      line: 9,
      shape: 'acts',
      headings: ['When', 'What', 'Store', 'Amount'],
      cells: ['2147-04-08 09:00', 'weighed', 'C-07', '20.8'],
      columns: ['time', 'act', 'store', 'amount'],
      decimals: ['open', 'open', 'open', 'point'],
      zoneMin: 0,
      reasons: [
        { code: 'cell-unit-missing', column: 4, data: { received: '20.8', store: 'C-07', 'as L': 20.8 } },
      ],
      readings: [{ received: '20.8', unit: 'L', massMg: 20_754_240, store: 'C-07', capacityMg: 21_951_600 }],
    },
  ],
  'waiting-line-settled': [
    { line: targets[0], how: 'taken', entries: [targets[1]] },
    { line: targets[0], how: 'dropped', entries: [], reason: 'a sum' },
  ],
  'code-set': [
    { office: 'medic', because: 'first' },
    { office: 'second', because: 'changed' },
    { office: 'keeper', because: 'lost' },
  ],
  'column-matching': [
    {
      signature: 'cd'.repeat(32),
      shape: 'days',
      columns: [
        { heading: 'Date', means: 'date' },
        { heading: 'Product (L)', means: 'product [L]' },
        { heading: 'initials', means: '' },
      ],
      zoneMin: 330,
    },
  ],
};

/** Drafts of every kind, as they would be typed; the book still has to read them. */
export function sampleDrafts(): readonly { readonly kind: Kind; readonly draft: unknown }[] {
  return (Object.entries(bodies) as [Kind, readonly unknown[]][]).flatMap(([kind, list]) =>
    list.map((body) => ({
      kind,
      draft: {
        id: '0f000000-0000-7000-8000-000000000001',
        version: 1,
        kind,
        happenedAtMs: at(7, 10, 16),
        happenedOffsetMin: 0,
        enteredAtMs: at(7, 10, 20),
        enteredOffsetMin: 0,
        by: 'keeper',
        body,
      },
    })),
  );
}
