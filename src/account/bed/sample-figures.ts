// Listens to results, sample by sample, for figures that contradict one another.
import type { AnyEntry } from '../../book/index.ts';
import { type Contradiction, contradictions } from './conditioning.ts';

export interface SampleContradiction extends Contradiction {
  readonly sample: string;
  readonly place: string;
  readonly atMs: number;
  /** Entries that the figures stand in. */
  readonly entries: readonly string[];
}

interface Told {
  place: string;
  atMs: number;
  readonly entries: string[];
  readonly figures: { parameter: string; value: number; unit: string; below: boolean }[];
}

export class SampleFigures {
  readonly #told = new Map<string, Told>();

  /** Figures of one sample may come in several results. */
  hear(entry: AnyEntry): void {
    if (entry.kind !== 'result') return;
    const { sample, store, point, values } = entry.body;
    const told = this.#told.get(sample) ?? { place: '', atMs: 0, entries: [], figures: [] };
    told.place = store ?? point ?? told.place;
    told.atMs = entry.happenedAtMs;
    told.entries.push(entry.id);
    for (const { parameter, value, unit, below } of values)
      told.figures.push({ parameter, value, unit, below: below === true });
    this.#told.set(sample, told);
  }

  get contradictions(): readonly SampleContradiction[] {
    return [...this.#told].flatMap(([sample, { place, atMs, entries, figures }]) =>
      contradictions(figures).map((found) => ({ ...found, sample, place, atMs, entries })),
    );
  }
}
