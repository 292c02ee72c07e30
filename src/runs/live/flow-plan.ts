// What is known of a flow when its card has been filled: litres, minutes, the danger, the push.
import { type FilledCard, leafNames, spanFromSi } from '../../outpost/index.ts';
import type { FlowPlan } from './live.ts';

/**
 * The minutes of a card are those of its amount, so the doubt of the amount is in them; what is left is the doubt of the hose.
 * @returns null for a card without a flow, and where amount or minutes are not known: then nothing is predicted
 */
export function flowPlan({ card, flow, leaves }: FilledCard): FlowPlan | null {
  if (card.flow === null || flow === null) return null;
  const { planned, minutes } = flow;
  if (planned.is !== 'known' || minutes.is !== 'known') return null;
  if (!(planned.value > 0 && minutes.value > 0)) return null;
  const [whole, amount] = [minutes.u / minutes.value, planned.u / planned.value];
  const ofHose = minutes.value * Math.sqrt(Math.max(0, whole * whole - amount * amount));
  const pushed = leafNames(card.flow.minutes.term, card.named).includes('push.set');
  const push = pushed ? (leaves.get('push.set') ?? null) : null;
  return {
    planned: { value: planned.value, u: planned.u },
    minutes: { value: minutes.value, u: ofHose },
    danger: card.flow.danger,
    pushKPa: push === null ? null : spanFromSi(push.value, 'kPa over cabin'),
  };
}
