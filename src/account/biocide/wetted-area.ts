// How much wall a store has for its water: from the outpost file, else from its capacity and the usual shape of its kind.
import { pow } from '../../ground/maths/index.ts';
import type { Store, StoreKind } from '../../outpost/index.ts';

export interface WettedArea {
  readonly areaM2: number;
  /** One standard deviation. */
  readonly uM2: number;
  readonly from: 'file' | 'shape';
}

/**
 * Area over volume to the power of two thirds: a cylinder twice as long as wide 5.8, a cube 6, a pillow four times as wide as
 * thick 7.6. The shapes are ours, without a source; all stores of a kind have the same one, so that they compare.
 */
const SHAPE: Readonly<Record<StoreKind, number>> = {
  tank: 5.8,
  vehicleTank: 5.8,
  container: 6,
  wasteContainer: 6,
  buffer: 6,
  softBag: 7.6,
};
/** Half of the way from a ball (4.8) to a thin bag. Ours, no source. */
const SHAPE_RELATIVE_U = 0.15;
const CM2_PER_M2 = 10_000;
const L_PER_M3 = 1000;

/**
 * The wall that the water of a store touches. All of it counts as wetted however little is inside: a bladder closes on its
 * water, and in weightlessness water creeps along every wall.
 * @param store `kind`, `capacityL` above 0, and `wettedAreaCm2` where the outpost file tells it
 * @returns m²; exact where the file tells it
 * @source none: shapes are assumed
 * @example wettedArea({ kind: 'container', capacityL: 22 }).areaM2 // 0.471
 */
export function wettedArea(store: Pick<Store, 'kind' | 'capacityL' | 'wettedAreaCm2'>): WettedArea {
  const { kind, capacityL, wettedAreaCm2 } = store;
  if (wettedAreaCm2 !== undefined) return { areaM2: wettedAreaCm2 / CM2_PER_M2, uM2: 0, from: 'file' };
  const areaM2 = SHAPE[kind] * pow(capacityL / L_PER_M3, 2 / 3);
  return { areaM2, uM2: SHAPE_RELATIVE_U * areaM2, from: 'shape' };
}
