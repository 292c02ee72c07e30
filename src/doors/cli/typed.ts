// Splits the words of a command line: names, flags with their values, and what no table knows.
import { parseArgs } from 'node:util';
import { ALL_FLAGS, flagNamed } from './flags.ts';

/** A flag that no command lists: with what stood behind it, in case it turns out to be a field. */
export interface Stranger {
  /** As typed, `--frm`. */
  readonly typed: string;
  readonly name: string;
  readonly value: string | undefined;
  /** Place of the value among `words`, when it stood there as a word of its own; else -1. */
  readonly wordAt: number;
}

export interface Typed {
  readonly words: readonly string[];
  /** Values by flag name; an absent value is undefined. */
  readonly flags: ReadonlyMap<string, readonly (string | undefined)[]>;
  readonly strangers: readonly Stranger[];
}

const options = Object.fromEntries(
  ALL_FLAGS.map(({ name, short, value }) => [
    name,
    {
      type: value === undefined ? 'boolean' : 'string',
      multiple: true,
      ...(short !== undefined && { short }),
    },
  ]),
) as NonNullable<NonNullable<Parameters<typeof parseArgs>[0]>['options']>;

/** `-5` and `-15m` are words that begin with a minus, not flags. */
const isMinus = /^-[\d.,]/;

export function readTyped(args: readonly string[]): Typed {
  const { tokens } = parseArgs({
    args: [...args],
    options,
    strict: false,
    allowPositionals: true,
    tokens: true,
  });
  const words: string[] = [];
  const flags = new Map<string, (string | undefined)[]>();
  const strangers: Stranger[] = [];
  let behind: { typed: string; name: string } | null = null;
  let minusAt = -1;
  const settle = (): void => {
    if (behind !== null) strangers.push({ ...behind, value: undefined, wordAt: -1 });
    behind = null;
  };
  const takeWord = (word: string): void => {
    if (behind !== null) strangers.push({ ...behind, value: word, wordAt: words.length });
    behind = null;
    words.push(word);
  };
  for (const token of tokens) {
    if (token.kind === 'option-terminator') settle();
    else if (token.kind === 'positional') takeWord(token.value);
    else if (isMinus.test(args[token.index] ?? '')) {
      // The letters of `-15m` come as one flag each.
      if (token.index !== minusAt) takeWord(args[token.index] ?? '');
      minusAt = token.index;
    } else {
      settle();
      if (flagNamed(token.name) !== undefined) {
        flags.set(token.name, [...(flags.get(token.name) ?? []), token.value]);
      } else if (token.value === undefined) behind = { typed: token.rawName, name: token.name };
      else strangers.push({ typed: token.rawName, name: token.name, value: token.value, wordAt: -1 });
    }
  }
  settle();
  return { words, flags, strangers };
}
