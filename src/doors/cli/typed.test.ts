// How a command line is split: flags before and behind, short ones together, minus signs that are no flags, strangers with their values.
import { expect, test } from 'vitest';
import { findCommand } from './find-command.ts';
import { CliProblem } from './problem.ts';
import { readTyped } from './typed.ts';

const found = (...words: readonly string[]) => findCommand(readTyped(words));
const codeOf = (...words: readonly string[]) => {
  try {
    found(...words);
    return 'found';
  } catch (error) {
    return error instanceof CliProblem ? error.findings.map(({ code }) => code).join() : String(error);
  }
};

test('flags stand before or behind the command, with = or a space, alone or together', () => {
  for (const words of [
    ['--json', 'today', '--at', 'D13'],
    ['today', '--at=D13', '--json'],
  ]) {
    const { words: plain, flags } = readTyped(words);
    expect(plain).toEqual(['today']);
    expect([flags.get('at'), flags.has('json')]).toEqual([['D13'], true]);
  }
  expect([...readTyped(['log', 'drink', '8', '-ny']).flags.keys()]).toEqual(['dry-run', 'yes']);
  expect(readTyped(['today', '-o', '-']).flags.get('output')).toEqual(['-']);
});

test('a word that begins with a minus and a digit is a word; a value may begin with a minus', () => {
  expect(readTyped(['log', 'drink', '-8', '--at', '-15m']).words).toEqual(['log', 'drink', '-8']);
  expect(readTyped(['log', 'drink', '8', '--at', '-15m']).flags.get('at')).toEqual(['-15m']);
  expect(readTyped(['log', 'weigh', 'c07', '-']).words).toEqual(['log', 'weigh', 'c07', '-']);
  expect(readTyped(['log', 'note', '--', '--json']).words).toEqual(['log', 'note', '--json']);
});

test('the longest path is the command, and the rest are its arguments', () => {
  expect(found('log', 'drink', '8')).toMatchObject({ command: { path: ['log', 'drink'] }, args: ['8'] });
  expect(found('log', 'sample')).toMatchObject({ command: { path: ['log'] }, args: ['sample'] });
  expect(found('book', 'show').command.path).toEqual(['book', 'show']);
});

test('of an open command strange flags are fields, wherever they stand', () => {
  const { args, fields } = found('log', '--store', 'R2', 'sample', '--sample=S-1', '--to', 'x', '--json');
  expect(args).toEqual(['sample']);
  expect(Object.fromEntries(fields)).toEqual({ store: 'R2', sample: 'S-1', to: 'x' });
});

test.each([
  ['command-unknown', 'tody'],
  ['command-unknown', 'book', 'burn'],
  ['command-unfinished', 'book'],
  ['flag-unknown', 'today', '--frm', 'x'],
  ['flag-unknown', 'today', '--from', 'x'],
  ['flag-without-value', 'today', '--at'],
  ['flag-without-value', 'today', '--at', '--json'],
  ['flag-with-value', 'today', '--json=1'],
  ['flag-twice', 'today', '--at', 'D1', '--at', 'D2'],
  ['argument-missing', 'log', 'drink'],
  ['argument-extra', 'today', 'now'],
])('%s: %s %s %s %s', (code, ...words) => {
  expect(codeOf(...words)).toBe(code);
});
