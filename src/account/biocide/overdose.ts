// Whether a dose makes more than the outpost allows: by what it was meant to make, or by how strong the concentrate is.
import type { Body } from '../../book/index.ts';
import { resultOfStock } from '../../ground/physics/index.ts';
import { contentOf } from '../flow.ts';
import type { Fold } from '../fold.ts';
import { biocideLimits } from './limits-of-biocide.ts';

/** What is too much, and how it is known: told as wanted, or reckoned from the volume. */
export interface Overdose {
  readonly biocide: string;
  readonly maximumMgPerL: number;
  readonly wantedMgPerL: number | null;
  readonly resultMgPerL: number | null;
  /** What was in the water before; null where nobody knows, and then the result is the least that it can be. */
  readonly presentMgPerL: number | null;
}

const L_PER_M3 = 1000;
const MG_PER_L_OF_KG_PER_M3 = 1000;

/**
 * Null where nothing speaks against it, where the file names no maximum, and where neither target nor strength is told.
 * @param into the store, with its water as it stands before the dose, and the biocide in it where that is known
 */
export function overdoseOf(
  fold: Fold,
  { biocide, doseEach, targetMgPerL }: Body<'dose'>,
  into: { readonly store: string; readonly presentMgPerL: number | null },
): Overdose | null {
  const maximumMgPerL = biocideLimits(fold.index, biocide, null).doseMostMgPerL;
  if (maximumMgPerL === null) return null;
  const { presentMgPerL } = into;
  const of = { biocide, maximumMgPerL, presentMgPerL };
  if (targetMgPerL !== undefined && targetMgPerL > maximumMgPerL)
    return { ...of, wantedMgPerL: targetMgPerL, resultMgPerL: null };
  const strength = fold.index.biocides.get(biocide)?.concentrateMgPerL;
  const state = fold.stores.get(into.store);
  if (strength === undefined || state === undefined) return null;
  const { resultKgPerM3 } = resultOfStock({
    water: {
      volumeM3: Math.max(0, contentOf(fold, state).massMg) / fold.mgPerL / L_PER_M3,
      concentrationKgPerM3: (presentMgPerL ?? 0) / MG_PER_L_OF_KG_PER_M3,
    },
    stockVolumeM3: doseEach.massMg / fold.mgPerL / L_PER_M3,
    stockKgPerM3: strength / MG_PER_L_OF_KG_PER_M3,
    greatestKgPerM3: null,
  });
  const resultMgPerL = resultKgPerM3 * MG_PER_L_OF_KG_PER_M3;
  return resultMgPerL <= maximumMgPerL ? null : { ...of, wantedMgPerL: null, resultMgPerL };
}
