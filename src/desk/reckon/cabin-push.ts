// What a push by gas asks for in every calculator: what the water goes into, the lowest rating, and what the cabin feels of it.
import { cabinChange, type Receiver } from '../../ground/physics/index.ts';
import type { RefusedBy, Result } from './calculator.ts';
import type { NameSpec } from './input-spec.ts';
import type { Inputs } from './inputs.ts';
import { PA_PER_KPA } from './si-factors.ts';

const RECEIVERS: ReadonlyMap<string, Receiver> = new Map([
  ['shell', 'shell inside'],
  ['bag', 'bag inside'],
  ['outside', 'outside'],
]);

export const RECEIVER: NameSpec = { name: 'receiver', of: 'choice', choices: [...RECEIVERS.keys()] };

/** A pressure above the lowest rating is refused; that none was given is for the answer to say. */
export function overRating(what: string): (inputs: Inputs) => RefusedBy | null {
  return (inputs) => {
    const [over, rating] = [inputs.number('over'), inputs.maybe('rating')];
    if (rating === null || over <= rating) return null;
    return { rule: 'over-rating', data: { wouldKPa: over, ratingKPa: rating, what } };
  };
}

/** Changes of the cabin's pressure: while it lasts, after venting, if all the gas came back. None where the cabin is not told. */
export function cabinResults(
  inputs: Inputs,
  push: { readonly cabinPa: number; readonly tankPa: number; readonly waterM3: number },
): readonly Result[] {
  const cabinM3 = inputs.maybe('cabin-volume');
  if (cabinM3 === null) return [];
  const receiver = RECEIVERS.get(inputs.choice('receiver') ?? 'shell') ?? 'shell inside';
  const gasFrom = inputs.choice('gas-from') === 'vehicle' ? 'vehicle' : 'cabin';
  const { whilePushingPa, afterVentingPa, allGasBackPa } = cabinChange({
    ...push,
    cabinM3,
    receiver,
    gasFrom,
  });
  const change = (name: string, value: number): Result => ({ name, value: value / PA_PER_KPA, unit: 'kPa' });
  return [
    change('cabin-while', whilePushingPa),
    change('cabin-after', afterVentingPa),
    change('cabin-all-back', allGasBackPa),
  ];
}
