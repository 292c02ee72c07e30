// What a gauging by gas injection is worth: seating and injection are new each time, the shell's error is the same each time.
import type { Amount } from '../book/index.ts';
import type { Fold } from './fold.ts';
import type { GaugeDoubt } from './gauge-doubt.ts';
import type { StoreState } from './store-state.ts';

/** Where the outpost file tells no parts for this tank, what the entry declares stands. */
export function injectionDoubt(fold: Fold, state: StoreState, amount: Pick<Amount, 'uMg'>): GaugeDoubt {
  const gauging = fold.index.stores.get(state.facts.id)?.gauging;
  const shared = state.gaugeOffset < 0 ? [] : [{ place: state.gaugeOffset, weight: 1 }];
  if (gauging === undefined) return { uMg: amount.uMg ?? 0, shared };
  const { bladderSeatingDoubtL: seating, injectionDoubtL: injection } = gauging;
  return { uMg: Math.round(Math.sqrt(seating * seating + injection * injection) * fold.mgPerL), shared };
}
