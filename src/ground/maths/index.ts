// The door of ground/maths: what other rooms may use.
export type { Arithmetic, Formula } from './arithmetic.ts';
export { NUMBERS } from './arithmetic.ts';
export type { BorneOut } from './borne-out.ts';
export { isBorneOut } from './borne-out.ts';
export type { CensoredRow } from './censored-likelihood.ts';
export type { CensoredValues } from './censored-normal.ts';
export { censoredNormal } from './censored-normal.ts';
export type { CensoredFit } from './censored-regression.ts';
export { censoredRegression, coefficientU } from './censored-regression.ts';
export type { Observed } from './censored-row.ts';
export type { Chance } from './chance.ts';
export { chanceFromState, seededChance, splitmix64 } from './chance.ts';
export { chiSquareCdf, chiSquareQuantile, chiSquareUpper } from './chi-square.ts';
export type { SquareMatrix } from './cholesky.ts';
export { choleskyFactor, choleskySolve } from './cholesky.ts';
export { cos, sin } from './circle.ts';
export type { Draw } from './counting-tail.ts';
export { atLeastDrawn } from './counting-tail.ts';
export { coverageFactor } from './coverage-factor.ts';
export type { CurveFit } from './curve-fit.ts';
export { curveFit } from './curve-fit.ts';
export type { Curve, CurvePoint } from './curve-surface.ts';
export type { Crossing, Run, Slopes, StepRules } from './dormand-prince.ts';
export { DormandPrince } from './dormand-prince.ts';
export type { Correlation, Doubted, Shape } from './doubted.ts';
export type { Dual } from './duals.ts';
export { Duals } from './duals.ts';
export { erf, erfc } from './error-function.ts';
export { exp, expm1 } from './exponential.ts';
export type { Bounds, FitVerdict } from './fit-descent.ts';
export { tanh } from './hyperbolic.ts';
export type { IndividualsChart } from './individuals-chart.ts';
export { individualsChart, LIMIT_SIGMAS } from './individuals-chart.ts';
export { acos, asin, atan } from './inverse-circle.ts';
export type { LeastSquares } from './least-squares.ts';
export { leastSquares } from './least-squares.ts';
export { log, log1p, log10 } from './logarithm.ts';
export type { Matrix } from './matrix.ts';
export { matrixOf } from './matrix.ts';
export type { NewtonSearch, ValueAndSlope } from './newton-between.ts';
export { newtonBetween } from './newton-between.ts';
export { normalCdf, normalQuantile } from './normal-distribution.ts';
export { nullSpace, transposed } from './null-space.ts';
export { cbrt, pow } from './power.ts';
export type {
  Formulas,
  PairPart,
  Part,
  Propagated,
  PropagatedTogether,
} from './propagate.ts';
export { propagate, propagateTogether } from './propagate.ts';
export type { Drawn, Interval } from './propagate-by-draws.ts';
export { propagateByDraws } from './propagate-by-draws.ts';
export type { QrFactor } from './qr.ts';
export { qrFactor, turned, turnedBack } from './qr.ts';
export { rootBetween } from './root-between.ts';
export type { ChartedValue, ChartLimits, RunRule, RunSignal } from './run-rules.ts';
export { runSignals, SAME_SIDE, STEADY } from './run-rules.ts';
export { secondOrderU } from './second-order.ts';
export { studentCdf, studentQuantile } from './student.ts';
export { compensatedSum } from './sum.ts';
