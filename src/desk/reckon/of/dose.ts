// How much of a stock solution brings water to a concentration, and what comes of it; above the outpost's maximum it is refused.
import { biocideLimits } from '../../../account/index.ts';
import { resultOfStock, stockForTarget } from '../../../ground/physics/index.ts';
import { type Answer, yes } from '../../answer.ts';
import { presentLevel } from '../../biocide/present-level.ts';
import type { Calculator, Reckoned, RefusedBy, Saying } from '../calculator.ts';
import { Filled, type FromBook, storeOf } from '../from-book.ts';
import type { QuantitySpec } from '../input-spec.ts';
import type { Input, Inputs } from '../inputs.ts';
import { L_PER_M3 } from '../si-factors.ts';

const concentration = (name: string, more: Partial<QuantitySpec> = {}): QuantitySpec => ({
  name,
  dimension: 'concentration',
  unit: 'mg/L',
  ...more,
});

export const dose: Calculator = {
  name: 'dose',
  inputs: [
    { name: 'store', of: 'store' },
    { name: 'volume', dimension: 'volume', unit: 'L', positive: true },
    concentration('present', { otherwise: { value: 0, u95: null, why: 'nothing-left' } }),
    concentration('wanted', { positive: true }),
    concentration('stock', { positive: true }),
    concentration('maximum', { positive: true, optional: true }),
  ],
  method: 'solutions',
  cautions: ['concentrate', 'slip-of-ten'],
  fill,
  refuse: aboveMaximum,
  reckon,
};

const KG_PER_M3 = 1 / 1000;

function aboveMaximum(inputs: Inputs): RefusedBy | null {
  const [wanted, maximum] = [inputs.number('wanted'), inputs.maybe('maximum')];
  if (maximum === null || wanted <= maximum) return null;
  return { rule: 'above-maximum', data: { wantedMgPerL: wanted, maximumMgPerL: maximum } };
}

/** The volume is decided once: what comes of it then hangs on what the water really was. */
function reckon(inputs: Inputs, first?: Reckoned): Reckoned {
  const maximum = inputs.maybe('maximum');
  const given = {
    water: {
      volumeM3: inputs.number('volume') / L_PER_M3,
      concentrationKgPerM3: KG_PER_M3 * inputs.number('present'),
    },
    stockKgPerM3: KG_PER_M3 * inputs.number('stock'),
    greatestKgPerM3: maximum === null ? null : KG_PER_M3 * maximum,
  };
  const needed = stockForTarget({ ...given, wantedKgPerM3: KG_PER_M3 * inputs.number('wanted') });
  const decidedML = first?.results[0]?.value;
  const dosed =
    decidedML === undefined ? needed : resultOfStock({ ...given, stockVolumeM3: decidedML / 1e6 });
  const sayings: Saying[] = maximum === null ? [{ key: 'no-maximum', data: {} }] : [];
  return {
    results: [
      { name: 'stock-volume', value: 1e6 * needed.stockVolumeM3, unit: 'mL' },
      { name: 'resulting', value: dosed.resultKgPerM3 / KG_PER_M3, unit: 'mg/L' },
      { name: 'dosed-mass', value: 1e6 * dosed.doseMassKg, unit: 'mg' },
      { name: 'volume-after', value: L_PER_M3 * dosed.volumeAfterM3, unit: 'L' },
    ],
    sayings,
  };
}

function fill(book: FromBook): Answer<readonly Input[]> {
  const filled = new Filled();
  const store = storeOf(book, 'store');
  if (!store.ok) return store;
  if (store.value !== null) {
    const { massMg, uMg, because, grade } = store.value;
    const { mgPerL, index } = book.position;
    filled.fromBook('volume', massMg / mgPerL, {
      unit: 'L',
      u: uMg / mgPerL,
      key: 'content',
      entries: because.slice(0, 3),
    });
    const biocide = biocideOf(book, grade);
    const limits = biocideLimits(index, biocide, grade);
    filled.fromFile('wanted', limits.targetMgPerL ?? undefined, { unit: 'mg/L', key: `grade ${grade}` });
    filled.fromFile('maximum', limits.doseMostMgPerL ?? undefined, { unit: 'mg/L', key: `${biocide} dose` });
    const { concentrateMgPerL, concentrateDoubtMgPerL } = index.biocides.get(biocide) ?? {};
    const key = `biocide ${biocide}`;
    filled.fromFile('stock', concentrateMgPerL, { unit: 'mg/L', u: concentrateDoubtMgPerL, key });
    fillPresent(filled, book);
  }
  return yes(filled.inputs);
}

function biocideOf({ position, biocide }: FromBook, grade: string | null): string {
  const ofGrade = grade === null ? undefined : position.index.grades.get(grade)?.biocide;
  return biocide?.biocide ?? ofGrade ?? 'none';
}

const PRESENT_KEYS = { now: 'level-now', 'as read': 'last-result', below: 'below-limit' } as const;

/** What is left in the water, where a result tells it. */
function fillPresent(filled: Filled, { position, biocide }: FromBook): void {
  const present = biocide === null ? null : presentLevel(position.index, biocide);
  if (present === null) return;
  const { mgPerL, u, entries, is } = present;
  filled.fromBook('present', mgPerL, { unit: 'mg/L', u, key: PRESENT_KEYS[is], entries });
}
