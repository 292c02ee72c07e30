// From typed words to the command that is meant, its arguments and its flags, each held against the tables.
import { nearest } from '../../ground/units/index.ts';
import type { Command } from './command.ts';
import { COMMANDS } from './commands.ts';
import { CIRCUMSTANCE_FLAGS, type Flag, flagNamed, GLOBAL_FLAGS } from './flags.ts';
import { wrongUse } from './problem.ts';
import type { Typed } from './typed.ts';

export interface Found {
  readonly command: Command;
  readonly args: readonly string[];
  /** Flags that only the first argument knows, and other fields of an open command. */
  readonly fields: ReadonlyMap<string, string>;
}

export function lineOf(command: Command): string {
  return command.path.join(' ');
}

/** The command whose path the words begin with; the longest one. */
function commandOf(words: readonly string[]): Command | undefined {
  return [...COMMANDS]
    .filter(({ path }) => path.every((word, k) => words[k] === word))
    .sort((a, b) => b.path.length - a.path.length)[0];
}

/** Words that a group goes on with: `show, check` for `book`. */
export function secondWords(group: string): readonly string[] {
  return nextWords([group]);
}

/** Words that may stand behind the first words of a command. */
export function nextWords(words: readonly string[]): readonly string[] {
  const longer = COMMANDS.filter(
    ({ path }) => path.length > words.length && words.every((word, k) => path[k] === word),
  );
  return [...new Set(longer.map(({ path }) => path[words.length] ?? ''))];
}

export function findCommand(typed: Typed): Found {
  const [first = ''] = typed.words;
  const open = openCommand(first);
  // Behind a flag of an open command a word is its value, so it names no command.
  const taken = new Set(open === undefined ? [] : typed.strangers.map(({ wordAt }) => wordAt));
  const words = typed.words.filter((_, k) => !taken.has(k));
  const command = commandOf(words);
  if (command === undefined) throw unknownCommand(typed.words);
  const rest = words.slice(command.path.length);
  const fields = command.open === true ? fieldsOf(typed, command) : noFields(typed, command);
  holdFlags(typed, command);
  return { command, args: holdArguments(command, rest), fields };
}

function openCommand(first: string): Command | undefined {
  return COMMANDS.find(({ path, open }) => open === true && path[0] === first);
}

function unknownCommand(words: readonly string[]): Error {
  const [first = ''] = words;
  if (nextWords([first]).length === 0) {
    const names = [...new Set(COMMANDS.map(({ path }) => path[0] ?? ''))];
    return wrongUse('command-unknown', { name: first.slice(0, 60), nearest: nearest(first, names) });
  }
  const known = nextWords(words.slice(0, 2)).length > 0 ? words.slice(0, 2) : [first];
  const [group, next] = [known.join(' '), words[known.length]];
  const wanted = nextWords(known);
  if (next === undefined) return wrongUse('command-unfinished', { command: group, words: wanted });
  const near = nearest(next, wanted).map((word) => `${group} ${word}`);
  return wrongUse('command-unknown', { name: `${group} ${next.slice(0, 60)}`, nearest: near });
}

function holdArguments(command: Command, given: readonly string[]): readonly string[] {
  const [example] = command.examples[0] ?? [''];
  const about = { command: lineOf(command), example };
  const missing = command.args.find(({ optional }, k) => optional !== true && given[k] === undefined);
  if (missing !== undefined) throw wrongUse('argument-missing', { argument: missing.name, ...about });
  // What an open command takes beside its first argument only that argument knows.
  const isEndless = command.open === true || command.args.at(-1)?.many === true;
  const extra = isEndless ? undefined : given[command.args.length];
  if (extra !== undefined) throw wrongUse('argument-extra', { received: extra.slice(0, 60), ...about });
  return given;
}

/** The flags that a command takes: its own and those that every command takes. */
export function flagsOf(command: Command): readonly Flag[] {
  const own = command.flags.flatMap((flag) => (typeof flag === 'string' ? (flagNamed(flag) ?? []) : flag));
  return [...own, ...GLOBAL_FLAGS];
}

function holdFlags(typed: Typed, command: Command): void {
  const known = new Map(flagsOf(command).map((flag) => [flag.name, flag]));
  for (const [name, values] of typed.flags) {
    const flag = known.get(name) ?? flagNamed(name);
    if (flag === undefined) continue;
    if (!known.has(name) && command.open !== true) throw unknownFlag(`--${name}`, command);
    holdValues(flag, values);
  }
}

function holdValues(flag: Flag, values: readonly (string | undefined)[]): void {
  const name = `--${flag.name}`;
  if (values.length > 1 && flag.many !== true && flag.value !== undefined) {
    throw wrongUse('flag-twice', { flag: name });
  }
  for (const value of values) {
    if (flag.value === undefined && value !== undefined) {
      throw wrongUse('flag-with-value', { flag: name, received: value.slice(0, 60) });
    }
    // The next flag was taken for the value.
    const isFlag = value !== undefined && /^--[a-z]/.test(value) && flagNamed(value.slice(2)) !== undefined;
    if (flag.value !== undefined && (value === undefined || isFlag)) {
      throw wrongUse('flag-without-value', { flag: name, value: flag.value });
    }
  }
}

function noFields(typed: Typed, command: Command): ReadonlyMap<string, string> {
  const [stranger] = typed.strangers;
  if (stranger !== undefined) throw unknownFlag(stranger.typed, command);
  return new Map();
}

function unknownFlag(typedFlag: string, command: Command): Error {
  const names = flagsOf(command).map(({ name }) => `--${name}`);
  const data = {
    flag: typedFlag.slice(0, 60),
    command: lineOf(command),
    nearest: nearest(typedFlag, names).slice(0, 2),
  };
  return wrongUse('flag-unknown', data);
}

/** Of an open command every flag that is neither global nor a circumstance is a field. */
function fieldsOf(typed: Typed, command: Command): ReadonlyMap<string, string> {
  const fields = new Map<string, string>();
  const add = (name: string, value: string): void => {
    if (fields.has(name)) throw wrongUse('flag-twice', { flag: `--${name}` });
    fields.set(name, value);
  };
  for (const { name, value, typed: flag } of typed.strangers) {
    if (value === undefined)
      throw wrongUse('flag-without-value', { flag: flag.slice(0, 60), value: 'VALUE' });
    add(name, value);
  }
  const own = command.flags.map((flag) => (typeof flag === 'string' ? flag : flag.name));
  const notFields = new Set([...[...GLOBAL_FLAGS, ...CIRCUMSTANCE_FLAGS].map(({ name }) => name), ...own]);
  for (const [name, values] of typed.flags) {
    if (!notFields.has(name)) add(name, values[0] ?? 'yes');
  }
  return fields;
}
