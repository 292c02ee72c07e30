// Daily use as the book tells it: for each grade what the uses took less what was made, from day line to day line.
import { msPerDay } from '../ground/units/index.ts';

/** One closed interval of a grade. */
export interface UsageDay {
  readonly day: number;
  readonly endMs: number;
  /** Days that the interval spans: 2 when a count was missed. */
  readonly days: number;
  readonly peopleAboard: number;
  /** Uses less making, in milligrams; negative when more was made than used. */
  readonly netMg: number;
  readonly entry: string;
}

interface OpenUsage {
  netMg: number;
  /** Instant of the last line at which every counter of this grade was read. */
  sinceMs: number;
  /** A counter of this grade told no amount: what is being counted is less than what was used. */
  isSpoilt: boolean;
}

/** What is being counted, and what is closed, by grade. */
export interface UsageData {
  readonly open: ReadonlyMap<string, OpenUsage>;
  readonly days: ReadonlyMap<string, readonly UsageDay[]>;
}

/** Only so many closed intervals are kept: a learner looks no further back. */
export const MOST_USAGE_DAYS = 90;

/** Grade by grade: what is being counted, and what is closed. */
export class Usage {
  readonly #open: Map<string, OpenUsage>;
  readonly #days: Map<string, readonly UsageDay[]>;

  constructor(
    open: Iterable<readonly [string, OpenUsage]> = [],
    days: Iterable<readonly [string, readonly UsageDay[]]> = [],
  ) {
    this.#open = new Map([...open].map(([grade, usage]) => [grade, { ...usage }]));
    this.#days = new Map(days);
  }

  /** An opening tells the stocks anew: what was being counted is inside. */
  start(grade: string, atMs: number): void {
    this.#open.set(grade, { netMg: 0, sinceMs: atMs, isSpoilt: false });
  }

  /** Use is positive, making is negative. */
  count(grade: string, massMg: number): void {
    const open = this.#open.get(grade);
    if (open !== undefined) open.netMg += massMg;
  }

  spoil(grade: string): void {
    const open = this.#open.get(grade);
    if (open !== undefined) open.isSpoilt = true;
  }

  days(grade: string): readonly UsageDay[] {
    return this.#days.get(grade) ?? [];
  }

  grades(): readonly string[] {
    return [...this.#open.keys()];
  }

  /** Closes the interval of a grade, unless one of its counters was not read: then it stays open. */
  close(
    grade: string,
    line: { day: number; atMs: number; peopleAboard: number; complete: boolean; entry: string },
  ): void {
    const open = this.#open.get(grade);
    if (open === undefined || !line.complete) return;
    const days = Math.round((line.atMs - open.sinceMs) / msPerDay);
    // A second line on one day closes nothing: what it counted belongs to the day after.
    if (days < 1) return;
    if (!open.isSpoilt)
      this.#keep(grade, {
        day: line.day,
        endMs: line.atMs,
        days,
        peopleAboard: line.peopleAboard,
        netMg: open.netMg,
        entry: line.entry,
      });
    this.start(grade, line.atMs);
  }

  #keep(grade: string, closed: UsageDay): void {
    this.#days.set(grade, [...this.days(grade).slice(-(MOST_USAGE_DAYS - 1)), closed]);
  }

  clone(): Usage {
    return Usage.of(this.data());
  }

  data(): UsageData {
    return {
      open: new Map([...this.#open].map(([grade, open]) => [grade, { ...open }])),
      days: new Map(this.#days),
    };
  }

  static of({ open, days }: UsageData): Usage {
    return new Usage(open, days);
  }
}
