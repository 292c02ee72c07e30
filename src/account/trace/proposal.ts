// Which stores a trace asks to be held: all that hold suspect water, the reserve for emergencies only.
import type { ContactTrace } from './contacts.ts';
import type { WaterHistory } from './step.ts';

export interface HoldProposal {
  /** Ids of the stores, in the order of the trace. */
  readonly hold: readonly string[];
  /** For emergency use only. */
  readonly conditional: readonly string[];
  /** All water in the stores to be held, and in the conditional ones. */
  readonly heldMg: number;
  readonly conditionalMg: number;
}

/**
 * The rule: a store aboard with a milligram or more of the suspect water waits, however diluted. Waste does not: nobody drinks it.
 * A reserve store is conditional, so that an emergency finds it, unless its own water was what was sampled.
 */
export function holdProposal({ stores }: Pick<WaterHistory, 'stores'>, trace: ContactTrace): HoldProposal {
  const hold: string[] = [];
  const conditional: string[] = [];
  let heldMg = 0;
  let conditionalMg = 0;
  for (const contact of trace.contacts) {
    const store = contact.kind === 'store' ? stores.get(contact.name) : undefined;
    if (store === undefined || !store.aboard || store.waste || contact.suspectMg === 0) continue;
    if (store.reserve && !contact.isSource) {
      conditional.push(contact.name);
      conditionalMg += contact.heldMg ?? 0;
    } else {
      hold.push(contact.name);
      heldMg += contact.heldMg ?? 0;
    }
  }
  return { hold, conditional, heldMg, conditionalMg };
}
