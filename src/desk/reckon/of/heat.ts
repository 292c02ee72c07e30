// How long water takes to get hot, and how near it then is to boiling in this cabin.
import {
  boilingMargin,
  heating,
  waterDensityKgPerM3,
  waterEnthalpyAt,
} from '../../../ground/physics/index.ts';
import { type Answer, yes } from '../../answer.ts';
import { AIR_ASSUMED, CABIN } from '../cabin-specs.ts';
import type { Calculator, Reckoned, RefusedBy, Result, Saying } from '../calculator.ts';
import { Filled, type FromBook, fillCabin } from '../from-book.ts';
import type { QuantitySpec } from '../input-spec.ts';
import type { Input, Inputs } from '../inputs.ts';
import { J_PER_KJ, L_PER_M3, PA_PER_KPA } from '../si-factors.ts';

/** What warms and what is lost: asked alike for water and for ice. */
export const HEATER: readonly QuantitySpec[] = [
  { name: 'power', dimension: 'power', unit: 'W', positive: true },
  {
    name: 'efficiency',
    dimension: 'fraction',
    unit: '%',
    positive: true,
    most: 100,
    otherwise: { value: 85, u95: 10, why: 'usual-heater' },
  },
  { name: 'loss', dimension: 'heat-loss', unit: 'W/K', otherwise: { value: 0, u95: null, why: 'no-loss' } },
];

export const heat: Calculator = {
  name: 'heat',
  inputs: [
    { name: 'volume', dimension: 'volume', unit: 'L', positive: true },
    { name: 'begin', dimension: 'temperature', unit: 'degC' },
    { name: 'end', dimension: 'temperature', unit: 'degC' },
    ...HEATER,
    AIR_ASSUMED,
    CABIN,
  ],
  method: 'heating',
  cautions: ['hot-water', 'steam'],
  fill,
  refuse: wouldBoil,
  reckon,
};

const J_PER_WH = 3600;

function wouldBoil(inputs: Inputs): RefusedBy | null {
  const endC = inputs.number('end');
  const pressurePa = PA_PER_KPA * inputs.number('cabin');
  const { marginK, boilsAtC } = boilingMargin({ temperatureC: endC, pressurePa });
  return marginK > 0
    ? null
    : { rule: 'would-boil', data: { endC, boilsAtC, cabinKPa: inputs.number('cabin') } };
}

function reckon(inputs: Inputs): Reckoned {
  const pressurePa = PA_PER_KPA * inputs.number('cabin');
  const [fromC, toC] = [inputs.number('begin'), inputs.number('end')];
  const massKg = (inputs.number('volume') * waterDensityKgPerM3(Math.min(fromC, 40))) / L_PER_M3;
  const heated = heating({
    massKg,
    fromC,
    toC,
    enthalpy: waterEnthalpyAt(pressurePa),
    vesselJPerK: 0,
    powerW: inputs.number('power'),
    efficiency: inputs.number('efficiency') / 100,
    lossWPerK: inputs.number('loss'),
    aroundC: inputs.number('air'),
  });
  const { boilsAtC, marginK } = boilingMargin({ temperatureC: toC, pressurePa });
  const results: Result[] = [];
  if (heated.timeS !== null) results.push({ name: 'time', value: heated.timeS, unit: 's' });
  results.push({ name: 'heat-needed', value: heated.heatJ / J_PER_KJ, unit: 'kJ' });
  if (heated.electricJ !== null)
    results.push({ name: 'electricity', value: heated.electricJ / J_PER_WH, unit: 'Wh' });
  results.push(
    { name: 'standby', value: heated.standbyW, unit: 'W' },
    { name: 'boils-at', value: boilsAtC, unit: 'degC' },
    { name: 'boiling-margin', value: marginK, unit: 'K' },
  );
  const sayings: Saying[] =
    heated.timeS === null ? [{ key: 'never-that-hot', data: { highestC: heated.highestC } }] : [];
  return { results, sayings };
}

function fill(book: FromBook): Answer<readonly Input[]> {
  const filled = new Filled();
  fillCabin(filled, book);
  return yes(filled.inputs);
}
