// How much went out by counted strokes: one error that all strokes share, and a little from stroke to stroke.
import { type Doubted, type Propagated, propagate } from '../../maths/index.ts';
import { stayAboveZero, stayAtLeastZero } from '../stay-within.ts';
import { type BudgetShare, doubtBudget } from './doubt-budget.ts';

export type StrokeInput = 'count' | 'strokeM3' | 'calibration' | 'scatter';

export interface StrokesTold {
  /** How many, and the doubt of the count itself: 0 for a counter, more for a tally. */
  readonly count: Doubted;
  /** Volume of one stroke as it is booked, m³. */
  readonly strokeM3: number;
  /** Relative error of the booked stroke, the same for all: its value 0 unless a bias is known. */
  readonly calibration: Doubted;
  /** Relative scatter of a single stroke, one standard deviation. */
  readonly strokeScatter: number;
}

export interface StrokesDrawn {
  /** m³ */
  readonly drawnM3: Propagated<StrokeInput>;
  /** What all counts with this stroke share, m³: it adds up as it is. */
  readonly systematicUM3: number;
  /** What is new in this count, m³. */
  readonly randomUM3: number;
  readonly budget: readonly BudgetShare<'calibration' | 'count' | 'scatter'>[];
}

/**
 * The volume of counted strokes: V = N v (1 + b), with u² = (N v u_b)² + N (v s)² + (v u_N)².
 *
 * The scatter of single strokes averages out with √N; the calibration does not. Air in the piston makes strokes small: a bias,
 * not a scatter.
 * @param told count from 0; `strokeM3` m³, above 0; `calibration` and `strokeScatter` as parts of a stroke, from 0
 * @throws OutsideRange outside those ranges and for NaN; RangeError for a doubt below 0
 * @source gum, 5.1.2
 * @example
 * volumeByStrokes({
 *   count: { value: 800, u: 0 }, strokeM3: 25e-6, calibration: { value: 0, u: 0.01 }, strokeScatter: 0.02,
 * }).drawnM3.u // 0.2005e-3 m³
 */
export function volumeByStrokes({ count, strokeM3, calibration, strokeScatter }: StrokesTold): StrokesDrawn {
  const source = 'gum';
  stayAtLeastZero({ quantity: 'count of strokes', value: count.value, unit: 'strokes', source });
  stayAboveZero({ quantity: 'volume of a stroke', value: strokeM3, unit: 'm³', source });
  stayAtLeastZero({ quantity: 'scatter of a stroke', value: strokeScatter, unit: 'of 1', source });
  const drawnM3 = propagate<StrokeInput>({
    inputs: {
      ...{ count, calibration },
      strokeM3: { value: strokeM3, u: 0 },
      scatter: { value: 0, u: strokeScatter * Math.sqrt(count.value) },
    },
    formula: (on, x) =>
      on.times(x.strokeM3, on.plus(on.times(x.count, on.shifted(x.calibration, 1)), x.scatter)),
  });
  const uOf = (name: StrokeInput): number => drawnM3.parts.find(({ of }) => of === name)?.u ?? 0;
  const [scatterU, countU] = [uOf('scatter'), uOf('count')];
  return {
    drawnM3,
    systematicUM3: uOf('calibration'),
    randomUM3: Math.sqrt(scatterU * scatterU + countU * countU),
    budget: doubtBudget<StrokeInput, 'calibration' | 'count' | 'scatter'>(drawnM3, {
      // The stroke is booked, not read: what it may be off by is its calibration.
      ...{ strokeM3: 'calibration', calibration: 'calibration', count: 'count', scatter: 'scatter' },
    }),
  };
}
