// Counters as they really run through a story, whatever is read of them.
import type { World } from './world.ts';

/** Counters as they really run; a story reads them. */
export class Meters {
  readonly #world: World;
  readonly #totals = new Map<string, number>();

  constructor(world: World) {
    this.#world = world;
    for (const { id, from } of world.counters) this.#totals.set(id, from ?? 0);
  }

  run(minutes: number, unevenness: number): void {
    for (const { id, aDay, step } of this.#world.counters) {
      const more = Math.round((aDay * (minutes / 1440) * (0.5 + unevenness)) / step) * step;
      this.#totals.set(id, (this.#totals.get(id) ?? 0) + more);
    }
  }

  read(id: string): number {
    const { step, rollsOverAt } = this.#world.counters.find((each) => each.id === id) ?? { step: 1 };
    const total = this.#totals.get(id) ?? 0;
    const shown = Math.round(total / step) * step;
    return Number((rollsOverAt === undefined ? shown : shown % rollsOverAt).toFixed(2));
  }

  /** Another one counts in its place, from where it stands. */
  replace(id: string, startsAt: number): void {
    this.#totals.set(id, startsAt);
  }

  /** Amounts since the line begin anew, unless the line had no reading of them. */
  line(missing: ReadonlySet<string>): void {
    for (const { id, rollsOverAt } of this.#world.counters)
      if (rollsOverAt === undefined && !missing.has(id)) this.#totals.set(id, 0);
  }
}
