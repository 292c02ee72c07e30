// When to stop: a flow far from what was predicted, or a cabin pressure that physics does not explain.
import { cabinChange, flowVerdict, type Receiver } from '../../ground/physics/index.ts';
import type { Estimate } from './litres-filter.ts';
import type { FlowPlan, LitresRead } from './live.ts';

/** `too soon`: the readings lie too close together to tell a flow that is right from one that is not. */
export type FlowStop = 'as predicted' | 'kink or clogged coupling' | 'gas in the line' | 'too soon';

export interface FlowStopped {
  readonly verdict: FlowStop;
  /** Flow over predicted flow; null where nothing can be said. */
  readonly ratio: Estimate | null;
}

const MS_PER_MIN = 60_000;
/** The nearer of the two limits, 0.7 and 1.2, is so far from 1. */
const NEAREST_LIMIT = 0.2;

/**
 * The flow between the last two readings of one means, against the plan: below 0.7 a kink or a clogged coupling, above 1.2 gas.
 *
 * It speaks only where the ratio differs from 1 by more than three standard deviations of the readings: a noisy meter that is
 * read twice in a second says nothing. A calibration is the same in both readings and bears on the ratio alone.
 * @param asked readings of one means in any order; `began` where the stretch began, with the litres moved by then
 * @source the limits 0.7 and 1.2 are common practice (`flowVerdict`); gum
 * @example flowStop({ plan, began: { atMs: 0, litres: 0 }, readings }).verdict // 'as predicted'
 */
export function flowStop(asked: {
  readonly plan: FlowPlan;
  readonly began: { readonly atMs: number; readonly litres: number };
  readonly readings: readonly LitresRead[];
}): FlowStopped {
  const { plan, began } = asked;
  const readings = [...asked.readings].sort((a, b) => a.atMs - b.atMs);
  const last = readings.at(-1);
  const before = readings.at(-2) ?? began;
  const minutes = last === undefined ? 0 : (last.atMs - before.atMs) / MS_PER_MIN;
  if (last === undefined || !(minutes > 0)) return { verdict: 'too soon', ratio: null };
  const predictedL = (minutes * plan.planned.value) / plan.minutes.value;
  const ratio = ratioOf({ last, beforeL: before.litres, predictedL, isTwice: readings.length > 1 });
  const flow = { seenM3PerS: Math.max(0, ratio.value), predictedM3PerS: 1 };
  const verdict = flowVerdict(flow);
  const isSure = Math.abs(ratio.value - 1) > 3 * ratio.u;
  if (verdict !== 'as predicted') return { verdict: isSure ? verdict : 'too soon', ratio };
  return { verdict: 3 * ratio.u <= NEAREST_LIMIT ? verdict : 'too soon', ratio };
}

function ratioOf(of: {
  readonly last: LitresRead;
  readonly beforeL: number;
  readonly predictedL: number;
  readonly isTwice: boolean;
}): Estimate {
  const { last, beforeL, predictedL, isTwice } = of;
  const seenL = last.litres - beforeL;
  const { randomL, relative } = last.doubt;
  const shared = relative * seenL;
  const doubtL = Math.sqrt((isTwice ? 2 : 1) * randomL * randomL + shared * shared);
  return { value: seenL / predictedL, u: doubtL / predictedL };
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
