// How many people were aboard for how long since the last line, and who of them came last.
import type { AnyEntry } from '../book/index.ts';
import { msPerDay } from '../ground/units/index.ts';
import type { Fold } from './fold.ts';

/** What changed in the crew, so that a learner may forget what it cannot know of others. */
export interface CrewListener {
  readonly onArrived: () => void;
  /** So great a share of those who stay may be others than before. */
  readonly onMixed: (share: number) => void;
}

/** Before every entry, as the fold stands then. */
export class CrewCount {
  #untilMs: number | null = null;
  #personMs = 0;
  #newcomerMs = 0;
  #changed = false;
  /** People beyond those whom the outpost file counts. */
  #newcomers = 0;
  readonly #cameWith = new Map<string, number>();
  readonly #listener: CrewListener;

  constructor(listener: CrewListener) {
    this.#listener = listener;
  }

  /** Time has gone by with those who were aboard until now. */
  advance(fold: Fold, atMs: number): void {
    const fromMs = this.#untilMs;
    if (fromMs === null || atMs <= fromMs) return;
    this.#personMs += fold.peopleAboard * (atMs - fromMs);
    this.#newcomerMs += Math.min(this.#newcomers, fold.peopleAboard) * (atMs - fromMs);
    this.#untilMs = atMs;
  }

  /** What an entry says of who comes and goes; after `advance`. */
  hear(fold: Fold, entry: AnyEntry): void {
    if (entry.kind === 'opening') this.start(entry.body.asOfMs);
    if (entry.kind === 'roster') {
      const { change, people } = entry.body;
      if (change === 'arrive') this.#arrive(people, '');
      else this.#depart(fold, people, '');
    }
    if (entry.kind === 'visit-berth') this.#arrive(entry.body.peopleArrive, entry.body.visit);
    if (entry.kind === 'visit-depart') this.#depart(fold, entry.body.peopleDepart, entry.body.visit);
  }

  #arrive(people: number, visit: string): void {
    if (people === 0) return;
    this.#changed = true;
    this.#cameWith.set(visit, people);
    this.#newcomers += people;
    this.#listener.onArrived();
  }

  /** A ferry that takes as many as it brought takes those whom it brought; any other may take some of the others. */
  #depart(fold: Fold, people: number, visit: string): void {
    if (people === 0) return;
    this.#changed = true;
    const takesItsOwn = visit !== '' && this.#cameWith.get(visit) === people;
    const left = fold.peopleAboard - people;
    const mixed = takesItsOwn ? 0 : Math.min(people, this.#newcomers);
    this.#newcomers = Math.max(0, this.#newcomers - people);
    if (mixed > 0 && left > 0) this.#listener.onMixed(Math.min(1, mixed / left));
  }

  start(atMs: number): void {
    this.#untilMs = atMs;
    this.#personMs = 0;
    this.#newcomerMs = 0;
    this.#changed = false;
  }

  /**
   * What has been counted up to a line, and begins anew.
   * @param line how many people it says; who came and went is surer, where that was told
   */
  take(
    atMs: number,
    line: { readonly people: number; readonly days: number },
  ): { readonly personDays: number; readonly newcomerDays: number } {
    const counted = this.#personMs / msPerDay;
    const personDays = this.#changed ? counted : line.people * line.days;
    const newcomerDays = Math.min(personDays, this.#newcomerMs / msPerDay);
    this.start(atMs);
    return { personDays, newcomerDays };
  }
}
