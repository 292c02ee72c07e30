// Run rules of a control chart: what in a row of values is more than the play of chance around a centre.

export interface ChartedValue {
  readonly value: number;
  /** `below`: less than the value, nobody knows how much; `above`: more. */
  readonly censored: 'no' | 'below' | 'above';
  /** Nothing was measured for so long before it that no run goes on. */
  readonly afterGap: boolean;
}

export interface ChartLimits {
  readonly centre: number;
  readonly low: number;
  readonly high: number;
}

export type RunRule = 'beyond the limits' | 'on one side' | 'rising' | 'falling';

/** First and last place of the values that broke a rule. */
export interface RunSignal {
  readonly rule: RunRule;
  readonly from: number;
  readonly to: number;
  /** Of `beyond` and `on one side`: which side. */
  readonly side: 'high' | 'low' | null;
}

/** Values in a row on one side of the centre. */
export const SAME_SIDE = 8;
/** Values in a row, each above the one before it. */
export const STEADY = 6;

/**
 * Three rules and no more, because each adds false alarms: a value beyond the limits, eight in a row on one side of the
 * centre, six in a row rising or falling.
 *
 * A censored value is on a side only where all that it can be is, and is neither above nor below its neighbour. A gap ends
 * every run. A run is told once, whole.
 * @source nist-control-charts, 6.3.2, of which these three are chosen
 * @example runSignals([{ value: 9, censored: 'no', afterGap: false }], { centre: 5, low: 2, high: 8 }).length // 1
 */
export function runSignals(values: readonly ChartedValue[], limits: ChartLimits): readonly RunSignal[] {
  return [
    ...beyond(values, limits),
    ...sides(values, limits.centre),
    ...steady(values, 'rising'),
    ...steady(values, 'falling'),
  ];
}

function beyond(values: readonly ChartedValue[], { low, high }: ChartLimits): RunSignal[] {
  return values.flatMap((each, at) => {
    const side = each.value > high && each.censored !== 'below' ? 'high' : lowSide(each, low);
    return side === null ? [] : [{ rule: 'beyond the limits' as const, from: at, to: at, side }];
  });
}

function lowSide({ value, censored }: ChartedValue, low: number): 'low' | null {
  return censored !== 'above' && value < low ? 'low' : null;
}

function sides(values: readonly ChartedValue[], centre: number): RunSignal[] {
  return runsOf(values.length, SAME_SIDE, (at) => {
    const [here, before] = [values[at], values[at - 1]];
    if (here === undefined || sideOf(here, centre) === null) return 'none';
    const goesOn = before !== undefined && !here.afterGap && sideOf(before, centre) === sideOf(here, centre);
    return goesOn ? 'on' : 'new';
  }).map(([from, to]) => {
    const first = values[from];
    return { rule: 'on one side', from, to, side: first === undefined ? null : sideOf(first, centre) };
  });
}

function sideOf({ value, censored }: ChartedValue, centre: number): 'high' | 'low' | null {
  if (censored !== 'below' && value > centre) return 'high';
  if (censored !== 'above' && value < centre) return 'low';
  // Less than the centre at the most is less than the centre.
  if (value === centre && censored !== 'no') return censored === 'below' ? 'low' : 'high';
  return null;
}

function steady(values: readonly ChartedValue[], rule: 'rising' | 'falling'): RunSignal[] {
  return runsOf(values.length, STEADY, (at) => {
    const [here, before] = [values[at], values[at - 1]];
    if (here === undefined || here.censored !== 'no') return 'none';
    if (before === undefined || before.censored !== 'no' || here.afterGap) return 'new';
    const goesOn = rule === 'rising' ? here.value > before.value : here.value < before.value;
    return goesOn ? 'on' : 'new';
  }).map(([from, to]) => ({ rule, from, to, side: null }));
}

/** Runs of at least so many; a place goes on with the run before it, begins a new one, or is in none. */
function runsOf(
  count: number,
  least: number,
  step: (at: number) => 'on' | 'new' | 'none',
): readonly (readonly [from: number, to: number])[] {
  const runs: [number, number][] = [];
  let from = 0;
  for (let at = 0; at <= count; at += 1) {
    const how = at === count ? 'none' : step(at);
    if (how === 'on') continue;
    if (at - from >= least) runs.push([from, at - 1]);
    from = how === 'none' ? at + 1 : at;
  }
  return runs;
}
