// When to stop: a flow far from what was predicted, or a cabin pressure that physics does not explain.
import { cabinChange, flowVerdict, type Receiver } from '../../ground/physics/index.ts';
import type { Estimate } from './litres-filter.ts';
import type { FlowPlan, LitresRead } from './live.ts';

/** `too soon`: what was read is within the doubt of its readings of what was predicted, or they lie too close together. */
export type FlowStop = 'as predicted' | 'kink or clogged coupling' | 'gas in the line' | 'too soon';

export interface FlowStopped {
  readonly verdict: FlowStop;
  /** Flow over predicted flow; null where nothing can be said. */
  readonly ratio: Estimate | null;
}

const MS_PER_MIN = 60_000;

/**
 * The flow between the last two readings of one means, against the plan: below 0.7 a kink or a clogged coupling, above 1.2 gas.
 *
 * It speaks only where the ratio differs from 1 by more than three standard deviations of the readings: a noisy meter that is
 * read twice in a second says nothing. A calibration is the same in both readings and bears on the ratio alone.
 * @param readings of one means, in any order; the beginning of the flow counts as a reading of nothing
 * @source the limits 0.7 and 1.2 are common practice; gum
 * @example flowStop({ plan, beganAtMs: 0, readings })
 */
export function flowStop(asked: {
  readonly plan: FlowPlan;
  readonly beganAtMs: number;
  readonly readings: readonly LitresRead[];
}): FlowStopped {
  const { plan, beganAtMs } = asked;
  const readings = [...asked.readings].sort((a, b) => a.atMs - b.atMs);
  const last = readings.at(-1);
  const before = readings.at(-2) ?? { atMs: beganAtMs, litres: 0 };
  const minutes = last === undefined ? 0 : (last.atMs - before.atMs) / MS_PER_MIN;
  if (last === undefined || !(minutes > 0)) return { verdict: 'too soon', ratio: null };
  const predictedL = (minutes * plan.planned.value) / plan.minutes.value;
  const seenL = last.litres - before.litres;
  const { randomL, relative } = last.doubt;
  const doubtL = Math.sqrt(
    (readings.length > 1 ? 2 : 1) * randomL * randomL + relative * seenL * (relative * seenL),
  );
  const ratio = { value: seenL / predictedL, u: doubtL / predictedL };
  if (Math.abs(ratio.value - 1) <= 3 * ratio.u) return { verdict: 'too soon', ratio };
  const verdict = flowVerdict({ seenM3PerS: Math.max(0, seenL), predictedM3PerS: predictedL });
  return { verdict, ratio };
}

export type CabinStop = 'as predicted' | 'lower than predicted' | 'higher than predicted';

/**
 * The cabin's pressure against what a push of so much water does to it: outside is a leak of pressurant, or gas from elsewhere.
 *
 * Three standard deviations of the difference of two readings: a clean run is stopped three times in a thousand.
 * @param asked pressures in kPa absolute, `readingU` of one reading, new each time; `pushKPa` over cabin; litres so far; m³
 * @source boyle-polytropic by `cabinChange`; gum
 * @example cabinStop({ beforeKPa: 101.2, nowKPa: 100.2, readingU: 0.15, … }).verdict // 'lower than predicted'
 */
export function cabinStop(asked: {
  readonly beforeKPa: number;
  readonly nowKPa: number;
  readonly readingU: number;
  readonly pushKPa: number;
  readonly movedL: number;
  readonly cabinM3: number;
  readonly receiver: Receiver;
  readonly gasFrom: 'cabin' | 'vehicle';
}): { readonly verdict: CabinStop; readonly predictedKPa: number; readonly offKPa: number } {
  const { beforeKPa, nowKPa, readingU, pushKPa, movedL, cabinM3, receiver, gasFrom } = asked;
  const change = cabinChange({
    cabinPa: 1000 * beforeKPa,
    tankPa: 1000 * (beforeKPa + pushKPa),
    waterM3: movedL / 1000,
    cabinM3,
    receiver,
    gasFrom,
  });
  const predictedKPa = beforeKPa + change.whilePushingPa / 1000;
  const offKPa = nowKPa - predictedKPa;
  const allowed = 3 * Math.SQRT2 * readingU;
  if (offKPa < -allowed) return { verdict: 'lower than predicted', predictedKPa, offKPa };
  return { verdict: offKPa > allowed ? 'higher than predicted' : 'as predicted', predictedKPa, offKPa };
}
