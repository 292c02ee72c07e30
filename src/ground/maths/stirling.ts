// The pieces of which densities with factorials are made, each small where the whole is large.
import { log, log1p } from './logarithm.ts';

/** From here on the series below is exact to a double. */
const FAR = 16;

/**
 * What Stirling's formula leaves of ln Γ(x + 1): ln Γ(x + 1) − (x + ½) ln x + x − ½ ln 2π, for x > 0.
 *
 * Below 16 the steps δ(x) = δ(x + 1) + (x + ½) ln(1 + 1/x) − 1 lead to where the series holds.
 * @source as, 6.1.40; loader-2000
 */
export function stirlingError(x: number): number {
  let sum = 0;
  let at = x;
  for (; at < FAR; at += 1) sum += (at + 0.5) * log1p(1 / at) - 1;
  const square = 1 / (at * at);
  const series =
    1 / 12 -
    square *
      (1 / 360 - square * (1 / 1260 - square * (1 / 1680 - square * (1 / 1188 - square * (691 / 360360)))));
  return sum + series / at;
}

/**
 * x ln(x / m) + m − x for x > 0 and m > 0: how far in probability x lies from the mean m; 0 only where they are equal.
 *
 * Near each other the terms of a series are all of one sign; there the formula as it stands would lose every digit.
 * @source loader-2000
 */
export function deviance(x: number, m: number): number {
  const difference = x - m;
  if (Math.abs(difference) >= 0.1 * (x + m)) return x * logOfRatio(x, m) - difference;
  const v = difference / (x + m);
  const square = v * v;
  let sum = difference * v;
  let power = 2 * x * v;
  for (let odd = 3; ; odd += 2) {
    power *= square;
    const next = sum + power / odd;
    if (next === sum) return sum;
    sum = next;
  }
}

function logOfRatio(x: number, m: number): number {
  const ratio = x / m;
  return ratio > 0 && ratio < Number.POSITIVE_INFINITY ? log(ratio) : log(x) - log(m);
}
