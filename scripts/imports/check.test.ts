// A tree that breaks the import table in every way: each break must be caught, and its mended twin must pass.
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { sourceFile } from '../tree/source-file.ts';
import { checkArchitecture } from './architecture.ts';
import { checkImports } from './check.ts';
import { circlesOf } from './circles.ts';
import { ROOMS } from './table.ts';

const SOUND = {
  'src/ground/units/index.ts': `export { litre } from './litre.ts';`,
  'src/ground/units/litre.ts': 'export const litre = 1;',
  'src/outpost/index.ts': `export { read } from './read.ts'; export type { Place } from './read.ts';`,
  'src/outpost/read.ts': `import * as z from 'zod'; import { litre } from '../ground/units/index.ts';`,
  'src/book/index.ts': `export { seal } from './seal.ts';`,
  'src/book/seal.ts': `import { sha256 } from '@noble/hashes/sha2.js'; import type { Place } from '../outpost/index.ts';`,
  'src/papers/today.ts': `import type { Place } from '../outpost/index.ts';`,
  'src/papers/today.test.ts': `import { test } from 'vitest'; import { read } from '../outpost/index.ts'; import './today.ts';`,
  'src/doors/disk/open.ts': `import { DatabaseSync } from 'node:sqlite'; import { seal } from '../../book/index.ts';`,
  'src/doors/cli/main.ts': `import about from '../../../package.json' with { type: 'json' };`,
  'tests/journey.test.ts': `import { seal } from '../src/book/index.ts'; const late = await import('../src/outpost/index.ts');`,
  'package.json': '{}',
};

function faultsOf(changed: Record<string, string>): readonly string[] {
  const tree = Object.entries({ ...SOUND, ...changed }).map(([path, text]) => sourceFile(path, text));
  return checkImports(tree).faults.map(({ path, says }) => `${path} ${says}`);
}

test('a tree that keeps to the table has no fault, and its imports are counted', () => {
  const report = checkImports(Object.entries(SOUND).map(([path, text]) => sourceFile(path, text)));
  expect(report.faults).toEqual([]);
  expect(report).toMatchObject({ files: 11, imports: 17 });
});

test.each([
  [
    'a room on a higher floor',
    'src/ground/units/litre.ts',
    `import { seal } from '../../book/index.ts';`,
    /may not import book/,
  ],
  [
    'a type of a higher floor',
    'src/ground/units/litre.ts',
    `import type { Place } from '../../outpost/index.ts';`,
    /may not import outpost/,
  ],
  [
    'a type named in place',
    'src/ground/units/litre.ts',
    `export type P = import('../../outpost/index.ts').Place;`,
    /may not import outpost/,
  ],
  [
    'a late import',
    'src/ground/units/litre.ts',
    `await import('../../book/index.ts');`,
    /may not import book/,
  ],
  [
    'a re-export',
    'src/ground/units/litre.ts',
    `export { seal } from '../../book/index.ts';`,
    /may not import book/,
  ],
  [
    'a name worked out while running',
    'src/book/seal.ts',
    'await import(`../${room}/index.ts`);',
    /worked out while running/,
  ],
  [
    'a file behind the door of a room',
    'src/book/seal.ts',
    `import { read } from '../outpost/read.ts';`,
    /reaches into outpost/,
  ],
  [
    'a file behind a door, from the tests',
    'tests/journey.test.ts',
    `import { seal } from '../src/book/seal.ts';`,
    /reaches into book/,
  ],
  [
    'the door of its own room',
    'src/book/seal.ts',
    `import { read } from './index.ts';`,
    /door of its own room/,
  ],
  [
    'a value where only types may go',
    'src/papers/today.ts',
    `import { read } from '../outpost/index.ts';`,
    /only types of outpost/,
  ],
  [
    'a value beside a type',
    'src/papers/today.ts',
    `import { type Place } from '../outpost/index.ts';`,
    /only types of outpost/,
  ],
  [
    'a package that the room may not have',
    'src/account/fold.ts',
    `import * as z from 'zod';`,
    /the package zod/,
  ],
  [
    'a part of such a package',
    'src/outpost/read.ts',
    `import { sha256 } from '@noble/hashes/sha2.js';`,
    /the package @noble\/hashes/,
  ],
  [
    'a module of Node in the core',
    'src/desk/today.ts',
    `import { readFileSync } from 'node:fs';`,
    /desk may not import node:fs/,
  ],
  ['a required module', 'src/desk/today.ts', `const fs = require('fs');`, /the package fs/],
  ['a file without its ending', 'src/book/seal.ts', `import { key } from './key';`, /with its ending/],
  ['a file that is not there', 'src/book/seal.ts', `import { key } from './key.ts';`, /is not there/],
  ['everything at once', 'src/book/index.ts', `export * from './seal.ts';`, /list the names/],
  [
    'a text beside the sources',
    'src/book/seal.ts',
    `import about from '../../package.json' with { type: 'json' };`,
    /not in src/,
  ],
  ['no room', 'src/utils.ts', 'export const a = 1;', /stands in no room/],
  [
    'a circle of two',
    'src/ground/units/litre.ts',
    `import type { A } from './index.ts';`,
    /circle of imports: src\/ground\/units\/index.ts, src\/ground\/units\/litre.ts/,
  ],
  [
    'a circle of itself',
    'src/book/key.ts',
    `import { a } from './key.ts';`,
    /circle of imports: src\/book\/key.ts/,
  ],
])('%s is caught', (_, path, text, says) => {
  const faults = faultsOf({ [path]: text });
  expect(faults.filter((fault) => fault.startsWith(path) || fault.includes('circle')).join('\n')).toMatch(
    says,
  );
});

test('a check that looked at no source fails', () => {
  expect(checkImports([]).faults).toHaveLength(1);
  expect(checkImports([sourceFile('tests/a.test.ts', '')]).faults).toHaveLength(1);
});

test('circles are found whole, and a path that is no circle is none', () => {
  const graph = new Map([
    ['a', ['b']],
    ['b', ['c', 'd']],
    ['c', ['a']],
    ['d', ['e']],
    ['e', ['d']],
    ['f', ['a']],
  ]);
  expect(circlesOf(graph)).toEqual([
    ['d', 'e'],
    ['a', 'b', 'c'],
  ]);
});

test('the table in ARCHITECTURE.md is the table of the check, and a difference is caught', () => {
  const text = readFileSync('ARCHITECTURE.md', 'utf8');
  expect(checkArchitecture(text)).toEqual([]);
  expect(checkArchitecture(text.replace('| ground, outpost, book |', '| ground, book |'))).toHaveLength(1);
  expect(checkArchitecture(text.replace('| `desk` |', '| `bench` |'))).toHaveLength(2);
  expect(checkArchitecture('')).toHaveLength(ROOMS.length);
});
