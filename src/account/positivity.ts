// No store holds less than nothing, nor more than there is room for: what chance put beyond a wall is brought back to it.
import type { Estimator } from './estimator.ts';

/** A store whose best value lies beyond a wall by no more than this many standard deviations is there by chance. */
const BY_CHANCE = 2;
/** More rounds than this would be a fault of the search, since each pins or frees one store. */
const MOST_ROUNDS_PER_STORE = 4;

export interface Walls {
  readonly place: number;
  readonly lowKg: number;
  readonly highKg: number;
}

/**
 * Best values with every wall kept.
 *
 * Active set: the store that is furthest beyond a wall is pinned to it by an exact reading, again and again; one that would come
 * back by itself, once others are pinned, is freed. What lies beyond a wall by more than chance is evidence of an error: it is left
 * as it is, and said.
 * Only best values are moved: the doubt stays that of the free estimate, and its band is cut off at the walls.
 * @returns best values by place, of the stores whose value it changes; empty where nothing is beyond a wall
 * @source nocedal-wright (active set for a convex quadratic programme), held against every set of pins in the tests
 */
export function withinWalls(estimator: Estimator, walls: readonly Walls[]): ReadonlyMap<number, number> {
  const pinned = new Map<number, number>();
  const candidates = walls.filter((wall) => isByChance(estimator, wall));
  if (candidates.length === 0) return new Map();
  const near = walls.filter((wall) => candidates.includes(wall) || isInside(estimator, wall));
  let held = estimator;
  for (let round = 0; round <= MOST_ROUNDS_PER_STORE * near.length; round++) {
    held = pin(estimator, pinned);
    const freed = [...pinned].find(([place, valueKg]) =>
      pullsInward(estimator, pinned, place, valueKg, near),
    );
    if (freed !== undefined) {
      pinned.delete(freed[0]);
      continue;
    }
    const worst = furthest(held, near, pinned);
    if (worst === null) break;
    pinned.set(worst.place, held.mean(worst.place) < worst.lowKg ? worst.lowKg : worst.highKg);
  }
  return new Map(near.map(({ place }) => [place, held.mean(place)]));
}

function pin(estimator: Estimator, pinned: ReadonlyMap<number, number>): Estimator {
  const held = estimator.clone();
  for (const [place, value] of pinned) held.read({ places: [place], value, u: 0 });
  return held;
}

/** Without its pin, and with those of the others, it would stay inside: the multiplier has the wrong sign. */
function pullsInward(
  estimator: Estimator,
  pinned: ReadonlyMap<number, number>,
  place: number,
  valueKg: number,
  walls: readonly Walls[],
): boolean {
  if (pinned.size < 2) return false;
  const others = new Map([...pinned].filter(([other]) => other !== place));
  const free = pin(estimator, others).mean(place);
  const wall = walls.find((each) => each.place === place);
  return wall !== undefined && (valueKg === wall.lowKg ? free >= wall.lowKg : free <= wall.highKg);
}

function furthest(
  held: Estimator,
  walls: readonly Walls[],
  pinned: ReadonlyMap<number, number>,
): Walls | null {
  let worst: Walls | null = null;
  let worstBy = 0;
  for (const wall of walls) {
    const byKg = pinned.has(wall.place) ? 0 : beyond(held, wall);
    if (byKg > worstBy) {
      worst = wall;
      worstBy = byKg;
    }
  }
  return worst;
}

/** Rounding is no water: a microgram beyond a wall is on it. */
const ROUNDING_KG = 1e-9;

function beyond(estimator: Estimator, { place, lowKg, highKg }: Walls): number {
  const value = estimator.mean(place);
  const by = Math.max(lowKg - value, value - highKg);
  return by > ROUNDING_KG ? by : 0;
}

function isInside(estimator: Estimator, wall: Walls): boolean {
  return beyond(estimator, wall) === 0;
}

function isByChance(estimator: Estimator, wall: Walls): boolean {
  const by = beyond(estimator, wall);
  return by > 0 && by * by <= BY_CHANCE * BY_CHANCE * estimator.variance(wall.place);
}
