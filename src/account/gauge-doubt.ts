// What a reading of a content is worth: the part of its doubt that is new, and the errors that it repeats from reading to reading.
import type { Amount } from '../book/index.ts';
import type { Instrument, Store } from '../outpost/index.ts';
import { type Fold, MG_PER_KG } from './fold.ts';

/** An error that a reading shares with others: its place in the estimator, and how many kilograms one unit of it makes. */
export interface SharedError {
  readonly place: number;
  readonly weight: number;
}

export interface GaugeDoubt {
  /** One standard deviation of what is new in this reading, in milligrams. */
  readonly uMg: number;
  readonly shared: readonly SharedError[];
}

/** Doubt of a content reading of which nothing at all is told, one standard deviation. Ours, no source. */
const UNTOLD_U_L = 0.2;

/**
 * Doubt of one reading. What the entry declares is the doubt of this reading, all parts together: the shared part is taken out
 * of it, but never more than leaves half of it as new.
 */
export function gaugeDoubt(
  fold: Fold,
  store: string,
  instrument: Instrument | undefined,
  amount: Amount,
): GaugeDoubt {
  const { unitMg, absoluteMg, relativeMg, sharedMg, statedMg } = partsOf(fold, store, instrument, amount);
  const calibration = instrument?.calibration ?? {};
  const newMg = Math.sqrt(Math.max(statedMg * statedMg - sharedMg * sharedMg, (statedMg * statedMg) / 4));
  // What is declared is all there is: the shared part has no more of it than the new part leaves.
  const leftMg = Math.sqrt(Math.max(0, statedMg * statedMg - newMg * newMg));
  const scale = sharedMg > 0 ? Math.min(1, leftMg / sharedMg) : 0;
  const shared: SharedError[] = [];
  if (instrument !== undefined && calibration.absolute !== undefined && absoluteMg > 0) {
    const { place } = fold.error('gauge', instrument.id, calibration.absolute);
    shared.push({ place, weight: (scale * unitMg) / MG_PER_KG });
  }
  if (relativeMg > 0)
    shared.push({ place: fold.calibrationOf(instrument), weight: (scale * amount.massMg) / MG_PER_KG });
  const uMg = Math.round(newMg);
  return { uMg, shared };
}

/** The instrument that the outpost file names for a store's content; a meter of what flows through it says nothing of that. */
export function gaugeOfStore(fold: Fold, store: string): Instrument | undefined {
  const gauge = fold.index.instruments.get(fold.index.stores.get(store)?.gauge ?? '');
  return gauge?.measures === 'content' ? gauge : undefined;
}

/** Doubt of one reading of a content by the store's own gauge, all parts together, one standard deviation in milligrams. */
export function readingDoubtMg(fold: Fold, store: string, amount: Amount): number {
  return Math.round(partsOf(fold, store, gaugeOfStore(fold, store), amount).statedMg);
}

/** The parts of a reading's doubt in milligrams: one unit of the instrument, its calibration, and all that is stated. */
function partsOf(fold: Fold, store: string, instrument: Instrument | undefined, amount: Amount) {
  const { massMg } = amount;
  const unitMg =
    instrument === undefined
      ? fold.mgPerL
      : mgPerUnit(fold, fold.index.stores.get(store), instrument, massMg);
  const calibration = instrument?.calibration ?? {};
  const absoluteMg = (calibration.absolute ?? 0) * unitMg;
  const relativeMg = (calibration.relative ?? 0) * massMg;
  const sharedMg = Math.sqrt(absoluteMg * absoluteMg + relativeMg * relativeMg);
  const statedMg = amount.uMg ?? statedOf(fold, instrument, { unitMg, sharedMg, massMg });
  return { unitMg, absoluteMg, relativeMg, sharedMg, statedMg };
}

function statedOf(
  fold: Fold,
  instrument: Instrument | undefined,
  of: { unitMg: number; sharedMg: number; massMg: number },
): number {
  if (instrument?.statedDoubt !== undefined) return instrument.statedDoubt * of.unitMg;
  const random = instrument?.random;
  const absoluteMg = (random?.absolute ?? 0) * of.unitMg;
  const relativeMg = (random?.relative ?? 0) * of.massMg;
  const allMg = Math.sqrt(absoluteMg * absoluteMg + relativeMg * relativeMg + of.sharedMg * of.sharedMg);
  return allMg > 0 ? allMg : UNTOLD_U_L * fold.mgPerL;
}

/** Milligrams in one unit of the instrument at this content; a depth by the slope of the store's own table. */
function mgPerUnit(fold: Fold, store: Store | undefined, instrument: Instrument, massMg: number): number {
  if (instrument.unit === 'kg') return MG_PER_KG;
  if (instrument.unit !== 'mm') return fold.mgPerL;
  const rows = store?.gaugeTable ?? [];
  const volumeL = massMg / fold.mgPerL;
  const above = rows.findIndex((row, k) => k > 0 && row.volumeL >= volumeL);
  const high = rows[above < 0 ? rows.length - 1 : above];
  const low = rows[(above < 0 ? rows.length - 1 : above) - 1];
  if (high === undefined || low === undefined) return 0;
  return ((high.volumeL - low.volumeL) / (high.depthMm - low.depthMm)) * fold.mgPerL;
}
