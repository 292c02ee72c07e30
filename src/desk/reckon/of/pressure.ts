// What gas under pressure does: free air, the cabin's pressure, stored energy, the wall of a vessel, trapped water that warms.
import { freeAir, storedEnergyJ, thinWallStress, trappedWaterRisePa } from '../../../ground/physics/index.ts';
import { type Answer, yes } from '../../answer.ts';
import { cabinResults, overRating, RECEIVER } from '../cabin-push.ts';
import { CABIN, CABIN_VOLUME } from '../cabin-specs.ts';
import type { Calculator, Reckoned, Result, Saying } from '../calculator.ts';
import { Filled, type FromBook, fillCabin, storeOf } from '../from-book.ts';
import type { Input, Inputs } from '../inputs.ts';
import { J_PER_KJ, L_PER_M3, PA_PER_KPA } from '../si-factors.ts';

export const pressure: Calculator = {
  name: 'pressure',
  inputs: [
    { name: 'store', of: 'store' },
    { name: 'volume', dimension: 'volume', unit: 'L', positive: true },
    { name: 'over', dimension: 'pressure', unit: 'kPa', positive: true },
    CABIN,
    CABIN_VOLUME,
    RECEIVER,
    { name: 'gas-from', of: 'choice', choices: ['cabin', 'vehicle'] },
    { name: 'gas', dimension: 'volume', unit: 'L', positive: true, optional: true },
    { name: 'radius', dimension: 'length', unit: 'm', shownUnit: 'mm', positive: true, optional: true },
    {
      name: 'wall-thickness',
      dimension: 'length',
      unit: 'm',
      shownUnit: 'mm',
      positive: true,
      optional: true,
    },
    { name: 'warming', dimension: 'plain', unit: '', optional: true },
    { name: 'rating', dimension: 'pressure', unit: 'kPa', positive: true, optional: true },
  ],
  method: 'cabin-pressure',
  cautions: ['pressure', 'demating', 'trapped-water'],
  fill,
  refuse: overRating('the vessel'),
  reckon,
};

function reckon(inputs: Inputs): Reckoned {
  const cabinPa = PA_PER_KPA * inputs.number('cabin');
  const overPa = PA_PER_KPA * inputs.number('over');
  const waterM3 = inputs.number('volume') / L_PER_M3;
  const tankPa = cabinPa + overPa;
  const ullageM3 = (inputs.maybe('gas') ?? 0) / L_PER_M3;
  const air = freeAir({ waterM3, tankPa, cabinPa, ullageM3 });
  return {
    results: [
      { name: 'free-air', value: L_PER_M3 * air.totalM3, unit: 'L' },
      ...cabinResults(inputs, { cabinPa, tankPa, waterM3 }),
      {
        name: 'stored-energy',
        value: storedEnergyJ({ pressurePa: tankPa, aroundPa: cabinPa, gasM3: waterM3 + ullageM3 }) / J_PER_KJ,
        unit: 'kJ',
      },
      ...wallResults(inputs, overPa),
    ],
    sayings: sayings(inputs),
  };
}

function wallResults(inputs: Inputs, overPa: number): readonly Result[] {
  const [radiusM, wallM, warmingK] = [
    inputs.maybe('radius'),
    inputs.maybe('wall-thickness'),
    inputs.maybe('warming'),
  ];
  const results: Result[] = [];
  if (radiusM !== null && wallM !== null) {
    const { hoopPa, axialPa } = thinWallStress({ gaugePa: overPa, radiusM, wallM });
    results.push(
      { name: 'hoop-stress', value: hoopPa / 1e6, unit: 'MPa' },
      { name: 'axial-stress', value: axialPa / 1e6, unit: 'MPa' },
    );
  }
  if (warmingK !== null)
    results.push({ name: 'trapped-rise', value: trappedWaterRisePa(warmingK) / PA_PER_KPA, unit: 'kPa' });
  return results;
}

function sayings(inputs: Inputs): readonly Saying[] {
  const said: Saying[] = [];
  if (!inputs.has('rating')) said.push({ key: 'rating-not-given', data: {} });
  if (inputs.has('radius') && inputs.has('wall-thickness'))
    said.push({ key: 'stress-is-no-permission', data: {} });
  return said;
}

function fill(book: FromBook): Answer<readonly Input[]> {
  const filled = new Filled();
  fillCabin(filled, book);
  const { push } = book.position.index.outpost;
  if (push !== undefined)
    filled.fromFile('over', push.setOverCabinKPa, {
      unit: 'kPa',
      u: push.setDoubtKPa,
      key: 'the push',
    });
  const store = storeOf(book, 'store');
  if (!store.ok) return store;
  if (store.value !== null) {
    const { facts, massMg, uMg, because } = store.value;
    const { mgPerL } = book.position;
    const file = book.position.index.stores.get(facts.id);
    filled.fromBook('volume', (massMg - facts.remainderMg) / mgPerL, {
      unit: 'L',
      u: uMg / mgPerL,
      key: 'usable-content',
      entries: because.slice(0, 3),
    });
    filled.fromFile('rating', file?.ratingOverCabinKPa, {
      unit: 'kPa',
      key: `store ${facts.id}`,
    });
  }
  return yes(filled.inputs);
}
