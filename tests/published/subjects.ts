// What the tables of published values are held against: a table's `subject` names one of these.
import {
  acos,
  asin,
  atan,
  cbrt,
  chanceFromState,
  cos,
  erf,
  erfc,
  exp,
  expm1,
  log,
  log1p,
  log10,
  normalCdf,
  normalQuantile,
  pow,
  seededChance,
  sin,
  splitmix64,
  tanh,
} from '../../src/ground/maths/index.ts';
import { saturationPressurePa, waterDensityKgPerM3 } from '../../src/ground/physics/index.ts';
import { convert, roundFigure } from '../../src/ground/units/index.ts';
import { CHARTS } from './charts.ts';
import { CURVES } from './curves.ts';
import { GUM } from './gum.ts';
import { PHYSICS_AIR } from './physics-air.ts';
import { HOSE_AND_GAS } from './physics-flow.ts';
import { GAUGING } from './physics-gauging.ts';
import { PHYSICS_PROCESS } from './physics-process.ts';
import { PHYSICS_WATER } from './physics-water.ts';
import { STATISTICS } from './statistics.ts';
import type { Subject } from './subject.ts';

function ofOne(run: (x: number) => number): Subject {
  return (x = '') => run(Number(x));
}

function ofTwo(run: (x: number, y: number) => number): Subject {
  return (x = '', y = '') => run(Number(x), Number(y));
}

/** The last of so many numbers drawn. */
function drawn<Value>(count: string, draw: () => Value): Value {
  const values = Array.from({ length: Number(count) }, draw);
  const last = values.at(-1);
  if (last === undefined) throw new Error('a row has to draw at least one number');
  return last;
}

const xoshiro: Subject = (...inputs) => {
  const chance = chanceFromState(inputs.slice(0, 4).map(BigInt));
  const { high, low } = drawn(inputs[4] ?? '', chance.nextWords);
  return String((BigInt(high) << 32n) | BigInt(low));
};

export const SUBJECTS: Readonly<Record<string, Subject>> = {
  ...STATISTICS,
  acos: ofOne(acos),
  asin: ofOne(asin),
  atan: ofOne(atan),
  ...CHARTS,
  ...CURVES,
  ...GUM,
  ...GAUGING,
  ...HOSE_AND_GAS,
  ...PHYSICS_AIR,
  ...PHYSICS_PROCESS,
  ...PHYSICS_WATER,
  cbrt: ofOne(cbrt),
  convert: (value = '', from = '', to = '') => convert(Number(value), from, to),
  cos: ofOne(cos),
  erf: ofOne(erf),
  erfc: ofOne(erfc),
  exp: ofOne(exp),
  expm1: ofOne(expm1),
  log: ofOne(log),
  log10: ofOne(log10),
  log1p: ofOne(log1p),
  normalCdf: ofOne(normalCdf),
  normalQuantile: ofOne(normalQuantile),
  pow: ofTwo(pow),
  roundFigure: (value = '', u95 = '') => {
    const rounded = roundFigure({ value: Number(value), u95: Number(u95) });
    return `${rounded.value} +/- ${rounded.u95}`;
  },
  sin: ofOne(sin),
  splitmix64: (seed = '', count = '') => String(splitmix64(BigInt(seed), Number(count)).at(-1)),
  saturationPressure: ofOne((temperatureK) => saturationPressurePa(temperatureK) / 1e6),
  tanh: ofOne(tanh),
  uniform: (seed = '', count = '') => drawn(count, seededChance({ seed: Number(seed) }).uniform),
  waterDensity: ofOne(waterDensityKgPerM3),
  xoshiro,
};
