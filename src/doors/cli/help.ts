// Help: the page for everything, the page of a group, and the page of one command; an example comes first.
import { nearest } from '../../ground/units/index.ts';
import type { Command } from './command.ts';
import { COMMANDS } from './commands.ts';
import { type Flag, flagNamed, GLOBAL_FLAGS } from './flags.ts';
import { wrongUse } from './problem.ts';

/** Columns of a help page: it is read on any terminal, so it does not ask for the width. */
const WIDTH = 80;

/** The page for the words behind `help`, or before `--help`. */
export function helpFor(words: readonly string[]): string | Promise<string> {
  const [first, second] = words;
  if (first === undefined) return page(frontPage());
  if (first === 'flags' && second === undefined) return page(flagsPage());
  const command = [...COMMANDS]
    .filter(({ path }) => path.every((word, k) => words[k] === word))
    .sort((a, b) => b.path.length - a.path.length)[0];
  if (isKinds(command) && second !== undefined) return kindPage(second);
  const group = COMMANDS.filter(
    ({ path }) => path.length > words.length && words.every((word, k) => path[k] === word),
  );
  if (group.length > 0) return groupPage(words, group);
  if (command !== undefined) return page(commandPage(command));
  const names = [...new Set(COMMANDS.flatMap(({ path }) => [path[0] ?? '', path.join(' ')]))];
  const name = words.join(' ').slice(0, 60);
  throw wrongUse('command-unknown', { name, nearest: nearest(name, names) });
}

function page(lines: readonly string[]): string {
  return `${lines.join('\n')}\n`;
}

function frontPage(): readonly string[] {
  const acts = COMMANDS.filter(({ path }) => path[0] === 'log' && path.length > 1).map(({ path }) => path[1]);
  return [
    'Waterwright keeps the water book of a small outpost: how much there is, where,',
    'of what grade, how surely, and for how many days.',
    '',
    '  waterwright init --practice   make a practice book',
    '  waterwright today             how much, where, until when, what needs you',
    '  waterwright log drink 8       enter 8 strokes of the dispenser',
    '  waterwright log undo          take back what you have just entered',
    '',
    ...row('See', 'today, store list, store show STORE, book show'),
    ...row('Share', 'serve (the page for a browser), report (a sheet for paper)'),
    ...row('Enter', `log ${acts.join(', ')}, KIND; count; import FILE, inbox`),
    ...row('Book', 'init, start; book check, close, backup, export, outpost, code; store add'),
    ...row('More', 'help COMMAND, help log KIND, help flags, completion SHELL'),
    '',
    'The book: --book PATH, else WATERWRIGHT_BOOK, else waterwright.book in this folder,',
    'else your own, else the practice book. For programs: --json or --plain.',
  ];
}

function row(head: string, text: string): readonly string[] {
  return hung(head, text, 8);
}

/** The command that enters any kind field by field: it is a word alone. */
function isKinds(command: Command | undefined): command is Command {
  return command?.open === true && command.path.length === 1;
}

async function groupPage(words: readonly string[], group: readonly Command[]): Promise<string> {
  const name = words.join(' ');
  const open = COMMANDS.find((command) => command.path[0] === name && isKinds(command));
  const all = open === undefined ? group : [...group, open];
  const calls = all.map((command) => [callOf(command), command.does] as const);
  const indent = Math.min(40, Math.max(...calls.map(([call]) => call.length)) + 4);
  return page([
    ...examplesOf(all.flatMap(({ examples }) => examples.slice(0, 1)).slice(0, 3)),
    '',
    ...calls.flatMap(([call, does]) => hung(`  ${call}`, does, indent)),
    '',
    ...(open === undefined ? [] : await kindLines()),
    `One of them: waterwright help ${name} ${group[0]?.path.slice(words.length).join(' ') ?? ''}`,
  ]);
}

/** Only the desk knows the kinds, and it is loaded only for this page. */
async function kindLines(): Promise<readonly string[]> {
  const { formKinds } = await import('../../desk/index.ts');
  return [...hung('KIND', formKinds.join(', '), 6), ''];
}

function callOf({ path, args }: Command): string {
  const names = args.map(({ name, optional }) => (optional === true ? `[${name}]` : name));
  return [...path, ...names].join(' ');
}

function commandPage(command: Command): readonly string[] {
  const own = command.flags.flatMap((flag) => (typeof flag === 'string' ? (flagNamed(flag) ?? []) : flag));
  const args = command.args.map(
    ({ name, what, optional }) => [name, optional === true ? `${what} (may be left out)` : what] as const,
  );
  const flags = own.map((flag) => [nameOf(flag), flag.what] as const);
  return [
    `waterwright ${callOf(command)}`,
    ...wrapped(`${command.does.charAt(0).toUpperCase()}${command.does.slice(1)}.`, WIDTH),
    '',
    ...examplesOf(command.examples),
    ...(command.more ?? []).flatMap((sentence) => ['', ...wrapped(sentence, WIDTH)]),
    ...(args.length + flags.length > 0 ? [''] : []),
    ...pairsOf([...args, ...flags]),
    '',
    ...wrapped(
      'Flags of every command (--book, --json, --at, --dry-run and others): waterwright help flags',
      WIDTH,
    ),
  ];
}

function flagsPage(): readonly string[] {
  return [
    '  waterwright today --json --at D13     flags stand before or behind the command',
    '',
    ...pairsOf(GLOBAL_FLAGS.map((flag) => [nameOf(flag), flag.what] as const)),
    '',
    'TIME    now, -15m, 14:05, D13 (its line, 21:00), D143T14:05, 2147-04-15T14:05Z',
    'AMOUNT  200mL, 7.5L, 21.4kg; with its doubt at 95 %: 21.4kg+-0.1',
  ];
}

async function kindPage(kind: string): Promise<string> {
  const { fieldList } = await import('./kind-fields.ts');
  const fields = fieldList(kind);
  if (fields.length === 0) {
    const { formKinds } = await import('../../desk/index.ts');
    const data = {
      name: `log ${kind.slice(0, 60)}`,
      nearest: nearest(kind, formKinds).map((near) => `log ${near}`),
    };
    throw wrongUse('command-unknown', data);
  }
  return page([
    `waterwright log ${kind} --FIELD VALUE ...`,
    `waterwright log ${kind} --from FILE.json`,
    '',
    ...fields,
  ]);
}

function nameOf({ name, short, value }: Flag): string {
  const long = value === undefined ? `--${name}` : `--${name} ${value}`;
  return short === undefined ? long : `-${short}, ${long}`;
}

function examplesOf(examples: Command['examples']): readonly string[] {
  const indent = Math.min(52, Math.max(0, ...examples.map(([line]) => line.length)) + 4);
  return examples.flatMap(([line, does]) => (does === '' ? [`  ${line}`] : hung(`  ${line}`, does, indent)));
}

function pairsOf(pairs: readonly (readonly [string, string])[]): readonly string[] {
  const indent = Math.min(24, Math.max(0, ...pairs.map(([name]) => name.length)) + 2);
  return pairs.flatMap(([name, what]) => hung(name, what, indent));
}

/** A text behind its head; a head that is too long stands on a line of its own. */
function hung(head: string, text: string, indent: number): readonly string[] {
  const margin = ' '.repeat(indent);
  const lines = wrapped(text, WIDTH - indent);
  if (head.length > indent - 2) return [head, ...lines.map((line) => margin + line)];
  return lines.map((line, k) => (k === 0 ? head.padEnd(indent) : margin) + line);
}

function wrapped(text: string, width: number): readonly string[] {
  const lines: string[] = [''];
  for (const word of text.split(' ')) {
    const last = lines.at(-1) ?? '';
    if (last === '') lines[lines.length - 1] = word;
    else if (last.length + 1 + word.length <= width) lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  return lines;
}
