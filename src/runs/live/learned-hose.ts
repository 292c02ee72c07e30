// What the runs of a hose teach: its factor with a doubt that shrinks, from those that went as they should.
import { flowVerdict } from '../../ground/physics/index.ts';
import { hoseFactor } from '../../outpost/index.ts';

export interface PastRun {
  /** With a factor of 1, in seconds. */
  readonly predictedSeconds: number;
  readonly takenSeconds: number;
  /** Broken off on the way: its minutes hold stops and starts. */
  readonly interrupted: boolean;
}

export interface LearnedHose {
  /** Taken over predicted time, and half of the band (95 %) of the next run. */
  readonly factor: { readonly value: number; readonly u: number };
  /** Runs that taught it, and those that were left out. */
  readonly used: number;
  readonly leftOut: number;
}

/**
 * Left out are runs that were broken off, and those that flowed below 0.7 or above 1.2 of the middle one: a kink or gas is no
 * property of a hose. With none left the factor is what is believed of any hose.
 * @source hoseCoefficient; median of the ratios, common practice
 * @example learnedHose([{ predictedSeconds: 950, takenSeconds: 1190, interrupted: false }]).factor.value // 1.25
 */
export function learnedHose(runs: readonly PastRun[]): LearnedHose {
  const whole = runs.filter(
    ({ interrupted, predictedSeconds, takenSeconds }) =>
      !interrupted && predictedSeconds > 0 && takenSeconds > 0,
  );
  const middle = median(whole.map((run) => run.takenSeconds / run.predictedSeconds));
  const clean = whole.filter(
    ({ takenSeconds, predictedSeconds }) =>
      flowVerdict({ seenM3PerS: (middle * predictedSeconds) / takenSeconds, predictedM3PerS: 1 }) ===
      'as predicted',
  );
  return { factor: hoseFactor(clean), used: clean.length, leftOut: runs.length - clean.length };
}

/** Of none it is 1. */
function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const [low, high] = [sorted[(sorted.length - 1) >> 1] ?? 1, sorted[sorted.length >> 1] ?? 1];
  return (low + high) / 2;
}
