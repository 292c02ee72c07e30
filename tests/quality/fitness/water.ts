// Water in a store or a hose as the naive model has it: all that was ever said against it.
import type { NaiveResult } from './naive-results.ts';

const FOR_EVER = Number.POSITIVE_INFINITY;

interface Hold {
  readonly sinceMs: number;
  /** Open again from then on; nought: it was never waived. */
  readonly waivedUntilMs: number;
  /** A result set it: a worse use answers it. */
  readonly ofResults: boolean;
  /** No word brings this water back without a treatment by two. */
  readonly needsTreatment: boolean;
  /** Water went through a unit that it may not enter. */
  readonly ofUnit: boolean;
  /** What failed limits that were chosen. */
  readonly failed?: readonly NaiveResult[];
}

/** Water in a store or a hose, and all that was ever said against it. */
export class Water {
  holds = new Map<string, Hold>();
  conditional = new Set<string>();
  /** Grades of all that is mixed in it; null is of no known grade. */
  grades = new Set<string | null>();
  everHeld = new Set<string>();
  biocides = new Set<string>();
  noWord = true;
  certificate = false;
  endsMs = FOR_EVER;
  /** Ran dry, or nothing was ever in it. */
  dry = true;
  /** Declared empty with water in it. */
  setAside = false;
  results: NaiveResult[] = [];
  /** What was added; null: a treatment by a recipe, which answers every sample before it. */
  added: { readonly biocide: string | null; readonly atMs: number }[] = [];
  badSinceMs = Number.NEGATIVE_INFINITY;
  sameSinceMs = Number.NEGATIVE_INFINITY;
  inflowMg = 0;
  filledFrom: string | null = null;
  isBroughtBack = false;

  hold(name: string, atMs: number, more: Partial<Hold> = {}): void {
    const before = this.holds.get(name);
    const failed = [...(before?.failed ?? []), ...(more.failed ?? [])];
    if (before === undefined && more.needsTreatment === true) this.isBroughtBack = false;
    this.holds.set(name, {
      ...{ sinceMs: before?.sinceMs ?? atMs, waivedUntilMs: more.waivedUntilMs ?? 0 },
      ofResults: more.ofResults ?? before?.ofResults ?? false,
      ofUnit: more.ofUnit ?? before?.ofUnit ?? false,
      needsTreatment: more.needsTreatment ?? before?.needsTreatment ?? false,
      ...(failed.length > 0 && { failed: [...new Map(failed.map((one) => [keyOf(one), one])).values()] }),
    });
  }
}

const keyOf = ({ entry, parameter, value }: NaiveResult) => `${entry} ${parameter} ${value}`;
