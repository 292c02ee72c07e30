// The values that a calculator works with, each with its doubt and where it comes from.

export type GivenBy = 'typed' | 'book' | 'outpost file' | 'assumed';

/** One number. A list of a flag is several of them, in their order. */
export interface Input {
  readonly name: string;
  readonly value: number;
  /** One standard deviation; null where nobody said a ±: the value is then taken as exact. */
  readonly u: number | null;
  /** Name of the unit that `value` is in; empty for a plain number. */
  readonly unit: string;
  readonly by: GivenBy;
  /** What it was typed as, or which record or key it comes from. */
  readonly from: string;
  /** Entries of the book that it rests on. */
  readonly entries: readonly string[];
}

/** Reads by name; a name that was not given is a fault of the calculator, which has declared what it needs. */
export class Inputs {
  readonly all: readonly Input[];
  /** Names of the book and choices, as they were understood. */
  readonly names: ReadonlyMap<string, string>;

  constructor(all: readonly Input[], names: ReadonlyMap<string, string> = new Map()) {
    this.all = all;
    this.names = names;
  }

  has(name: string): boolean {
    return this.all.some((input) => input.name === name);
  }

  number(name: string): number {
    const value = this.maybe(name);
    if (value === null) throw new Error(`the input ${name} is not there`);
    return value;
  }

  maybe(name: string): number | null {
    return this.all.find((input) => input.name === name)?.value ?? null;
  }

  list(name: string): readonly number[] {
    return this.all.filter((input) => input.name === name).map(({ value }) => value);
  }

  choice(name: string): string | null {
    return this.names.get(name) ?? null;
  }

  /** The same with one value changed. */
  changed(index: number, value: number): Inputs {
    return new Inputs(
      this.all.map((input, k) => (k === index ? { ...input, value } : input)),
      this.names,
    );
  }
}
