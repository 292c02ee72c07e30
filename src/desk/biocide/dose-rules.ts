// What speaks against a dose: more in the water afterwards than the outpost allows, told or reckoned.
import { type BiocideState, biocideLimits, type Fold } from '../../account/index.ts';
import type { Draft } from '../../book/index.ts';
import { resultOfStock } from '../../ground/physics/index.ts';
import type { Finding } from '../../ground/units/index.ts';
import { deskFinding } from '../desk-finding.ts';
import { contentOf } from '../log/movement-rules.ts';
import { presentLevel } from './present-level.ts';

type States = ReadonlyMap<string, BiocideState>;

const L_PER_M3 = 1000;
const MG_PER_L_PER_KG_PER_M3 = 1000;

/**
 * One refusal at most: a slip is one, however many stores it would go into.
 * @param states what is known of the water before the dose; without them it is taken as nothing, so that more is never refused
 *   than would be with them
 */
export function doseRules(fold: Fold, draft: Draft<'dose'>, states: States = new Map()): Finding[] {
  for (const store of draft.body.stores) {
    const found = ruleAgainst(fold, draft, { store, state: states.get(store) ?? null });
    if (found !== null) return [found];
  }
  return [];
}

interface Into {
  readonly store: string;
  readonly state: BiocideState | null;
}

function ruleAgainst(fold: Fold, { body }: Draft<'dose'>, into: Into): Finding | null {
  const { biocide, targetMgPerL } = body;
  const maximumMgPerL = biocideLimits(fold.index, biocide, null).doseMostMgPerL;
  if (maximumMgPerL === null) return null;
  const base = { rule: 'dose-maximum', to: into.store, biocide, maximumMgPerL };
  const told = targetMgPerL ?? null;
  if (told !== null && told > maximumMgPerL)
    return deskFinding('intention-refused', { ...base, wantedMgPerL: told });
  const made = madeBy(fold, body, into);
  if (made === null || made.resultMgPerL <= maximumMgPerL) return null;
  return deskFinding('intention-refused', {
    ...base,
    ...made,
    massMg: body.doseEach.massMg,
    mgPerL: fold.mgPerL,
  });
}

/** What the dose would make of the water; null where the file does not tell how strong the concentrate is. */
function madeBy(
  fold: Fold,
  { biocide, doseEach }: Draft<'dose'>['body'],
  { store, state }: Into,
): { readonly resultMgPerL: number; readonly presentMgPerL: number | null } | null {
  const strength = fold.index.biocides.get(biocide)?.concentrateMgPerL;
  if (strength === undefined) return null;
  const present = state === null ? null : presentLevel(fold.index, state);
  const volumeM3 = Math.max(0, contentOf(fold, store).massMg) / fold.mgPerL / L_PER_M3;
  const { resultKgPerM3 } = resultOfStock({
    water: { volumeM3, concentrationKgPerM3: (present?.mgPerL ?? 0) / MG_PER_L_PER_KG_PER_M3 },
    stockVolumeM3: doseEach.massMg / fold.mgPerL / L_PER_M3,
    stockKgPerM3: strength / MG_PER_L_PER_KG_PER_M3,
    greatestKgPerM3: null,
  });
  const resultMgPerL = resultKgPerM3 * MG_PER_L_PER_KG_PER_M3;
  return { resultMgPerL, presentMgPerL: present?.mgPerL ?? null };
}
