// What a command is: how it is called and what it takes.
import type { Flag } from './flags.ts';

export interface Argument {
  readonly name: string;
  readonly what: string;
  readonly optional?: true;
  /** The last one may come again and again. */
  readonly many?: true;
}

export interface Command {
  /** `['log', 'drink']` */
  readonly path: readonly string[];
  /** What it does, in a line. */
  readonly does: string;
  readonly args: readonly Argument[];
  /** Flags of its own, by name, or told anew where it gives one a narrower meaning. */
  readonly flags: readonly (string | Flag)[];
  /** Command lines with what they do; the tests run each of them on the practice book. */
  readonly examples: readonly (readonly [line: string, does: string])[];
  /** Sentences under the examples. */
  readonly more?: readonly string[];
  /** Takes flags that only its first argument knows: the fields of an entry kind. */
  readonly open?: true;
}
