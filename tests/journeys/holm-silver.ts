// Holm with a silver kit, limits and lives of containers, and a recorder of its standing water.
import {
  type BiocideState,
  biocideStates,
  type Storage,
  StorageRecorder,
  storageFindings,
} from '../../src/account/index.ts';
import { HOLM } from './holm.ts';
import { holmOpening, Told } from './told.ts';

const KIT =
  '  - { id: silver-kit, measures: quality, quantity: silver, unit: mg/L, random: { absolute: 0.005 }, reading: spot, detectionLimit: 0.01 }';
const LIMITS = `limits:
  - { id: silver dose most, quantity: silver dose, unit: mg/L, atMost: 0.5, status: policy, basis: outpost policy }
  - { id: biocide valid, quantity: biocide age, unit: days, atMost: 120, status: policy, basis: outpost policy }
`;

/** 5000 cm² for 20 L are 25 m² for a cubic metre; five fillings or 400 days are a life. */
export const HOLM_SILVER = HOLM.replace(/ {2}- \{ id: silver-kit, .*/, KIT)
  .replace(
    'ratingOverCabinKPa: 70 }',
    'ratingOverCabinKPa: 70, wettedAreaCm2: 5000, lifeCycles: 5, lifeDays: 400 }',
  )
  .replace(
    '{ id: silver, neverMeets: [iodine] }',
    '{ id: silver, neverMeets: [iodine], concentrateMgPerL: 400, concentrateDoubtMgPerL: 8 }',
  )
  .replace('biocide: silver, mayFlowInto', 'biocide: silver, biocideMgPerL: 0.2, mayFlowInto')
  .replace('limits:\n', LIMITS);

/** A fold of it that writes down what stands; `opening` begins it. */
export class ToldStorage extends Told {
  readonly #recorder = new StorageRecorder();

  constructor(outpost = HOLM_SILVER) {
    super(outpost);
    this.fold.watcher = this.#recorder.watcher;
  }

  storage(): Storage {
    return this.#recorder.storage(this.fold);
  }

  states(): readonly BiocideState[] {
    const { index } = this.fold;
    const position = this.position();
    const stores = position.stores.map(({ facts, grade }) => {
      const biocide = index.grades.get(grade ?? '')?.biocide ?? 'none';
      const capacityL = facts.capacityMg / position.mgPerL;
      return { id: facts.id, kind: facts.kind, capacityL, biocide: biocide === 'none' ? null : biocide };
    });
    return biocideStates(this.storage(), stores, { index, atMs: position.atMs });
  }

  state(store: string): BiocideState {
    const found = this.states().find((each) => each.store === store);
    if (found === undefined) throw new Error(`${store} has no biocide`);
    return found;
  }

  storageFindings(code: string) {
    const { index, atMs } = this.position();
    return storageFindings(this.storage(), this.states(), { index, atMs }).filter(
      (finding) => finding.code === code,
    );
  }

  /** A sample of the contents and its result, which comes two days later. */
  result(store: string, valueMgPerL: number, { day, below = false }: { day: number; below?: boolean }): this {
    const sample = `S-${store}-${day}`;
    this.goTo(day).tell('sample', { store, sample, tests: ['silver'] });
    const value = { parameter: 'silver', value: valueMgPerL, unit: 'mg/L', ...(below && { below }) };
    this.goTo(day + 2).tell('result', { sample, values: [value] });
    return this;
  }
}

export function holmSilver(outpost?: string): ToldStorage {
  const told = new ToldStorage(outpost);
  told.tell('opening', holmOpening());
  return told;
}
