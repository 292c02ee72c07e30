// What may stand at the end of an unfinished command line.
import type { BookNames } from '../../../desk/index.ts';
import type { Command } from '../command.ts';
import { COMMANDS } from '../commands.ts';
import { flagsOf, nextWords } from '../find-command.ts';
import { type Flag, flagNamed } from '../flags.ts';

/** @param names asked for only where a name of the book may stand */
export async function candidates(
  words: readonly string[],
  names: () => Promise<BookNames | null>,
): Promise<readonly string[]> {
  const last = words.at(-1) ?? '';
  const before = words.slice(0, -1);
  const flag = flagBefore(before);
  const found =
    flag !== undefined ? await valuesOf(asTold(flag, before), names) : await wordsAt(before, last, names);
  return found.filter((word) => begins(word, last));
}

/** `c0` begins `C-05`: as in every command, only letters and digits count. */
function begins(word: string, typed: string): boolean {
  if (typed.startsWith('-')) return word.startsWith(typed);
  return bare(word).startsWith(bare(typed));
}

function bare(text: string): string {
  return text.toLowerCase().replace(/[^a-z0-9]/g, '');
}

/** The flag whose value is being typed. */
function flagBefore(before: readonly string[]): Flag | undefined {
  const last = before.at(-1) ?? '';
  const flag = last.startsWith('--') ? flagNamed(last.slice(2)) : undefined;
  return flag?.value === undefined ? undefined : flag;
}

/** A command may give a flag a meaning of its own: the values are those of that meaning. */
function asTold(flag: Flag, before: readonly string[]): Flag {
  const command = longest(plainWords(before));
  return command === undefined ? flag : (flagsOf(command).find(({ name }) => name === flag.name) ?? flag);
}

async function valuesOf(
  { name, value = '' }: Flag,
  names: () => Promise<BookNames | null>,
): Promise<readonly string[]> {
  const fixed = ofFlag[name];
  if (fixed !== undefined) return fixed;
  if (name === 'for') return (await import('../../../desk/index.ts')).USES;
  return ofName(value, names);
}

const ofFlag: Readonly<Record<string, readonly string[]>> = {
  units: ['L', 'kg'],
  'fail-on': ['act-now', 'act-today', 'know'],
  template: ['corrie', 'polar', 'lunar'],
};

async function wordsAt(
  before: readonly string[],
  last: string,
  names: () => Promise<BookNames | null>,
): Promise<readonly string[]> {
  const plain = plainWords(before);
  const command = longest(plain);
  if (last.startsWith('-')) return flagNames(command);
  const [first] = plain;
  const group = plain.length === 0 ? [] : nextWords(plain);
  if (first === undefined) return [...new Set(COMMANDS.map(({ path }) => path[0] ?? ''))];
  if (command === undefined) return group;
  const kinds =
    command.open === true && command.path.length === 1 && plain.length === 1
      ? (await import('../../../desk/index.ts')).formKinds
      : [];
  const argument = argumentAt(command, plain.length - command.path.length);
  return [...group, ...kinds, ...(argument === undefined ? [] : await ofName(argument.name, names))];
}

/** Where arguments may go on without an end, they come in the same order again. */
function argumentAt({ args }: Command, at: number): Command['args'][number] | undefined {
  return args.at(-1)?.many === true ? args[at % args.length] : args[at];
}

/** Words that are neither flags nor values of flags. */
function plainWords(words: readonly string[]): readonly string[] {
  return words.filter((word, k) => !word.startsWith('-') && flagBefore(words.slice(0, k)) === undefined);
}

function longest(words: readonly string[]): Command | undefined {
  return COMMANDS.filter(({ path }) => path.every((word, k) => words[k] === word)).sort(
    (a, b) => b.path.length - a.path.length,
  )[0];
}

function flagNames(command: Command | undefined): readonly string[] {
  const flags = command === undefined ? [] : flagsOf(command);
  return [...new Set(flags.map(({ name }) => `--${name}`))];
}

/** By the name that help gives an argument or the value of a flag. */
async function ofName(name: string, names: () => Promise<BookNames | null>): Promise<readonly string[]> {
  const fixed = ofArgument[name];
  if (fixed !== undefined) return fixed;
  if (name === 'SET') return (await import('../limit-files.ts')).shippedSetNames();
  const from = ofBook[name];
  const known = from === undefined ? null : await names();
  return known === null || from === undefined ? [] : from(known);
}

const ofArgument: Readonly<Record<string, readonly string[]>> = {
  SHELL: ['bash', 'zsh', 'fish'],
  DECISION: ['merge', 'both'],
  'ME|TIME': ['me'],
  READING: ['not-read'],
};

const ofBook: Readonly<Record<string, (names: BookNames) => readonly string[]>> = {
  STORE: ({ stores }) => stores,
  ITEM: ({ stores, parts }) => [...stores, ...parts],
  PLACES: ({ places }) => places,
  PORT: ({ ports }) => ports,
  GRADE: ({ grades }) => grades,
  HOSE: ({ hoses }) => hoses,
  OFFICE: ({ offices }) => offices,
  WHO: ({ offices }) => offices,
  PLACE: ({ stores, ports, units }) => [...stores, ...ports, ...units, 'people', 'outside'],
};
