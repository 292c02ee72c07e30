// Commands that a text names, and what is wrong with one that the program does not have.
import { kindNames } from '../../src/book/index.ts';
import { COMMANDS, type Command, GLOBAL_FLAGS } from '../../src/doors/cli/index.ts';

/** A command ends with its sentence, at a comma or at a code mark; a name in quotes may hold anything. */
const NAMED = /(?<!")\bwaterwright ((?:"[^"]*"|[^\s",;.:`)]|[.:](?![\s`]|$)| (?!waterwright ))+)/g;
/** `book check` in code marks, without the name of the program. */
const MARKED = /`([a-z]+(?: [a-z-]+)*)`/g;
/** Programs beside ours that a sentence may name. */
const OTHERS = /^npm /;
/** `waterwright book` alone is the name of the format of an export. */
const FORMAT_NAME = 'book';

export function commandsNamed(text: string): readonly string[] {
  const lines = [...text.matchAll(NAMED)].map(([, line]) => (line ?? '').trim());
  return lines.filter((line) => line !== FORMAT_NAME);
}

export function commandsMarked(text: string): readonly string[] {
  return [...text.matchAll(MARKED)].map(([, line]) => line ?? '').filter((line) => !OTHERS.test(line));
}

/** Null where the program can do it. */
export function whatIsWrongWith(line: string): string | null {
  const words = line.match(/"[^"]*"|\S+/g) ?? [];
  const command = commandOf(words);
  if (command === undefined) return `no command begins with: ${line}`;
  const rest = words.slice(command.path.length);
  if (command.open === true && command.path[0] === 'log' && !isKind(rest[0]))
    return `no kind of entry: ${rest[0] ?? 'nothing'} in ${line}`;
  if (command.open === true) return null;
  const own = command.flags.map((flag) => (typeof flag === 'string' ? flag : flag.name));
  const names = new Set([...own, ...GLOBAL_FLAGS.map(({ name }) => name)]);
  const stranger = rest.find((word) => word.startsWith('--') && !names.has(word.slice(2)));
  return stranger === undefined ? null : `${command.path.join(' ')} has no flag ${stranger}`;
}

/** The one with the longest path. */
function commandOf(words: readonly string[]): Command | undefined {
  return [...COMMANDS]
    .filter(({ path }) => path.every((word, k) => words[k] === word))
    .sort((a, b) => b.path.length - a.path.length)[0];
}

/** Any kind can be entered field by field; `KIND` stands for it. */
function isKind(word: string | undefined): boolean {
  return word === 'KIND' || kindNames.some((kind) => kind === word);
}
