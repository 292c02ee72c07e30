// The stores of a position as the account of biocides has to know them.
import {
  type BiocideState,
  biocideStates,
  type Position,
  type Storage,
  type StorePosition,
} from '../../account/index.ts';

/** States of all stores aboard that have a biocide, by store. */
export function standingStores(position: Position, storage: Storage): ReadonlyMap<string, BiocideState> {
  const stores = position.stores.map((store) => ({
    id: store.facts.id,
    kind: store.facts.kind,
    capacityL: store.facts.capacityMg / position.mgPerL,
    biocide: biocideOfGrade(position, store),
  }));
  const states = biocideStates(storage, stores, { index: position.index, atMs: position.atMs });
  return new Map(states.map((state) => [state.store, state]));
}

/** The biocide that water of its grade is kept with; null where the grade has none or is not known. */
function biocideOfGrade({ index }: Position, { grade }: StorePosition): string | null {
  const biocide = grade === null ? 'none' : (index.grades.get(grade)?.biocide ?? 'none');
  return biocide === 'none' ? null : biocide;
}
