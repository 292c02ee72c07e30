// One call of a command: its arguments and flags as they were typed, and the world that it runs in.
import { nearest } from '../../ground/units/index.ts';
import type { Command } from './command.ts';
import type { Found } from './find-command.ts';
import { wrongUse } from './problem.ts';
import type { Terminal } from './terminal.ts';
import type { Typed } from './typed.ts';
import { readWholeNumber } from './whole-number.ts';

const NONE: Command = {
  path: [],
  does: '',
  args: [],
  flags: [],
  examples: [],
};

export class Call {
  readonly terminal: Terminal;
  readonly command: Command;
  readonly args: readonly string[];
  readonly fields: ReadonlyMap<string, string>;
  /** Told on standard error before anything else that is told there. */
  readonly notes: string[] = [];
  readonly #flags: Typed['flags'];

  /** @param found null where the words name no command: then only its flags may be asked for */
  constructor(terminal: Terminal, found: Found | null, typed: Pick<Typed, 'flags'>) {
    this.terminal = terminal;
    this.command = found?.command ?? NONE;
    this.args = found?.args ?? [];
    this.fields = found?.fields ?? new Map();
    this.#flags = typed.flags;
  }

  has(name: string): boolean {
    return this.#flags.has(name);
  }

  text(name: string): string | undefined {
    return this.#flags.get(name)?.[0];
  }

  texts(name: string): readonly string[] {
    return (this.#flags.get(name) ?? []).flatMap((value) => value ?? []);
  }

  /** An argument that the table of commands has as needed. */
  arg(at: number): string {
    return this.args[at] ?? '';
  }

  wholeNumber(name: string, range: { readonly least: number; readonly most: number }): number | undefined {
    const text = this.text(name);
    return text === undefined ? undefined : readWholeNumber(text, { flag: `--${name}`, ...range });
  }

  oneOf<const Word extends string>(name: string, words: readonly Word[]): Word | undefined {
    const text = this.text(name);
    if (text === undefined) return undefined;
    const word = words.find((each) => each === text);
    if (word !== undefined) return word;
    const data = {
      flag: `--${name}`,
      received: text.slice(0, 60),
      wanted: words,
      nearest: nearest(text, words),
    };
    throw wrongUse('flag-value-wrong', data);
  }

  /** Both at once say two things. */
  holdApart(first: string, second: string): void {
    if (this.has(first) && this.has(second)) {
      throw wrongUse('flags-clash', { first: `--${first}`, second: `--${second}` });
    }
  }

  /** Whether a person sits in front of it and may be asked. */
  mayAsk(): boolean {
    const { terminal } = this;
    return terminal.stdinIsTty && terminal.stderr.isTty && !this.has('no-input');
  }
}
