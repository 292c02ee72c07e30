// What a trace remembers of one account that suspect water came into: when, how much, from where, and by which way first.
import type { AccountAt, FlowStep } from './step.ts';

/** One movement on the way of suspect water. */
export interface Hop {
  readonly from: AccountAt;
  readonly to: AccountAt;
  readonly entry: string;
  readonly atMs: number;
  readonly hose: string | null;
  /** The movement by which it had come to where this one took it; null where it started from a source. */
  readonly before: Hop | null;
}

export interface TouchedFrom {
  massMg: number;
  firstMs: number;
  lastMs: number;
  entryCount: number;
  /** The oldest first; no more than are told. */
  readonly entries: string[];
}

/** Entries that are named for one way in; a buffer is filled every day. */
const MOST_ENTRIES = 8;
/** A sum of parts may lack this much of the whole milligram that it is. */
const TOLERANCE_MG = 1e-3;

export class Touched {
  /** Suspect water that came in, all together. */
  receivedMg = 0;
  #sinceCutMg = 0;
  firstMs: number | null = null;
  lastMs: number | null = null;
  /** Whether any of it came straight from a source by the hose that was sampled. */
  bySampledHose = false;
  hop: Hop | null = null;
  readonly from = new Map<AccountAt, TouchedFrom>();

  /** A contact is made by the movement that brings the sum to a whole milligram: what is less is nowhere. */
  receive(
    step: FlowStep,
    carriedMg: number,
    from: { readonly hop: Hop | null; readonly isSampled: boolean },
  ): void {
    const before = Math.floor(this.receivedMg + TOLERANCE_MG);
    const beforeSinceCut = this.#sinceCutMg + TOLERANCE_MG;
    this.receivedMg += carriedMg;
    this.#sinceCutMg += carriedMg;
    if (Math.floor(this.receivedMg + TOLERANCE_MG) > before) {
      this.firstMs ??= step.atMs;
      this.lastMs = step.atMs;
    }
    const crosses = beforeSinceCut < 1 && this.#sinceCutMg + TOLERANCE_MG >= 1;
    if (crosses || this.hop === null) this.hop = hopOf(step, from.hop);
    this.bySampledHose ||= from.isSampled;
    this.#count(step, carriedMg);
  }

  /** What was posted too much never came. */
  giveBack(to: AccountAt, backMg: number): void {
    this.receivedMg = Math.max(0, this.receivedMg - backMg);
    const by = this.from.get(to);
    if (by !== undefined) by.massMg = Math.max(0, by.massMg - backMg);
  }

  /** What was there is spoken well of: what comes now comes anew. */
  cut(): void {
    this.#sinceCutMg = 0;
  }

  #count({ from, atMs, entry }: FlowStep, carriedMg: number): void {
    const known = this.from.get(from);
    if (known === undefined) {
      const first = { massMg: carriedMg, firstMs: atMs, lastMs: atMs, entryCount: 1, entries: [entry] };
      this.from.set(from, first);
      return;
    }
    known.massMg += carriedMg;
    known.lastMs = atMs;
    if (known.entries.at(-1) === entry) return;
    known.entryCount += 1;
    if (known.entries.length < MOST_ENTRIES) known.entries.push(entry);
  }
}

function hopOf({ from, to, entry, atMs, hose }: FlowStep, before: Hop | null): Hop {
  return { from, to, entry, atMs, hose, before };
}
