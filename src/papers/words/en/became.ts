// English for what a store's water is from now on, after an entry that changed its grade or what it may be used for.
import type { StoreUse } from './store-answer.ts';

/** What an entry changed of a store. */
export interface Became {
  readonly store: string;
  readonly kept: boolean;
  readonly was: Pick<StoreUse, 'grade' | 'why'> | null;
  readonly is: Pick<StoreUse, 'grade' | 'why'> & { readonly hold: string | null };
}

/** The sentences; none where nothing changed that anybody has to know before using it. */
export function becameInWords({ store, kept, was, is }: Became): readonly string[] {
  const verb = kept ? 'is' : 'would be';
  const found: string[] = [];
  if (is.grade !== null && was?.grade !== is.grade) {
    const before = was?.grade == null ? '' : `; it ${kept ? 'was' : 'is'} ${was.grade}`;
    found.push(`${store} ${verb} ${is.grade} from now on${before}.`);
  }
  const fit = fits.get(is.why ?? '');
  if (fit !== undefined && was?.why !== is.why) {
    const hold = is.hold === null ? '' : ` (${is.hold})`;
    found.push(`${store} ${verb} ${fit}${hold} from now on.`);
  }
  return found;
}

/** Why water is not free, as a word on the store; that it is waste, its grade says. */
const fits: ReadonlyMap<string, string> = new Map([
  ['hold', 'on HOLD'],
  ['conditional', 'CONDITIONAL'],
  ['not released', 'NOT RELEASED'],
  ['release over', 'NOT RELEASED'],
  ['no limit set', 'NOT RELEASED'],
]);
