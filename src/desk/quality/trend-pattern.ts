// The pattern over stores as lines of a trend, with what their water shares.
import {
  fillingOf,
  type MeasuredPoint,
  type Pattern,
  patternOf,
  type Trait,
  type WaterHistory,
} from '../../account/index.ts';
import { dayOf } from '../../ground/units/index.ts';
import type { OutpostIndex } from '../../outpost/index.ts';
import type { TrendPattern } from '../../papers/index.ts';
import { type LineTools, toldOf } from './trend-lines.ts';

export function patternLines(
  points: readonly MeasuredPoint[],
  history: WaterHistory,
  tools: LineTools & { readonly nowMs: number; readonly index: OutpostIndex },
): TrendPattern | null {
  const { rows, nowMs, dayRule } = tools;
  const pattern = patternOf(points, { rows, nowMs, traitsOf: (point) => traitsOf(point, history, tools) });
  if (pattern === null) return null;
  return {
    ...pattern,
    isByLimit: rows.some(({ limit }) => limit !== null),
    stores: pattern.stores.map((one) => storeLine(one, tools.refOf, (ms) => dayOf(ms, dayRule))),
  };
}

function storeLine(
  { store, found, isBeyond, point }: Pattern['stores'][number],
  refOf: LineTools['refOf'],
  dayAt: (ms: number) => number,
): TrendPattern['stores'][number] {
  return { store, found, isBeyond, day: dayAt(point.atMs), told: toldOf(point), ref: refOf(point.entry) };
}

/** As the water stood when the sample was drawn; where the store stands is where the outpost file has it. */
function traitsOf(
  { store, atMs }: MeasuredPoint,
  history: WaterHistory,
  { index, dayRule }: Pick<LineTools, 'dayRule'> & { readonly index: OutpostIndex },
): readonly Trait[] {
  if (store === null) return [];
  const { sources, hoses, atMs: filledMs, visits } = fillingOf(history, store, atMs);
  const days = [...new Set(filledMs.map((ms) => dayOf(ms, dayRule)))];
  const place = index.stores.get(store)?.place;
  return [
    ...sources.map((name): Trait => ({ kind: 'from', name })),
    ...hoses.map((name): Trait => ({ kind: 'by', name })),
    ...days.map((day): Trait => ({ kind: 'filled on', name: `Day ${day}` })),
    ...visits.map((name): Trait => ({ kind: 'brought by', name })),
    ...(place === undefined ? [] : [{ kind: 'stands in', name: place } as const]),
  ];
}
