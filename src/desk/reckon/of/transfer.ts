// How long a transfer takes, what holds it back, and what it does to the air of the cabin.
import {
  compressorRun,
  type FlowInLine,
  freeAir,
  type HoseLine,
  hoseCoefficient,
  lineVolumeM3,
  type Push,
  pushFlow,
  pushTime,
  viscosityPaS,
  waterDensityKgPerM3,
} from '../../../ground/physics/index.ts';
import type { Coupling, Hose } from '../../../outpost/index.ts';
import { type Answer, yes } from '../../answer.ts';
import { cabinResults, overRating, RECEIVER } from '../cabin-push.ts';
import { AIR_ASSUMED, CABIN, CABIN_VOLUME, WATER } from '../cabin-specs.ts';
import type { Calculator, Reckoned, Result, Saying } from '../calculator.ts';
import { Filled, type FromBook, fillCabin, hoseOf, storeOf } from '../from-book.ts';
import { formulaDoubt, type InputSpec } from '../input-spec.ts';
import { type Input, Inputs } from '../inputs.ts';
import { ICE_POINT_K, L_PER_M3, PA_PER_KPA } from '../si-factors.ts';

const INPUTS: readonly InputSpec[] = [
  { name: 'from', of: 'store' },
  { name: 'to', of: 'store' },
  { name: 'hose', of: 'hose' },
  { name: 'volume', dimension: 'volume', unit: 'L', positive: true },
  { name: 'length', dimension: 'length', unit: 'm' },
  { name: 'bore', dimension: 'length', unit: 'm', shownUnit: 'mm', positive: true },
  {
    name: 'roughness',
    dimension: 'length',
    unit: 'm',
    shownUnit: 'um',
    otherwise: { value: 1.5e-6, u95: null, why: 'smooth-plastic' },
  },
  {
    name: 'minor-loss',
    dimension: 'plain',
    unit: '',
    otherwise: { value: 1.5, u95: null, why: 'in-and-out' },
  },
  { name: 'kv', dimension: 'flow', unit: 'm3/h', positive: true, many: true, optional: true },
  { name: 'over', dimension: 'pressure', unit: 'kPa', positive: true },
  WATER,
  CABIN,
  { name: 'lift', dimension: 'length', unit: 'm', mayBeNegative: true, optional: true },
  {
    name: 'gravity',
    dimension: 'acceleration',
    unit: 'm/s2',
    otherwise: { value: 9.80665, u95: null, why: 'standard-gravity' },
  },
  { name: 'coil', dimension: 'length', unit: 'm', positive: true, optional: true },
  { name: 'gas', dimension: 'volume', unit: 'L', positive: true, optional: true },
  RECEIVER,
  CABIN_VOLUME,
  AIR_ASSUMED,
  { name: 'compressor', dimension: 'flow', unit: 'L/min', positive: true, optional: true },
  { name: 'rating', dimension: 'pressure', unit: 'kPa', positive: true, optional: true },
  { name: 'hose-factor', dimension: 'plain', unit: '', hidden: true, optional: true },
  formulaDoubt('friction-formula', 0.15, 'friction-doubt'),
  formulaDoubt('coupling-formula', 0.1, 'coupling-doubt'),
];

export const transfer: Calculator = {
  name: 'transfer',
  inputs: INPUTS,
  method: 'hose-flow',
  cautions: ['pressure', 'demating', 'compressor'],
  fill,
  refuse: overRating('the line'),
  reckon,
};

interface Asked {
  readonly line: HoseLine;
  readonly water: { readonly densityKgPerM3: number; readonly viscosityPaS: number };
  readonly cabinPa: number;
  readonly columnPa: number;
  readonly tankPa: number;
  readonly volumeM3: number;
  readonly hoseFactor: number;
}

function askedOf(inputs: Inputs): Asked {
  const waterC = inputs.number('water');
  const densityKgPerM3 = waterDensityKgPerM3(waterC);
  const cabinPa = PA_PER_KPA * inputs.number('cabin');
  const coilDiameterM = inputs.maybe('coil');
  return {
    line: {
      // Friction grows in proportion to the length: the doubt of its formula is put there.
      lengthM: inputs.number('length') * inputs.number('friction-formula'),
      boreM: inputs.number('bore'),
      roughnessM: inputs.number('roughness'),
      minorLoss: inputs.number('minor-loss'),
      couplingsKv: inputs.list('kv').map((kv) => kv * inputs.number('coupling-formula')),
      ...(coilDiameterM !== null && { coilDiameterM }),
    },
    water: { densityKgPerM3, viscosityPaS: viscosityPaS(waterC + ICE_POINT_K, densityKgPerM3) },
    cabinPa,
    columnPa: densityKgPerM3 * inputs.number('gravity') * (inputs.maybe('lift') ?? 0),
    tankPa: cabinPa + PA_PER_KPA * inputs.number('over'),
    volumeM3: inputs.number('volume') / L_PER_M3,
    hoseFactor: inputs.maybe('hose-factor') ?? 1,
  };
}

function reckon(inputs: Inputs): Reckoned {
  const asked = askedOf(inputs);
  const flow = pushFlow(asked.line, asked.water, asked.tankPa - asked.cabinPa - asked.columnPa);
  const gasL = inputs.maybe('gas');
  const timed = gasL === null ? regulated(asked, flow) : byItself(asked, gasL / L_PER_M3);
  return {
    results: [...timed.results, ...flowResults(asked, flow, inputs), ...airResults(asked, inputs)],
    sayings: [...timed.sayings, ...regimeSayings(flow), ...ratingSayings(inputs)],
  };
}

interface Timed {
  readonly results: readonly Result[];
  readonly sayings: readonly Saying[];
}

function regulated({ volumeM3, hoseFactor }: Asked, { flowM3PerS }: FlowInLine): Timed {
  const seconds = (hoseFactor * volumeM3) / flowM3PerS;
  return {
    results: [
      { name: 'time', value: seconds, unit: 's' },
      { name: 'stop-filling', value: seconds, unit: 's', limit: 'early' },
      { name: 'surely-emptied', value: seconds, unit: 's', limit: 'late' },
    ],
    sayings: [],
  };
}

/** No compressor: the gas of the tank expands. Walls that stay warm give the early bound, gas that stays cold the late one. */
function byItself(asked: Asked, gasM3: number): Timed {
  const { line, water, cabinPa, columnPa, tankPa, volumeM3, hoseFactor } = asked;
  const push = (exponent: number): Push => ({
    line,
    water,
    source: { kind: 'blow-down', pressurePa: tankPa, gasM3, exponent },
    againstPa: cabinPa + columnPa,
  });
  const [slow, sudden] = [pushTime(push(1), volumeM3), pushTime(push(1.4), volumeM3)];
  const results: Result[] = [];
  const sayings: Saying[] = [];
  for (const [name, outcome] of [
    ['time', slow],
    ['time-cold', sudden],
  ] as const) {
    if (outcome.arrives) results.push({ name, value: hoseFactor * outcome.seconds, unit: 's' });
    else {
      results.push({
        name: name === 'time' ? 'reach' : 'reach-cold',
        value: L_PER_M3 * outcome.reachableM3,
        unit: 'L',
      });
      sayings.push({ key: name === 'time' ? 'out-of-reach' : 'out-of-reach-cold', data: {} });
    }
  }
  return { results, sayings };
}

function flowResults(asked: Asked, flow: FlowInLine, inputs: Inputs): readonly Result[] {
  const { boreM } = asked.line;
  const part = (name: string, value: number): Result => ({ name, value: value / PA_PER_KPA, unit: 'kPa' });
  return [
    { name: 'flow', value: (60 * L_PER_M3 * flow.flowM3PerS) / asked.hoseFactor, unit: 'L/min' },
    { name: 'velocity', value: flow.velocityMPerS, unit: 'm/s' },
    { name: 'reynolds', value: flow.reynolds, unit: '', exact: true },
    part('driving', asked.tankPa - asked.cabinPa - asked.columnPa),
    part('friction', flow.frictionPa),
    part('bends', flow.minorPa),
    part('couplings', flow.couplingsPa),
    {
      name: 'in-line',
      value: L_PER_M3 * lineVolumeM3({ lengthM: inputs.number('length'), boreM }),
      unit: 'L',
    },
  ];
}

function airResults(asked: Asked, inputs: Inputs): readonly Result[] {
  const { cabinPa, tankPa, volumeM3 } = asked;
  const air = freeAir({ waterM3: volumeM3, tankPa, cabinPa });
  const results: Result[] = [{ name: 'free-air', value: L_PER_M3 * air.totalM3, unit: 'L' }];
  const cabin = cabinResults(inputs, { cabinPa, tankPa, waterM3: volumeM3 });
  results.push(...cabin.filter(({ name }) => name !== 'cabin-all-back'));
  const freeLPerMin = inputs.maybe('compressor');
  if (freeLPerMin !== null) {
    const run = compressorRun({
      inletPa: cabinPa,
      outletPa: tankPa,
      exponent: COMPRESSOR_EXPONENT,
      freeAirM3: air.totalM3,
      freeFlowM3PerS: freeLPerMin / 60 / L_PER_M3,
      inletK: inputs.number('air') + ICE_POINT_K,
      efficiency: 1,
    });
    results.push(
      { name: 'compressor-time', value: run.seconds / 60, unit: 'min' },
      { name: 'compressor-outlet', value: run.outletK - ICE_POINT_K, unit: 'degC' },
    );
  }
  return results;
}

/** Of a small machine that loses some heat through its walls: common practice, no source. */
const COMPRESSOR_EXPONENT = 1.3;

function regimeSayings({ regime, couplingsPa, totalPa }: FlowInLine): readonly Saying[] {
  const sayings: Saying[] = [{ key: `flow-${regime}`, data: {} }];
  if (couplingsPa > totalPa / 2)
    sayings.push({ key: 'couplings-rule', data: { share: couplingsPa / totalPa } });
  return sayings;
}

function ratingSayings(inputs: Inputs): readonly Saying[] {
  const sayings: Saying[] = [];
  if (!inputs.has('rating')) sayings.push({ key: 'rating-not-given', data: {} });
  if (inputs.has('hose-factor'))
    sayings.push({ key: 'hose-learned', data: { factor: inputs.number('hose-factor') } });
  return sayings;
}

function fill(book: FromBook): Answer<readonly Input[]> {
  const filled = new Filled();
  fillCabin(filled, book);
  const { push } = book.position.index.outpost;
  if (push !== undefined) {
    filled.fromFile('over', push.setOverCabinKPa, {
      unit: 'kPa',
      u: push.setDoubtKPa,
      key: 'the push',
    });
    filled.fromFile('compressor', push.compressorFreeFlowLPerMin, {
      unit: 'L/min',
      key: 'the push',
    });
  }
  const hose = hoseOf(book, 'hose');
  if (!hose.ok) return hose;
  const ratings: number[] = [];
  if (hose.value !== null) ratings.push(...fillHose(filled, book, hose.value));
  for (const end of ['from', 'to'] as const) {
    const store = storeOf(book, end);
    if (!store.ok) return store;
    if (store.value === null) continue;
    const file = book.position.index.stores.get(store.value.facts.id);
    if (file !== undefined) ratings.push(file.ratingOverCabinKPa);
    const { facts, massMg, uMg, because } = store.value;
    const { mgPerL } = book.position;
    const contentL = massMg / mgPerL;
    const volumeL =
      end === 'from'
        ? contentL - facts.remainderMg / mgPerL
        : (file?.fillL ?? facts.capacityMg / mgPerL) - contentL;
    // Filling is the usual intention: where both ends are named, the room of the receiver is what moves, or what there is of it.
    const known = filled.inputs.find(({ name }) => name === 'volume');
    if (volumeL <= 0 || (known !== undefined && known.value <= volumeL)) continue;
    if (known !== undefined) filled.inputs.splice(filled.inputs.indexOf(known), 1);
    filled.fromBook('volume', volumeL, {
      unit: 'L',
      u: uMg / mgPerL,
      key: end === 'from' ? 'usable-content' : 'room-left',
      entries: because.slice(0, 3),
    });
  }
  if (ratings.length > 0)
    filled.fromFile('rating', Math.min(...ratings), {
      unit: 'kPa',
      key: 'lowest of stores, hose and couplings',
    });
  return yes(filled.inputs);
}

/** Ratings of the hose and of its couplings. */
function fillHose(filled: Filled, book: FromBook, hose: Hose): readonly number[] {
  const key = `hose ${hose.id}`;
  filled.fromFile('length', hose.lengthM, { unit: 'm', key });
  filled.fromFile('bore', hose.boreMm / 1000, { unit: 'm', key });
  if (hose.roughnessUm !== undefined)
    filled.fromFile('roughness', hose.roughnessUm / 1e6, { unit: 'm', key });
  filled.fromFile('minor-loss', hose.minorLossK, { unit: '', key });
  const couplings = hose.couplings
    .map((id) => book.position.index.couplings.get(id))
    .filter((coupling): coupling is Coupling => coupling !== undefined);
  for (const coupling of couplings)
    filled.fromFile('kv', coupling.kvM3PerH, { unit: 'm3/h', key: `coupling ${coupling.id}` });
  fillLearned(filled, book);
  return [hose.ratingOverCabinKPa, ...couplings.map(({ ratingOverCabinKPa }) => ratingOverCabinKPa)];
}

/** What the runs of this outpost have taught takes the place of the formulas' own doubts. */
function fillLearned(filled: Filled, { runs, position }: FromBook): void {
  if (runs.length === 0) return;
  const inputs = new Inputs([
    ...filled.inputs,
    ...INPUTS.flatMap((spec): Input[] =>
      'otherwise' in spec &&
      spec.otherwise !== undefined &&
      !filled.inputs.some(({ name }) => name === spec.name)
        ? [
            {
              name: spec.name,
              value: spec.otherwise.value,
              u: null,
              unit: spec.unit,
              by: 'assumed',
              from: '',
              entries: [],
            },
          ]
        : [],
    ),
  ]);
  if (!['length', 'bore', 'over'].every((name) => inputs.has(name))) return;
  const timed = runs.map(({ massMg, minutes, overCabinKPa }) => {
    const of = new Inputs([
      ...inputs.all.filter(({ name }) => name !== 'over' && name !== 'volume'),
      plain('volume', massMg / position.mgPerL, 'L'),
      plain('over', overCabinKPa ?? inputs.number('over'), 'kPa'),
    ]);
    const asked = askedOf(of);
    const { flowM3PerS } = pushFlow(asked.line, asked.water, asked.tankPa - asked.cabinPa);
    return { predictedSeconds: asked.volumeM3 / flowM3PerS, takenSeconds: 60 * minutes };
  });
  const learned = hoseCoefficient(timed);
  const entries = runs.map(({ entry }) => entry);
  const more = { unit: '', key: 'learned-from-runs', entries: entries.slice(-5) };
  filled.fromBook('hose-factor', learned.factor, { ...more, u: learned.factor * learned.nextRunU });
  for (const name of ['friction-formula', 'coupling-formula']) filled.fromBook(name, 1, more);
}

function plain(name: string, value: number, unit: string): Input {
  return { name, value, u: null, unit, by: 'book', from: '', entries: [] };
}
