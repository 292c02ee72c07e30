// Runs the examples of a page of docs/methods: lines like "time litres=2 fromC=20 => 13.1 min" between ```examples and ```.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';

/** The inputs of an example, by name. */
export interface Given {
  readonly number: (name: string) => number;
  /** Numbers parted by commas. */
  readonly list: (name: string) => readonly number[];
  readonly text: (name: string) => string;
}

/** What an example does; what it throws is "refused". */
export type Act = (given: Given) => string;

const METHODS = join(import.meta.dirname, '../../docs/methods');

/** One test for each example, and one that there are so many. */
export function runExamplesOf(page: string, least: number, acts: Readonly<Record<string, Act>>): void {
  const examples = examplesIn(readFileSync(join(METHODS, page), 'utf8'));
  it.each(examples)(`${page}: %s`, (line) => {
    const [, name = '', words = '', expected = ''] = /^(\S+)\s*(.*?)\s+=> (.*)$/.exec(line) ?? [];
    const act = acts[name];
    if (act === undefined) throw new Error(`${page} has an example that no test knows: ${line}`);
    const { given, unread } = givenBy(words, line);
    if (expected === 'refused') expect(() => act(given)).toThrow(RangeError);
    else expect(act(given)).toBe(expected);
    if (expected !== 'refused') expect(unread(), 'inputs that the example does not use').toEqual([]);
  });
  it(`${page} has ${least} examples or more, and one for each act`, () => {
    expect(examples.length).toBeGreaterThanOrEqual(least);
    const shown = new Set(examples.map((line) => line.split(/\s/, 1)[0]));
    expect([...Object.keys(acts)].filter((name) => !shown.has(name))).toEqual([]);
  });
}

function examplesIn(text: string): readonly string[] {
  return [...text.matchAll(/```examples\n([\s\S]*?)```/g)]
    .flatMap(([, block = '']) => block.split('\n'))
    .filter((line) => line.trim() !== '');
}

function givenBy(words: string, line: string): { given: Given; unread: () => readonly string[] } {
  const inputs = new Map(
    words
      .split(/\s+/)
      .filter((word) => word !== '')
      .map((word) => [word.split('=', 1)[0] ?? '', word.slice(word.indexOf('=') + 1)]),
  );
  const read = new Set<string>();
  const text = (name: string): string => {
    const value = inputs.get(name);
    if (value === undefined) throw new Error(`the example lacks ${name}: ${line}`);
    read.add(name);
    return value;
  };
  const given = {
    text,
    number: (name: string) => Number(text(name)),
    list: (name: string) => text(name).split(',').map(Number),
  };
  return { given, unread: () => [...inputs.keys()].filter((name) => !read.has(name)) };
}
