// What was believed of a content at a place of a history.
import type { AccountAt, Step, WaterHistory } from './step.ts';

/** As the last step before the place that touched the account left it; nothing where none did. */
export function heldBefore({ steps }: WaterHistory, before: number, account: AccountAt): number {
  for (let k = before - 1; k >= 0; k--) {
    const step = steps[k] as Step;
    if (step.what === 'told' && step.account === account) return step.massMg;
    if (step.what !== 'flow') continue;
    if (step.from === account) return step.fromHeldMg - step.massMg;
    if (step.to === account) return step.toHeldMg + step.massMg;
  }
  return 0;
}
