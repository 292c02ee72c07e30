// Contents that are told for the first time: an opening, a store that came aboard.
import type { Amount, AnyEntry, Entry } from '../../book/index.ts';
import type { Fold } from '../fold.ts';
import { OVER_SHARE } from './contents.ts';
import { fittingReading } from './fitting.ts';
import { askGrade, gradeToCome } from './grades.ts';
import { askFigure } from './question.ts';

interface FirstTold {
  readonly store: string;
  readonly amount?: Amount | undefined;
  readonly capacityMg: number;
  readonly fillMg: number | null;
  readonly loadedMassMg?: number | undefined;
}

/** A loader weighs: litres and kilograms of one load agree by this part. Ours, no source. */
const LOADED_SHARE = 0.03;
/** A number that is a full store's but for its point is within this of the usual fill. Ours, no source. */
const FILL_SHARE = 0.05;

function askFirstTold(fold: Fold, entry: AnyEntry, told: FirstTold): void {
  const { amount, capacityMg, fillMg, loadedMassMg, store } = told;
  if (amount === undefined || amount.massMg === 0) return;
  const volumeL = amount.massMg / fold.mgPerL;
  const said = {
    code: 'reading-implausible',
    of: 'content',
    value: volumeL,
    unit: 'L',
    store,
    name: store,
  } as const;
  const kgPerL = fold.mgPerL / 1_000_000;
  const ask = (against: 'capacity' | 'loaded mass' | 'usual fill', low: number, high: number) => {
    const fit = fittingReading(volumeL, { kgPerL }, (value) => value >= low && value <= high);
    if (fit !== null || against !== 'usual fill')
      askFigure(fold, entry, { ...said, low, high, against, fit });
    return true;
  };
  if (loadedMassMg !== undefined && Math.abs(loadedMassMg - amount.massMg) > LOADED_SHARE * loadedMassMg) {
    const loadedL = loadedMassMg / fold.mgPerL;
    ask('loaded mass', loadedL * (1 - LOADED_SHARE), loadedL * (1 + LOADED_SHARE));
  } else if (amount.massMg > capacityMg * (1 + OVER_SHARE)) ask('capacity', 0, capacityMg / fold.mgPerL);
  else if (fillMg !== null && Math.abs(amount.massMg - fillMg) > FILL_SHARE * fillMg) {
    const fillL = fillMg / fold.mgPerL;
    // Part-used containers are usual: only a full one with its point elsewhere is asked about.
    const isPoint = [0.1, 10, 0.01, 100].some(
      (factor) => Math.abs(volumeL * factor - fillL) <= FILL_SHARE * fillL,
    );
    if (isPoint) ask('usual fill', fillL * (1 - FILL_SHARE), fillL * (1 + FILL_SHARE));
  }
}

export function askOpening(fold: Fold, entry: Entry<'opening'>): void {
  for (const told of entry.body.stores) {
    const facts = fold.stores.get(told.store)?.facts;
    if (facts !== undefined) askFirstTold(fold, entry, { ...facts, ...told });
    const believed = fold.index.stores.get(told.store)?.holds;
    askGrade(fold, entry, { store: told.store, said: told.grade, believed });
  }
}

export function askStoreAdded(fold: Fold, entry: AnyEntry, told: Entry<'store-added'>['body']): void {
  const written = fold.index.stores.get(told.store);
  const fillL = written?.fillL ?? told.fillL;
  askFirstTold(fold, entry, {
    ...{ store: told.store, amount: told.amount, loadedMassMg: told.loadedMassMg },
    capacityMg: (written?.capacityL ?? told.capacityL) * fold.mgPerL,
    fillMg: fillL === undefined ? null : fillL * fold.mgPerL,
  });
  askGrade(fold, entry, { store: told.store, said: told.grade, believed: gradeToCome(fold, told.store) });
}
