// Made-up biocides and lives of a store, for the texts.
import type { BiocideSheet, LifeSheet, SheetFigure } from '../../src/papers/index.ts';

const figure = (value: number, u95: number | null, unit: string): SheetFigure => ({
  ...{ value, u95, unit },
  because: { entries: ['r1', 'r2'], method: 'biocide', inputs: [] },
});

/** Two results, a rate, and a dose that may be given. */
export const fallingBiocide: BiocideSheet = {
  biocide: 'silver',
  results: [
    { ref: 'skerry 60', id: 'r1', stamp: 'Day 16 15:00 UTC', valueMgPerL: 0.19, below: false },
    { ref: 'skerry 90', id: 'r2', stamp: 'Day 40 10:00 UTC', valueMgPerL: 0.14, below: false },
  ],
  level: figure(0.1304, 0.031, 'mg/L'),
  levelIs: 'now',
  rate: figure(1.27, 0.61, '%/d'),
  wallLoss: figure(0.56, 0.32, 'mm/d'),
  wall: figure(4711, 1413, 'cm2'),
  ratedBy: 'own',
  ratedResults: 2,
  ratedStores: 0,
  noRate: null,
  leastMgPerL: 0.05,
  mostMgPerL: 0.4,
  ends: { q05: 92, q50: 122, q95: null },
  age: { days: 30.3, since: 'Day 16 10:00 UTC', by: 'dose', mostDays: 120, untilDay: 136, isOver: false },
  untilDay: 92,
  untilBy: 'forecast',
  redose: {
    volume: figure(4.08, 1.83, 'mL'),
    resulting: figure(0.2, 0.012, 'mg/L'),
    mostMgPerL: 0.5,
    assumesNothingLeft: false,
    cautions: [
      {
        signal: 'CAUTION',
        text: 'Biocide concentrate harms eyes and skin. Wear what the maker and the medical officer ask for.',
      },
    ],
  },
  noRedose: null,
  line: { line: 'dispenser feed', lastFlow: 'Day 46 21:00 UTC', days: 0.2, untilDay: 166, isOver: false },
};

/** Nothing is known but that it has stood too long. */
export const unknownBiocide: BiocideSheet = {
  ...fallingBiocide,
  results: [{ ref: 'skerry 60', id: 'r1', stamp: 'Day 16 15:00 UTC', valueMgPerL: 0.01, below: true }],
  level: null,
  levelIs: 'not known',
  rate: null,
  wallLoss: null,
  ratedBy: 'not known',
  ratedResults: 0,
  noRate: 'limits alone',
  ends: null,
  age: { days: 130.9, since: 'Day 1 08:00 UTC', by: 'opening', mostDays: 120, untilDay: 121, isOver: true },
  untilDay: null,
  untilBy: 'below least',
  redose: null,
  noRedose: 'no concentrate told',
  line: { line: 'dispenser feed', lastFlow: null, days: 130.9, untilDay: 121, isOver: true },
};

export const usedLife: LifeSheet = {
  fills: 46,
  empties: 45,
  days: 412.4,
  since: 'Day 3 09:00 UTC',
  sinceWhat: 'disinfected',
  lifeCycles: 50,
  lifeDays: null,
  verdict: 'near',
};
