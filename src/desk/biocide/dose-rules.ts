// What speaks against a dose: more in the water afterwards than the outpost allows, told or reckoned.
import { type BiocideState, type Fold, overdoseOf } from '../../account/index.ts';
import type { Draft } from '../../book/index.ts';
import type { Finding } from '../../ground/units/index.ts';
import { deskFinding } from '../desk-finding.ts';
import { presentLevel } from './present-level.ts';

/**
 * One refusal at most: a slip is one, however many stores it would go into.
 * @param states what is known of the water before the dose; without them it is taken as nothing, so that no more is refused than
 *   with them
 */
export function doseRules(
  fold: Fold,
  { body }: Draft<'dose'>,
  states: ReadonlyMap<string, BiocideState> = new Map(),
): Finding[] {
  for (const store of body.stores) {
    const state = states.get(store);
    const present = state === undefined ? null : presentLevel(fold.index, state);
    const over = overdoseOf(fold, body, { store, presentMgPerL: present?.mgPerL ?? null });
    if (over === null) continue;
    const { massMg } = body.doseEach;
    const data = { rule: 'dose-maximum', to: store, ...over, massMg, mgPerL: fold.mgPerL };
    return [deskFinding('intention-refused', data)];
  }
  return [];
}
