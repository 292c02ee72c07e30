// Spare beds on the shelf: what the outpost file had on Day 1, and what entries have brought, used and counted since.
import type { AnyEntry } from '../../book/index.ts';
import { msPerDay } from '../../ground/units/index.ts';
import type { Outpost, Part } from '../../outpost/index.ts';

export interface Spares {
  readonly part: string;
  readonly count: number;
  /** Entries that changed or counted it. */
  readonly entries: readonly string[];
}

/** A part of a change that was entered as used within this time is the one that the change used. */
const SAME_ACT_MS = msPerDay / 2;

/** The part that a bed of a purifier is replaced with: one whose life is told in litres and whose name says bed. */
export function bedPart(outpost: Outpost): Part | null {
  return outpost.parts.find(({ id, lifeL }) => lifeL !== undefined && /\bbed\b/i.test(id)) ?? null;
}

export class SpareCount {
  readonly #part: string;
  #count: number;
  readonly #entries: string[] = [];
  readonly #usedMs: number[] = [];

  constructor({ id, onDayOne }: Part) {
    this.#part = id;
    this.#count = onDayOne;
  }

  get spares(): Spares {
    return { part: this.#part, count: Math.max(0, this.#count), entries: this.#entries };
  }

  hear({ kind, body, id, happenedAtMs }: AnyEntry): void {
    if (kind !== 'part-received' && kind !== 'part-used' && kind !== 'part-counted') return;
    if (body.part !== this.#part) return;
    this.#entries.push(id);
    if (kind === 'part-received') this.#count += body.count;
    else if (kind === 'part-counted') this.#count = body.count;
    else if (!this.#isTaken(happenedAtMs)) this.#take(happenedAtMs, body.count);
  }

  /** A bed was changed: it used one, whether or not somebody entered that, too. */
  changed(atMs: number, entry: string): void {
    if (this.#isTaken(atMs)) return;
    this.#entries.push(entry);
    this.#take(atMs, 1);
  }

  #isTaken(atMs: number): boolean {
    return this.#usedMs.some((used) => Math.abs(used - atMs) < SAME_ACT_MS);
  }

  #take(atMs: number, count: number): void {
    this.#usedMs.push(atMs);
    this.#count -= count;
  }
}
