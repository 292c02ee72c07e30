// How far up and down the gauging plot goes, wherever it is drawn.
import type { GaugingSheet } from '../sheets/store-story.ts';

/** Room above the highest thing that is drawn, as a factor. */
const ROOM = 1.04;
/** A ± that reaches farther beyond full says nothing that a wider picture would say better. */
const MOST = 1.3;

/** The whole of the store from empty to full, and more where somebody believed or read more; litres. */
export function plotRange({
  capacityL,
  estimates,
  readings,
}: GaugingSheet): readonly [low: number, high: number] {
  const values = [...estimates.map(({ volume }) => volume.value), ...readings.map(({ read }) => read.value)];
  const ends = readings.map(({ read }) => Math.min(read.value + (read.u95 ?? 0), capacityL * MOST));
  return [Math.min(0, ...values), ROOM * Math.max(capacityL, ...values, ...ends)];
}
