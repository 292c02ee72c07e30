// Two stores, a meter between them and a planted loss: the estimator, the batch, and what the loss explains.
import { Estimator } from '../../src/account/index.ts';
import { timesVector } from '../reference/dense.ts';
import { explainedBy } from '../reference/gross-errors.ts';
import { type Act, type History, solveAsBatch, tell } from '../reference/history.ts';
import { publishedData } from '../reference/network-data.ts';
import type { Subject } from './subject.ts';

interface TwoStores {
  readonly readA: readonly number[];
  readonly readB: readonly number[];
  readonly uA: number;
  readonly uB: number;
  readonly movedKg: number;
  readonly usedKg: number;
  readonly uMoveKg: number;
  readonly uUseKg: number;
  readonly priors: readonly { readonly mean: number; readonly u: number }[];
  /** The loss begins after this reading, counted from 0. */
  readonly lossAfterReading: number;
}

const data = (): TwoStores => publishedData<TwoStores>('two-stores');

/** Water goes from A to B past a meter with a calibration error, and is used out of B. */
function historyOf(given: TwoStores): History {
  const acts = given.readA.flatMap((value, day): Act[] => [
    ...(day === 0
      ? []
      : [
          { act: 'move', from: 0, to: 1, calibration: 2, massKg: given.movedKg, uKg: given.uMoveKg } as const,
          { act: 'move', from: 1, to: -1, calibration: -1, massKg: given.usedKg, uKg: given.uUseKg } as const,
        ]),
    { act: 'read', places: [0], weights: [1], value, u: given.uA },
    { act: 'read', places: [1], weights: [1], value: given.readB[day]!, u: given.uB },
  ]);
  return { priors: given.priors.map(({ mean, u }) => ({ mean, variance: u * u })), acts };
}

export const lossHypothesis: Subject = (way = '', quantity = '') => {
  const given = data();
  const history = historyOf(given);
  const states = ['A', 'B', 'b'];
  if (way === 'estimator') {
    const estimator = new Estimator(4);
    const { sumOfSquares } = tell(estimator, history);
    return quantity === 'chiSquare' ? sumOfSquares : estimator.mean(states.indexOf(quantity));
  }
  const { problem, solution, means } = solveAsBatch(history);
  if (quantity === 'chiSquare') return solution.chiSquare;
  if (states.includes(quantity)) return means[states.indexOf(quantity)]!;
  // Each balance is a reading: what the batch expects there less what was read. A loss of 1 kg a day makes it too high by the
  // days since it began, and a reading that is so much too low does the same.
  const readings = Float64Array.from(problem.measured, () => 0);
  const firstReading = lossDaysByVariable(given, problem.measured.length);
  for (const [variable, days] of firstReading) readings[variable] = -days;
  const explained = explainedBy(solution, timesVector(problem.balances, readings));
  const quantities: Readonly<Record<string, number>> = {
    lossPerDay: explained.size,
    lossPerDayU: explained.sizeU,
    statistic: explained.statistic,
  };
  return quantities[quantity] ?? Number.NaN;
};

/** Variables of the batch that are readings of B, and the days that the loss had run by then. */
function lossDaysByVariable(given: TwoStores, variables: number): Map<number, number> {
  const found = new Map<number, number>();
  // Three priors; on the first day two readings, on each later one two amounts and two readings.
  let variable = given.priors.length;
  given.readB.forEach((_, day) => {
    variable += day === 0 ? 2 : 4;
    found.set(variable - 1, Math.max(0, day - given.lossAfterReading));
  });
  if (variable !== variables) throw new Error(`the batch has ${variables} variables, not ${variable}`);
  return found;
}
