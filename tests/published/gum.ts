// The worked examples H.1 and H.2 of the guide to uncertainty, through the product's quantiles and the twin's propagation.
import { cos, sin, studentQuantile } from '../../src/ground/maths/index.ts';
import { diagonal, element, made } from '../reference/dense.ts';
import { effectiveDegrees, propagated, secondOrderVariance, sensitivities } from '../reference/propagate.ts';
import type { Subject } from './subject.ts';

/** l = l_s + d − l_s (δα θ + α_s δθ), in millimetres. */
const endGaugeModel = ([ls, d, alphaS, theta, deltaAlpha, deltaTheta]: readonly number[]): number =>
  ls! + d! - ls! * (deltaAlpha! * theta! + alphaS! * deltaTheta!);

const endGauge = {
  x: [50.000623, 0.000215, 11.5e-6, -0.1, 0, 0],
  u: [25e-6, 9.7e-6, 1.2e-6, 0.41, 0.58e-6, 0.029],
  degrees: [18, 25.6, Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY, 50, 2],
};

/** Figures as the guide prints them: nanometres whole, degrees cut off, t to two places. */
export const gumEndGauge: Subject = (quantity = '') => {
  const { x, u, degrees } = endGauge;
  const model = (at: readonly number[]): readonly number[] => [endGaugeModel(at)];
  const slopes = sensitivities(model, x, u);
  const parts = u.map((each, at) => ({ u: element(slopes, 0, at) * each, degrees: degrees[at]! }));
  const uc = Math.sqrt(element(propagated(model, x, diagonal(u.map((each) => each * each))), 0, 0));
  const whole = Math.floor(effectiveDegrees(parts));
  const t = studentQuantile({ probability: 0.995, degrees: whole });
  const nanometres = (millimetres: number): string => (millimetres * 1e6).toFixed(0);
  const printed: Readonly<Record<string, string>> = {
    length: endGaugeModel(x).toFixed(6),
    combined: nanometres(uc),
    degrees: String(whole),
    t99: t.toFixed(2),
    expanded99: nanometres(t * uc),
    secondOrder: nanometres(Math.sqrt(secondOrderVariance(endGaugeModel, x, u))),
  };
  return printed[quantity] ?? 'missing';
};

/** Five simultaneous readings of voltage, current in amperes and phase angle. */
const series = {
  V: [5.007, 4.994, 5.005, 4.99, 4.999],
  I: [0.019663, 0.019639, 0.01964, 0.019685, 0.019678],
  phi: [1.0456, 1.0438, 1.0468, 1.0428, 1.0433],
};

/** Resistance, reactance and impedance, with the correlations of their inputs carried through. */
export const gumImpedance: Subject = (quantity = '', which = '') => {
  const inputs = [series.V, series.I, series.phi];
  const means = inputs.map((values) => values.reduce((sum, value) => sum + value, 0) / values.length);
  const covariance = made(3, 3, (a, b) => {
    const products = inputs[a]!.map((value, at) => (value - means[a]!) * (inputs[b]![at]! - means[b]!));
    return products.reduce((sum, value) => sum + value, 0) / (products.length * (products.length - 1));
  });
  const model = ([v, i, phi]: readonly number[]): readonly number[] => [
    (v! / i!) * cos(phi!),
    (v! / i!) * sin(phi!),
    v! / i!,
  ];
  const out = propagated(model, means, covariance);
  const names = ['R', 'X', 'Z', 'V', 'I', 'phi'];
  const place = (name: string): number => names.indexOf(name) % 3;
  const correlation = (of: typeof out, a: number, b: number): number =>
    element(of, a, b) / Math.sqrt(element(of, a, a) * element(of, b, b));
  if (quantity === 'value') return model(means)[place(which)]!;
  if (quantity === 'u') return Math.sqrt(element(out, place(which), place(which)));
  const [one = '', other = ''] = which.split(' ');
  return correlation(names.indexOf(one) < 3 ? out : covariance, place(one), place(other));
};
