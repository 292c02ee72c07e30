// The set-up and the launcher on a small clone: what is done stays silent, what changed is done again, what fails is said.
import { spawnSync } from 'node:child_process';
import {
  cpSync,
  lstatSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';

const ROOT = join(import.meta.dirname, '..', '..');
const MAIN = 'src/doors/cli/main.ts';

let clone = '';
beforeEach(() => {
  clone = mkdtempSync(join(tmpdir(), 'waterwright clone-'));
  for (const path of ['bin', 'scripts/setup', 'scripts/setup.mjs', 'package.json', 'package-lock.json']) {
    cpSync(join(ROOT, path), join(clone, path), { recursive: true });
  }
  symlinkSync(join(ROOT, 'node_modules'), join(clone, 'node_modules'));
  write(`import { word } from './word.ts'; console.log(word, process.argv.slice(2).join('|'));`);
  write(`export const word = 'first';`, 'src/doors/cli/word.ts');
  write('// A thread.', 'src/doors/workers/table-worker.ts');
});
afterEach(() => rmSync(clone, { recursive: true, force: true }));

/** Written a second ahead: two writes within one tick of the clock of a file system would look equally old. */
function write(text: string, path = MAIN): void {
  mkdirSync(join(clone, path, '..'), { recursive: true });
  writeFileSync(join(clone, path), text);
  const soon = Date.now() / 1000 + 1;
  utimesSync(join(clone, path), soon, soon);
}

function run(command: string, words: readonly string[], env: NodeJS.ProcessEnv = process.env) {
  const { status, stdout, stderr } = spawnSync(command, words, { encoding: 'utf8', env, cwd: tmpdir() });
  return { status, stdout, stderr };
}

const setUp = (env?: NodeJS.ProcessEnv) => run(process.execPath, [join(clone, 'scripts/setup.mjs')], env);
const launch = (...words: readonly string[]) => run(join(clone, 'bin/waterwright'), words);

test('a first start bundles and says so on standard error; words with spaces arrive whole', () => {
  const first = launch('log', 'two words', '');
  expect(first).toMatchObject({ status: 0, stdout: 'first log|two words|\n' });
  expect(first.stderr).toMatch(/^Set up: the program is bundled \(\d+ ms\)\.\n$/);
});

test('a second set-up is silent and changes no file of the program', () => {
  setUp();
  const before = readFileSync(join(clone, 'dist/waterwright.js'));
  expect(setUp()).toEqual({ status: 0, stdout: '', stderr: '' });
  expect(readFileSync(join(clone, 'dist/waterwright.js'))).toEqual(before);
});

test('a changed and a removed source are noticed by the launcher, a changed test is not bundled', () => {
  launch();
  write(`export const word = 'second';`, 'src/doors/cli/word.ts');
  expect(launch().stdout).toBe('second \n');
  write('broken {', 'src/doors/cli/word.test.ts');
  expect(launch()).toMatchObject({ status: 0, stderr: '' });
  rmSync(join(clone, 'src/doors/cli/word.ts'));
  const soon = Date.now() / 1000 + 2;
  utimesSync(join(clone, 'src/doors/cli'), soon, soon);
  expect(launch().status).toBe(1);
});

test('a source that cannot be bundled is named with file and line, and the last program stays', () => {
  launch();
  const before = readFileSync(join(clone, 'dist/waterwright.js'));
  write(`\nimport { nothing } from './nowhere.ts';`);
  const { status, stderr } = setUp();
  expect(status).toBe(1);
  expect(stderr).toContain(`${MAIN}:2: Could not resolve "./nowhere.ts"`);
  expect(readFileSync(join(clone, 'dist/waterwright.js'))).toEqual(before);
  expect(readdirSync(join(clone, '.cache'))).toEqual([]);
});

test('packages that are lent by a link are never installed over, whatever the lockfile says', () => {
  writeFileSync(
    join(clone, 'package-lock.json'),
    '{ "packages": { "node_modules/a": { "version": "1.0.0" } } }',
  );
  const { status, stderr } = setUp({ ...process.env, PATH: bareTools(), npm_execpath: '' });
  expect({ status, stderr }).toEqual({
    status: 0,
    stderr: expect.stringMatching(/^Set up: the program is bundled/),
  });
  expect(lstatSync(join(clone, 'node_modules')).isSymbolicLink()).toBe(true);
});

test('the launcher finds its clone through symlinks, one of them relative', () => {
  mkdirSync(join(clone, 'links'));
  symlinkSync('../bin/waterwright', join(clone, 'links/relative'));
  symlinkSync(join(clone, 'links/relative'), join(clone, 'links/absolute'));
  expect(run(join(clone, 'links/absolute'), ['x']).stdout).toBe('first x\n');
});

test('without Node and without a set-up the launcher names the command, and ends with 1', () => {
  rmSync(join(clone, 'node_modules'));
  const { status, stdout, stderr } = run('/bin/sh', [join(clone, 'bin/waterwright')], { PATH: bareTools() });
  expect({ status, stdout }).toEqual({ status: 1, stdout: '' });
  expect(stderr).toMatch(/^Waterwright is not set up yet, and there is no Node here\. .* npm start\n$/);
});

test('without npm, and without a network, the set-up says what to do', () => {
  rmSync(join(clone, 'node_modules'));
  const { npm_execpath: _, ...rest } = process.env;
  const withoutNpm = setUp({ ...rest, PATH: bareTools() });
  expect(withoutNpm.status).toBe(1);
  expect(withoutNpm.stderr).toContain('npm is not to be found. Install Node 20 or newer with npm');
  const nowhere = 'http://127.0.0.1:9/';
  const env = {
    ...process.env,
    npm_config_registry: nowhere,
    npm_config_fetch_retries: '0',
    npm_config_cache: join(clone, 'c'),
  };
  const withoutNetwork = setUp(env);
  expect(withoutNetwork.status).toBe(1);
  expect(withoutNetwork.stderr).toMatch(
    /could not be installed[\s\S]*ECONNREFUSED[\s\S]*npm ci --ignore-scripts\n$/,
  );
});

/** A folder with the few tools that the launcher itself calls. */
function bareTools(): string {
  const folder = join(clone, 'tools');
  mkdirSync(folder, { recursive: true });
  for (const tool of ['uname', 'readlink', 'find']) {
    const path = run('/bin/sh', ['-c', `command -v ${tool}`]).stdout.trim();
    rmSync(join(folder, tool), { force: true });
    symlinkSync(path, join(folder, tool));
  }
  return folder;
}
