// Table of what comes with each finding about samples, results and holds, for the test of its words.
import type { FindingData } from '../../src/ground/units/index.ts';
import type { DeskFindingCode } from '../../src/papers/index.ts';

const at = (day: number, hour: number): number => Date.UTC(2147, 2, day, hour);
const litres = (volume: number): number => Math.round(volume * 997_800);

export const qualityData = {
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
} as const satisfies Partial<Readonly<Record<DeskFindingCode, readonly FindingData[]>>>;
