// The worked examples of the guide to uncertainty and of its first supplement, through the product's propagation, fits and draws.
import {
  coverageFactor,
  curveFit,
  type Doubted,
  type Formula,
  isBorneOut,
  type Propagated,
  propagate,
  propagateByDraws,
  propagateTogether,
  secondOrderU,
} from '../../src/ground/maths/index.ts';
import type { Subject } from './subject.ts';

const endGaugeInputs = {
  standard: { value: 50.000623, u: 25e-6, degrees: 18 },
  difference: { value: 0.000215, u: 9.7e-6, degrees: 25.6 },
  expansion: { value: 11.5e-6, u: 1.2e-6 },
  temperature: { value: -0.1, u: 0.41 },
  expansionDifference: { value: 0, u: 0.58e-6, degrees: 50 },
  temperatureDifference: { value: 0, u: 0.029, degrees: 2 },
};

/** l = l_s + d − l_s (δα θ + α_s δθ), in millimetres. */
const endGauge: Formula<keyof typeof endGaugeInputs> = (on, x) => {
  const strain = on.plus(
    on.times(x.expansionDifference, x.temperature),
    on.times(x.expansion, x.temperatureDifference),
  );
  return on.minus(on.plus(x.standard, x.difference), on.times(x.standard, strain));
};

/** Figures as the guide prints them: nanometres whole, degrees cut off, t to two places. */
const gumEndGauge: Subject = (quantity = '') => {
  const { value, u, degrees } = propagate({ inputs: endGaugeInputs, formula: endGauge });
  const t = coverageFactor({ probability: 0.99, degrees: degrees! });
  const nanometres = (millimetres: number): string => (millimetres * 1e6).toFixed(0);
  const printed: Readonly<Record<string, string>> = {
    length: value.toFixed(6),
    combined: nanometres(u),
    degrees: String(Math.floor(degrees!)),
    t99: t.toFixed(2),
    expanded99: nanometres(t * u),
    secondOrder: nanometres(secondOrderU({ inputs: endGaugeInputs, formula: endGauge })),
  };
  return printed[quantity] ?? 'missing';
};

/** Five simultaneous readings of voltage, current in amperes and phase angle. */
const series = {
  V: [5.007, 4.994, 5.005, 4.99, 4.999],
  I: [0.019663, 0.019639, 0.01964, 0.019685, 0.019678],
  phi: [1.0456, 1.0438, 1.0468, 1.0428, 1.0433],
};
type Reading = keyof typeof series;

const meanOf = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;

/** Of the means of two series. */
function covarianceOf(one: readonly number[], other: readonly number[]): number {
  const [a, b] = [meanOf(one), meanOf(other)];
  const products = one.map((value, at) => (value - a) * (other[at]! - b));
  return products.reduce((sum, value) => sum + value, 0) / (one.length * (one.length - 1));
}

const uOf = (of: Reading): number => Math.sqrt(covarianceOf(series[of], series[of]));
const correlationOf = (one: Reading, other: Reading): number =>
  covarianceOf(series[one], series[other]) / (uOf(one) * uOf(other));

function impedance() {
  const told = (of: Reading): Doubted => ({ value: meanOf(series[of]), u: uOf(of) });
  const pairs: readonly (readonly [Reading, Reading])[] = [
    ['V', 'I'],
    ['V', 'phi'],
    ['I', 'phi'],
  ];
  return propagateTogether({
    inputs: { V: told('V'), I: told('I'), phi: told('phi') },
    correlations: pairs.map((of) => ({ of, r: correlationOf(...of) })),
    formulas: (on, x) => {
      const Z = on.over(x.V, x.I);
      return { R: on.times(Z, on.cos(x.phi)), X: on.times(Z, on.sin(x.phi)), Z };
    },
  });
}

/** Resistance, reactance and impedance, with the correlations of their inputs carried through. */
const gumImpedance: Subject = (quantity = '', which = '') => {
  const { outputs, correlation } = impedance();
  if (quantity === 'value') return outputs[which as 'R'].value;
  if (quantity === 'u') return outputs[which as 'R'].u;
  const [one = '', other = ''] = which.split(' ');
  return one in series
    ? correlationOf(one as Reading, other as Reading)
    : correlation(one as 'R', other as 'R');
};

/** A thermometer calibrated at eleven temperatures: its correction against the temperature. */
const thermometer = [
  [21.521, -0.171],
  [22.012, -0.169],
  [22.512, -0.166],
  [23.003, -0.159],
  [23.507, -0.164],
  [23.999, -0.165],
  [24.513, -0.156],
  [25.002, -0.157],
  [25.503, -0.159],
  [26.01, -0.161],
  [26.511, -0.16],
] as const;

/** The straight line b = y₁ + y₂ (t − 20 °C) through the corrections, and what it says at 30 °C. */
const gumThermometer: Subject = (quantity = '') => {
  const fit = curveFit({
    curve: (on, { y1, y2 }, temperatureC: number) => on.plus(y1, on.scaled(y2, temperatureC - 20)),
    points: thermometer.map(([at, value]) => ({ at, value })),
    start: { y1: 0, y2: 0 },
  });
  const { y1, y2 } = fit.parameters;
  const r = fit.covariance!.values[1]! / (fit.u.y1 * fit.u.y2);
  const at30 = propagate({
    inputs: { y1: { value: y1, u: fit.u.y1 }, y2: { value: y2, u: fit.u.y2 } },
    correlations: [{ of: ['y1', 'y2'], r }],
    formula: (on, x) => on.plus(x.y1, on.scaled(x.y2, 10)),
  });
  const found: Readonly<Record<string, number>> = {
    ...{ y1, y2, r, u1: fit.u.y1, u2: fit.u.y2 },
    ...{ s: fit.residualU, b30: at30.value, u30: at30.u },
  };
  return found[quantity] ?? Number.NaN;
};

interface Example<Name extends string = string> {
  readonly inputs: Readonly<Record<Name, Doubted>>;
  readonly formula: Formula<Name>;
  readonly digits: 1 | 2;
  readonly against: 'symmetric' | 'shortest';
}

const ofBounds = (low: number, high: number): Doubted => ({
  value: (low + high) / 2,
  u: (high - low) / Math.sqrt(12),
  shape: 'rectangular',
});

function sumOfFour(u: readonly number[], shape: 'normal' | 'rectangular'): Example {
  const [a, b, c, d] = u.map((each): Doubted => ({ value: 0, u: each, shape }));
  return {
    inputs: { a: a!, b: b!, c: c!, d: d! },
    formula: (on, x) => on.plus(on.plus(x['a']!, x['b']!), on.plus(x['c']!, x['d']!)),
    ...{ digits: 2, against: 'symmetric' },
  };
}

/** A weight of 100 g held against another in air: milligrams above 100 g. */
const mass: Example<'reference' | 'balance' | 'airDensity' | 'weightDensity' | 'referenceDensity'> = {
  inputs: {
    reference: { value: 100_000, u: 0.05 },
    balance: { value: 1.234, u: 0.02 },
    airDensity: ofBounds(1.1, 1.3),
    weightDensity: ofBounds(7000, 9000),
    referenceDensity: ofBounds(7950, 8050),
  },
  formula: (on, x) => {
    const lift = on.minus(on.over(on.of(1), x.weightDensity), on.over(on.of(1), x.referenceDensity));
    const factor = on.shifted(on.times(on.shifted(x.airDensity, -1.2), lift), 1);
    return on.shifted(on.times(on.plus(x.reference, x.balance), factor), -100_000);
  },
  ...{ digits: 1, against: 'shortest' },
};

const examples: Readonly<Record<string, Example>> = {
  'four normal': sumOfFour([1, 1, 1, 1], 'normal'),
  'four rectangular': sumOfFour([1, 1, 1, 1], 'rectangular'),
  'one of ten times the width': sumOfFour([1, 1, 1, 10], 'rectangular'),
  mass,
};

function workedOut({ inputs, formula, digits, against }: Example) {
  const propagated = propagate({ inputs, formula });
  const drawn = propagateByDraws({ inputs, formula, seed: 101, draws: 1_000_000 });
  const curved = { ...propagated, u: secondOrderU({ inputs, formula }) };
  const compared = (of: Propagated<string>) => isBorneOut({ propagated: of, drawn, digits, against });
  return { propagated, drawn, curved, against, straight: compared(propagated), bent: compared(curved) };
}

const kept = new Map<string, ReturnType<typeof workedOut>>();

/** Propagation, the same with terms of second order, and draws, side by side. */
const gumDraws: Subject = (name = '', quantity = '') => {
  const worked = kept.get(name) ?? workedOut(examples[name]!);
  kept.set(name, worked);
  const { propagated, drawn, curved, against, straight, bent } = worked;
  const found: Readonly<Record<string, number | string>> = {
    value: propagated.value,
    u: propagated.u,
    low: straight.interval.low,
    high: straight.interval.high,
    drawnU: drawn.u,
    drawnLow: drawn[against].low,
    drawnHigh: drawn[against].high,
    secondOrderU: curved.u,
    secondOrderLow: bent.interval.low,
    secondOrderHigh: bent.interval.high,
    verdict: straight.verdict,
    secondOrderVerdict: bent.verdict,
  };
  return found[quantity] ?? 'missing';
};

export const GUM: Readonly<Record<string, Subject>> = {
  gumEndGauge,
  gumImpedance,
  gumThermometer,
  gumDraws,
};
