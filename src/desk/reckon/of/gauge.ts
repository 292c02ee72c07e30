// Water in a tank by gas from a bottle: before, whether it may be done and what it would be worth; after, what it says.
import type { Doubted } from '../../../ground/maths/index.ts';
import {
  type Charge,
  chargeVerdict,
  foreseenInjection,
  gaugeByInjection,
  judgeGauging,
  type Rating,
} from '../../../ground/physics/index.ts';
import { type Answer, yes } from '../../answer.ts';
import { CABIN } from '../cabin-specs.ts';
import type { Calculator, Reckoned, RefusedBy, Result, Saying } from '../calculator.ts';
import { Filled, type FromBook, fillCabin, type RawGauging, readerDoubt, storeOf } from '../from-book.ts';
import type { InputSpec, QuantitySpec } from '../input-spec.ts';
import { type Input, Inputs } from '../inputs.ts';
import { ICE_POINT_K, L_PER_M3, PA_PER_KPA } from '../si-factors.ts';

const pressure = (name: string): QuantitySpec => ({
  name,
  dimension: 'pressure',
  unit: 'kPa',
  positive: true,
});
const afterwards = (name: string): QuantitySpec => ({ ...pressure(name), optional: true });
const warmth = (name: string): QuantitySpec => ({
  name,
  dimension: 'temperature',
  unit: 'degC',
  otherwise: { value: 22, u95: null, why: 'gas-warm' },
});
/** An error that two readings of one instrument share: 0, in doubt. */
const shared = (name: string, unit: string, u95: number, why: string): QuantitySpec => ({
  name,
  dimension: 'plain',
  unit,
  hidden: true,
  otherwise: { value: 0, u95, why },
});

const READINGS = ['bottle-after', 'tank-after'] as const;

const INPUTS: readonly InputSpec[] = [
  { name: 'store', of: 'store' },
  { name: 'reading', of: 'choice', choices: ['last'] },
  { name: 'tank', dimension: 'volume', unit: 'L', positive: true },
  { name: 'bottle', dimension: 'volume', unit: 'L', positive: true },
  pressure('bottle-before'),
  afterwards('bottle-after'),
  pressure('tank-before'),
  afterwards('tank-after'),
  warmth('bottle-warm-before'),
  warmth('bottle-warm-after'),
  warmth('tank-warm-before'),
  warmth('tank-warm-after'),
  { name: 'ullage', dimension: 'volume', unit: 'L', positive: true, optional: true },
  { name: 'known', dimension: 'volume', unit: 'L', optional: true },
  { name: 'vapour', dimension: 'pressure', unit: 'kPa', otherwise: { value: 0, u95: null, why: 'dry-gas' } },
  CABIN,
  { name: 'rating', dimension: 'pressure', unit: 'kPa', positive: true, optional: true },
  {
    name: 'bottle-gauge-doubt',
    dimension: 'pressure',
    unit: 'kPa',
    otherwise: { value: 0.5, u95: null, why: 'usual-gauge' },
  },
  {
    name: 'tank-gauge-doubt',
    dimension: 'pressure',
    unit: 'kPa',
    otherwise: { value: 0.5, u95: null, why: 'usual-gauge' },
  },
  {
    name: 'thermometer-doubt',
    dimension: 'plain',
    unit: 'K',
    otherwise: { value: 0.5, u95: null, why: 'usual-thermometer' },
  },
  shared('seating', 'L', 0, 'no-bladder'),
  shared('bottle-gauge-gain', '', 0.002, 'usual-gain'),
  shared('tank-gauge-gain', '', 0.002, 'usual-gain'),
  shared('bottle-thermometer', 'K', 0, 'no-shared-warmth'),
  shared('tank-thermometer', 'K', 0, 'no-shared-warmth'),
];

export const gauge: Calculator = {
  name: 'gauge',
  inputs: INPUTS,
  method: 'gas-gauging',
  doubtGroups: { 'the-tank-itself': ['tank', 'seating'] },
  cautions: ['pressure', 'warm-gas', 'demating'],
  fill,
  refuse,
  doubted,
  reckon: (inputs) => (isRead(inputs) ? fromReadings(inputs) : beforehand(inputs)),
};

/** Readings that were given without a ± have that of their gauge. */
function doubted(inputs: Inputs): Inputs {
  const own = (name: string): number | null => {
    if (name.startsWith('bottle-warm') || name.startsWith('tank-warm'))
      return inputs.number('thermometer-doubt');
    if (/^bottle-(before|after)$/.test(name)) return inputs.number('bottle-gauge-doubt');
    return /^tank-(before|after)$/.test(name) ? inputs.number('tank-gauge-doubt') : null;
  };
  if (!isRead(inputs)) return inputs;
  return new Inputs(
    inputs.all.map((input) =>
      input.u === null && input.by !== 'assumed' ? { ...input, u: own(input.name) } : input,
    ),
    inputs.names,
  );
}

/** Somebody has done it and tells what the gauges said. */
function isRead(inputs: Inputs): boolean {
  return READINGS.every((name) => inputs.has(name));
}

/** The gas in the tank: as it was told, or the tank less what is believed to be in it. */
function ullageL(inputs: Inputs): number | null {
  const known = inputs.maybe('known');
  return inputs.maybe('ullage') ?? (known === null ? null : inputs.number('tank') - known);
}

/** Twice the doubt of the room counts: full of water, a tank would take the pressure of the bottle. */
function ullageOf(inputs: Inputs): Doubted {
  const of = inputs.all.find(({ name }) => name === (inputs.has('ullage') ? 'ullage' : 'known'));
  return { value: Math.max(0, ullageL(inputs) ?? 0) / L_PER_M3, u: (of?.u ?? 0) / L_PER_M3 };
}

function charge(inputs: Inputs): Charge {
  const fallKPa = wantedFallKPa(inputs);
  const rating = inputs.maybe('rating');
  const tank: Rating = {
    what: 'tank',
    id: inputs.choice('store') ?? '',
    overCabinPa: rating === null ? null : PA_PER_KPA * rating,
  };
  return chargeVerdict({
    bottleM3: inputs.number('bottle') / L_PER_M3,
    bottlePa: PA_PER_KPA * inputs.number('bottle-before'),
    ullageM3: ullageOf(inputs),
    tankPa: PA_PER_KPA * inputs.number('tank-before'),
    cabinPa: PA_PER_KPA * inputs.number('cabin'),
    ratings: [tank],
    ...(fallKPa !== null && { bottleFallPa: PA_PER_KPA * fallKPa }),
  });
}

/** What was done is reckoned; what is about to be done may be refused. */
function refuse(inputs: Inputs): RefusedBy | null {
  if (isRead(inputs)) return null;
  if (ullageL(inputs) === null) return { rule: 'ullage-missing', field: 'ullage', data: {} };
  const verdict = charge(inputs);
  if (verdict.verdict === 'blocked')
    return { rule: 'rating-missing', data: { what: inputs.choice('store') ?? 'the tank' } };
  if (verdict.verdict !== 'refused') return null;
  const { endPa, limitPa, largestBottlePa, partCharge } = verdict;
  // A part charge may be begun where it would end below the rating by what is believed; it is stopped by the tank's own gauge.
  if (wantedFallKPa(inputs) !== null && endPa <= limitPa) return null;
  return {
    rule: 'charge-too-high',
    data: {
      endKPa: endPa / PA_PER_KPA,
      ratingKPa: limitPa / PA_PER_KPA,
      safeBottleKPa: largestBottlePa === null ? null : largestBottlePa / PA_PER_KPA,
      fallKPa: partCharge === null ? null : partCharge.bottleFallPa / PA_PER_KPA,
    },
  };
}

/** A part charge: the bottle is closed again after it has fallen by so much. */
function wantedFallKPa(inputs: Inputs): number | null {
  const after = inputs.maybe('bottle-after');
  return after === null ? null : inputs.number('bottle-before') - after;
}

function beforehand(inputs: Inputs): Reckoned {
  const verdict = charge(inputs);
  const results: Result[] = [];
  const sayings: Saying[] = [];
  if (verdict.verdict === 'allowed' || verdict.verdict === 'refused') {
    results.push(
      { name: 'end-pressure', value: verdict.endPa / PA_PER_KPA, unit: 'kPa' },
      { name: 'limit-pressure', value: verdict.limitPa / PA_PER_KPA, unit: 'kPa', exact: true },
    );
    if (verdict.verdict === 'refused')
      sayings.push({ key: 'stop-at-rating', data: { limitKPa: verdict.limitPa / PA_PER_KPA } });
  }
  const worth = foreseen(inputs, wantedFallKPa(inputs));
  results.push({ name: 'would-be-known-to', value: 2 * worth.u, unit: 'L', exact: true });
  return { results, sayings: [...sayings, ...worth.sayings] };
}

function foreseen(
  inputs: Inputs,
  fallKPa: number | null,
): { readonly u: number; readonly sayings: readonly Saying[] } {
  const uOf = (name: string) => inputs.all.find((input) => input.name === name)?.u ?? 0;
  const gauged = foreseenInjection({
    tankM3: { value: inputs.number('tank') / L_PER_M3, u: uOf('tank') / L_PER_M3 },
    bottleM3: { value: inputs.number('bottle') / L_PER_M3, u: uOf('bottle') / L_PER_M3 },
    ullageM3: ullageOf(inputs).value,
    bottlePa: PA_PER_KPA * inputs.number('bottle-before'),
    tankPa: PA_PER_KPA * inputs.number('tank-before'),
    gasK: inputs.number('tank-warm-before') + ICE_POINT_K,
    ...(fallKPa !== null && { bottleFallPa: PA_PER_KPA * fallKPa }),
    u: {
      bottlePa: PA_PER_KPA * inputs.number('bottle-gauge-doubt'),
      tankPa: PA_PER_KPA * inputs.number('tank-gauge-doubt'),
      gasK: inputs.number('thermometer-doubt'),
    },
    terms: {
      seatingM3: { value: 0, u: uOf('seating') / L_PER_M3 },
      bottleGaugeGain: { value: 0, u: uOf('bottle-gauge-gain') },
      tankGaugeGain: { value: 0, u: uOf('tank-gauge-gain') },
      bottleThermometerK: { value: 0, u: uOf('bottle-thermometer') },
      tankThermometerK: { value: 0, u: uOf('tank-thermometer') },
    },
  });
  const u = gauged.waterM3.u * L_PER_M3;
  const contentL = inputs.number('tank') - (ullageL(inputs) ?? 0);
  const known = inputs.all.find(({ name }) => name === 'known');
  const judged = judgeGauging({ u }, { presentU: known?.u ?? null, content: Math.max(0, contentL) });
  const sayings = judged.because.map(({ code }): Saying => {
    const data = { u95L: 2 * u, contentL, presentU95L: known?.u == null ? null : 2 * known.u };
    return { key: `useless-${code}`, data };
  });
  return {
    u,
    sayings:
      sayings.length > 0 ? sayings : [{ key: 'gauging-useful', data: { afterU95L: 2 * judged.afterU } }],
  };
}

/** By bare readings; the doubt of each, and of what two readings of one gauge share, is found by moving it. */
function fromReadings(inputs: Inputs): Reckoned {
  const exact = (value: number): Doubted => ({ value, u: 0 });
  const pa = (name: string) => exact(PA_PER_KPA * inputs.number(name));
  const kelvin = (name: string) => exact(inputs.number(name) + ICE_POINT_K);
  const { waterM3, gasM3 } = gaugeByInjection({
    tankM3: exact(inputs.number('tank') / L_PER_M3),
    bottleM3: exact(inputs.number('bottle') / L_PER_M3),
    bottleBeforePa: pa('bottle-before'),
    bottleAfterPa: pa('bottle-after'),
    tankBeforePa: pa('tank-before'),
    tankAfterPa: pa('tank-after'),
    bottleBeforeK: kelvin('bottle-warm-before'),
    bottleAfterK: kelvin('bottle-warm-after'),
    tankBeforeK: kelvin('tank-warm-before'),
    tankAfterK: kelvin('tank-warm-after'),
    vapourPa: pa('vapour'),
    seatingM3: exact(inputs.number('seating') / L_PER_M3),
    bottleGaugeGain: exact(inputs.number('bottle-gauge-gain')),
    tankGaugeGain: exact(inputs.number('tank-gauge-gain')),
    bottleThermometerK: exact(inputs.number('bottle-thermometer')),
    tankThermometerK: exact(inputs.number('tank-thermometer')),
  });
  const results: Result[] = [
    { name: 'water-in-tank', value: L_PER_M3 * waterM3.value, unit: 'L' },
    { name: 'gas-in-tank', value: L_PER_M3 * gasM3.value, unit: 'L' },
  ];
  const known = inputs.maybe('known');
  if (known !== null)
    results.push({ name: 'against-known', value: L_PER_M3 * waterM3.value - known, unit: 'L' });
  return { results, sayings: [] };
}

function fill(book: FromBook): Answer<readonly Input[]> {
  const filled = new Filled();
  fillCabin(filled, book);
  const store = storeOf(book, 'store');
  if (!store.ok) return store;
  const { gaugingBottle } = book.position.index.outpost;
  if (gaugingBottle !== undefined) {
    filled.fromFile('bottle', gaugingBottle.volumeL, {
      unit: 'L',
      u: gaugingBottle.volumeDoubtL,
      key: 'gauging bottle',
    });
    filled.fromFile('bottle-before', gaugingBottle.fullAbsoluteKPa, {
      unit: 'kPa',
      key: 'gauging bottle, full',
    });
  }
  const { cabinPressureAbsoluteKPa } = book.position.index.outpost.outpost;
  filled.fromFile('tank-before', cabinPressureAbsoluteKPa, { unit: 'kPa', key: 'the cabin' });
  fillReaders(filled, book);
  if (store.value === null) return yes(filled.inputs);
  const { facts, massMg, uMg, because } = store.value;
  const { mgPerL } = book.position;
  const file = book.position.index.stores.get(facts.id);
  filled.fromFile('rating', file?.ratingOverCabinKPa, { unit: 'kPa', key: `store ${facts.id}` });
  const tank = file?.gauging;
  if (tank !== undefined) {
    const key = `store ${facts.id} gauging`;
    filled.fromFile('tank', tank.tankVolumeL, { unit: 'L', u: tank.shellDoubtL, key });
    filled.fromFileOf('seating', 0, { unit: 'L', u: tank.bladderSeatingDoubtL, key });
  }
  const last = book.names.get('reading') === 'last' ? book.lastGauging : null;
  if (last === null)
    filled.fromBook('known', massMg / mgPerL, {
      unit: 'L',
      u: uMg / mgPerL,
      key: 'content',
      entries: because.slice(0, 3),
    });
  else fillReadings(filled, last);
  return yes(filled.inputs);
}

function fillReadings(filled: Filled, { body, entry }: RawGauging): void {
  const read = (name: string, value: number, unit: string) => {
    const known = filled.inputs.find((input) => input.name === name);
    if (known !== undefined) filled.inputs.splice(filled.inputs.indexOf(known), 1);
    filled.fromBook(name, value, { unit, key: 'last-gauging', entries: [entry] });
  };
  read('bottle-before', body.bottleBeforeKPaAbs, 'kPa');
  read('bottle-after', body.bottleAfterKPaAbs, 'kPa');
  read('tank-before', body.tankBeforeKPaAbs, 'kPa');
  read('tank-after', body.tankAfterKPaAbs, 'kPa');
  read('bottle-warm-before', body.bottleBeforeC, 'degC');
  read('bottle-warm-after', body.bottleAfterC, 'degC');
  read('tank-warm-before', body.tankBeforeC, 'degC');
  read('tank-warm-after', body.tankAfterC, 'degC');
}

/** What the gauges are good to: new at every reading, and what their readings share. */
function fillReaders(filled: Filled, book: FromBook): void {
  for (const end of ['bottle', 'tank'] as const) {
    const doubt = readerDoubt(book, end);
    if (doubt === null) continue;
    const key = `gauge of the ${end}`;
    filled.fromFile(`${end}-gauge-doubt`, doubt.u, { unit: 'kPa', key });
    filled.fromFileOf(`${end}-gauge-gain`, 0, { unit: '', u: doubt.shared, key });
  }
  const warmth = readerDoubt(book, 'warmth');
  if (warmth === null) return;
  filled.fromFile('thermometer-doubt', warmth.u, { unit: 'K', key: 'thermometers of the gas' });
  for (const end of ['bottle', 'tank'] as const)
    filled.fromFileOf(`${end}-thermometer`, 0, {
      unit: 'K',
      u: warmth.shared,
      key: 'thermometers of the gas',
    });
}
