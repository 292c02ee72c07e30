// The door of ground/maths: what other rooms may use.
export type { Chance } from './chance.ts';
export { chanceFromState, seededChance, splitmix64 } from './chance.ts';
export type { SquareMatrix } from './cholesky.ts';
export { choleskyFactor, choleskySolve } from './cholesky.ts';
export { cos, sin } from './circle.ts';
export { erf, erfc } from './error-function.ts';
export { exp, expm1 } from './exponential.ts';
export { tanh } from './hyperbolic.ts';
export { log, log1p, log10 } from './logarithm.ts';
export { normalCdf, normalQuantile } from './normal-distribution.ts';
export { cbrt, pow } from './power.ts';
export { compensatedSum } from './sum.ts';
