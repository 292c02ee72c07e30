// A flow as it runs: how long, how much so far, when it will be full, and the time at which somebody has to be at the valve.
import { exp } from '../../ground/maths/index.ts';
import type { Card } from '../../outpost/index.ts';
import { type Estimate, LitresFilter, type MeansDoubt } from './litres-filter.ts';

export type FlowDanger = NonNullable<Card['flow']>['danger'];

/** What is known of a flow before anything is read. */
export interface FlowPlan {
  /** Litres that are to move in all. */
  readonly planned: Estimate;
  /** Minutes that they take, with the doubt of the hose. */
  readonly minutes: Estimate;
  readonly danger: FlowDanger;
  /** The push that the minutes hold for, kPa over cabin; null for a pump. */
  readonly pushKPa: number | null;
}

export interface LitresRead {
  readonly is: 'litres';
  readonly atMs: number;
  /** One name for each way of telling: meter, strokes, weight. */
  readonly means: string;
  /** Since the flow began, stretches before included. */
  readonly litres: number;
  readonly doubt: MeansDoubt;
}

export interface PushRead {
  readonly is: 'push';
  readonly atMs: number;
  readonly overCabinKPa: number;
}

export type LiveReading = LitresRead | PushRead;

export interface Stretch {
  readonly fromMs: number;
  readonly toMs: number | null;
}

export interface LiveAsked {
  readonly plan: FlowPlan;
  /** Stretches in which the water flowed, in their order. */
  readonly stretches: readonly Stretch[];
  readonly readings: readonly LiveReading[];
  readonly nowMs: number;
}

export interface Band {
  readonly early: number;
  readonly middle: number;
  readonly late: number;
}

export interface Live {
  /** Time in which it flowed. */
  readonly elapsedMs: number;
  readonly soFarL: Estimate;
  readonly rateLPerMin: Estimate;
  /** Of the whole flow, breaks left out. */
  readonly wholeMs: Band;
  /** By the clock; null while it does not flow. */
  readonly fullAtMs: Band | null;
  /** The end of the band at which it is stopped if nothing else tells; null while it does not flow. */
  readonly limitAtMs: number | null;
  /** Below zero once the limit is past. */
  readonly untilLimitMs: number | null;
}

const MS_PER_MIN = 60_000;
/** Common practice: how far a flow drifts in a minute, one standard deviation; 3 % over nine minutes. */
const WANDER_PER_ROOT_MINUTE = 0.01;

/**
 * The filter is run over the stretches and readings up to now: x is known as well as the plan's minutes are, V grows with time.
 *
 * Time left: T = (planned − V) / (rate x), its ends at two standard deviations. The limit is the early end where more
 * would over-fill, over-pressurise or run dry with harm, the late end where a store is to be emptied.
 * @param asked times in ms; minutes and planned litres above 0; readings in any order, those outside every stretch are left out
 * @throws RangeError for a plan that is no amount or no time
 * @source hose-flow and propagation pages of docs/methods; docs/methods/live-band.md
 * @example live({ plan, stretches: [{ fromMs: 0, toMs: null }], readings: [], nowMs: 60_000 }).soFarL.value // 1.29
 */
export function live(asked: LiveAsked): Live {
  const { plan, nowMs } = asked;
  mustBePlan(plan);
  const stretches = asked.stretches
    .filter(({ fromMs }) => fromMs <= nowMs)
    .map(({ fromMs, toMs }) => ({ fromMs, toMs: Math.min(toMs ?? nowMs, nowMs) }));
  const elapsedMs = stretches.reduce((sum, { fromMs, toMs }) => sum + Math.max(0, toMs - fromMs), 0);
  const ran = run(asked, stretches);
  const rateLPerMin = rateOf(ran);
  const leftMs = timeLeft(plan, ran);
  const last = asked.stretches.at(-1);
  const flows = last !== undefined && last.fromMs <= nowMs && (last.toMs === null || last.toMs > nowMs);
  const fullAtMs = flows ? moved(leftMs, nowMs) : null;
  const limitAtMs = fullAtMs === null ? null : plan.danger === 'left behind' ? fullAtMs.late : fullAtMs.early;
  return {
    elapsedMs,
    soFarL: ran.filter.litres(),
    rateLPerMin,
    wholeMs: moved(leftMs, elapsedMs),
    fullAtMs,
    limitAtMs,
    untilLimitMs: limitAtMs === null ? null : limitAtMs - nowMs,
  };
}

const moved = ({ early, middle, late }: Band, by: number): Band => ({
  early: early + by,
  middle: middle + by,
  late: late + by,
});

function mustBePlan({ planned, minutes }: FlowPlan): void {
  for (const { value, u } of [planned, minutes])
    if (!(value > 0 && value < Number.POSITIVE_INFINITY && u >= 0 && u < Number.POSITIVE_INFINITY))
      throw new RangeError(`a flow of ${planned.value} L in ${minutes.value} min cannot be followed`);
}

interface Ran {
  readonly filter: LitresFilter;
  /** Litres a minute that are predicted at the push in force. */
  readonly predictedLPerMin: number;
}

/** Turbulent flow goes with the root of the pressure, as couplings take most of it. */
function paceOfPush({ pushKPa }: FlowPlan, readKPa: number): number {
  return pushKPa === null || !(pushKPa > 0) ? 1 : Math.sqrt(Math.max(0, readKPa) / pushKPa);
}

function run({ plan, readings }: LiveAsked, stretches: readonly { fromMs: number; toMs: number }[]): Ran {
  const basis = plan.planned.value / plan.minutes.value;
  const filter = new LitresFilter(
    { value: 1, u: plan.minutes.u / plan.minutes.value },
    WANDER_PER_ROOT_MINUTE,
  );
  let predictedLPerMin = basis;
  const inTime = [...readings].sort((a, b) => a.atMs - b.atMs);
  for (const { fromMs, toMs } of stretches) {
    let atMs = fromMs;
    const advanceTo = (nextMs: number): void => {
      const minutes = Math.max(0, nextMs - atMs) / MS_PER_MIN;
      filter.advance({ predictedL: predictedLPerMin * minutes, minutes });
      atMs = Math.max(atMs, nextMs);
    };
    for (const reading of inTime.filter((each) => each.atMs >= fromMs && each.atMs <= toMs)) {
      advanceTo(reading.atMs);
      if (reading.is === 'litres') filter.read(reading.means, reading.litres, reading.doubt);
      else predictedLPerMin = basis * paceOfPush(plan, reading.overCabinKPa);
    }
    advanceTo(toMs);
  }
  return { filter, predictedLPerMin };
}

function rateOf({ filter, predictedLPerMin }: Ran): Estimate {
  const { value, u } = filter.pace();
  return { value: predictedLPerMin * value, u: predictedLPerMin * u };
}

/** A flow that has all but stopped is told to go on at a hundredth of what was predicted: its end stays a time. */
const LEAST_PACE = 0.01;

/**
 * The ends of T at a pace that is two standard deviations higher or lower, V moving with it as far as it hangs on it; what is not
 * known of V beside that, of the planned amount, and the wander of x until then, are joined to each end by squares. Below zero
 * it is the time since it was full.
 */
function timeLeft({ planned }: FlowPlan, { filter, predictedLPerMin }: Ran): Band {
  const { value: soFar, u: soFarU } = filter.litres();
  const { value: seen, u: paceU } = filter.pace();
  const pace = Math.max(LEAST_PACE, seen);
  if (!(predictedLPerMin > 0)) return { early: 0, middle: 0, late: 0 };
  const left = planned.value - soFar;
  const litresByPace = paceU > 0 ? filter.together() / (paceU * paceU) : 0;
  const minutesAt = (x: number): number => (left - litresByPace * (x - pace)) / (x * predictedLPerMin);
  const middle = minutesAt(pace);
  const wide = exp((2 * paceU) / pace);
  const alone = Math.max(0, soFarU * soFarU - litresByPace * litresByPace * paceU * paceU);
  const ofLitres = (2 * Math.sqrt(alone + planned.u * planned.u)) / (pace * predictedLPerMin);
  const ofWander = 2 * WANDER_PER_ROOT_MINUTE * Math.sqrt(Math.abs(middle) / 3) * middle;
  const beside = ofLitres * ofLitres + ofWander * ofWander;
  const end = (x: number): number => {
    const apart = minutesAt(x) - middle;
    return Math.sqrt(apart * apart + beside);
  };
  return {
    early: MS_PER_MIN * (middle - end(pace * wide)),
    middle: MS_PER_MIN * middle,
    late: MS_PER_MIN * (middle + end(pace / wide)),
  };
}
