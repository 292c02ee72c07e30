// Water that goes where another label hangs: a labelled tank takes other water only after it was relabelled.
import type { Entry } from '../../book/index.ts';
import type { Fold } from '../fold.ts';
import { askStore } from './stores.ts';

export function askLabels(fold: Fold, entry: Entry<'push'>): void {
  const [first] = entry.body.from;
  const grade = fold.stores.get(first?.store ?? '')?.grade ?? null;
  for (const { store } of entry.body.to) {
    const target = fold.stores.get(store);
    if (grade === null || target?.grade == null || target.grade === grade || !isLabelled(fold, store))
      continue;
    const candidates = [...fold.stores.values()]
      .filter((other) => other.aboard && other.grade === grade && isLabelled(fold, other.facts.id))
      .map(({ facts }) => facts.id);
    askStore(fold, entry, { why: 'other label', store, other: grade, candidates });
  }
}

function isLabelled({ index }: Fold, store: string): boolean {
  return index.stores.get(store)?.labelled === true;
}
