// Makes the page: src/doors/web and what it uses of other rooms, as static files in dist/web, when one of them has changed.
import { spawn } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { SetupError, say } from './say.mjs';

const SETTINGS = 'vite.page.config.ts';
const STAMP = 'dist/.page-stamp';
const FOLDERS = ['src/doors/web', 'src/papers', 'src/ground/units'];

/**
 * @param {string} root
 * @returns {boolean} whether dist/web was made from what the sources hold now; true where there is no page to make
 */
export function pageIsCurrent(root) {
  if (!existsSync(join(root, 'src/doors/web/index.html'))) return true;
  try {
    return (
      existsSync(join(root, 'dist/web/index.html')) &&
      readFileSync(join(root, STAMP), 'utf8') === digest(root)
    );
  } catch {
    return false;
  }
}

/**
 * @param {string} root
 * @param {string} node the path of a Node 26
 * @returns {Promise<void>}
 */
export async function makePage(root, node) {
  const startedMs = Date.now();
  const made = digest(root);
  const { code, output } = await vite(root, node);
  if (code !== 0) throw new SetupError(`The page could not be made.\n\n${output.trim()}`);
  writeFileSync(join(root, STAMP), made);
  say(`Set up: the page is made (${Date.now() - startedMs} ms).`);
}

/**
 * @param {string} root
 * @param {string} node
 * @returns {Promise<{ code: number | null, output: string }>}
 */
function vite(root, node) {
  const args = [join(root, 'node_modules/vite/bin/vite.js'), 'build', '-c', SETTINGS, '--logLevel', 'warn'];
  return new Promise((done) => {
    const child = spawn(node, args, { cwd: root, stdio: ['ignore', 'pipe', 'pipe'] });
    let output = '';
    for (const stream of [child.stdout, child.stderr]) {
      stream.on('data', (text) => {
        output += text;
      });
    }
    child.on('error', (error) => done({ code: 1, output: error.message }));
    child.on('close', (code) => done({ code, output }));
  });
}

/**
 * @param {string} root
 * @returns {string}
 */
function digest(root) {
  const hash = createHash('sha256');
  const files = FOLDERS.flatMap((folder) => filesUnder(root, folder));
  for (const file of [...files.sort(), SETTINGS, 'scripts/setup/page.mjs', 'package-lock.json']) {
    hash
      .update(`${file}\0`)
      .update(readFileSync(join(root, file)))
      .update('\0');
  }
  return hash.digest('hex');
}

/**
 * @param {string} root
 * @param {string} folder
 * @returns {string[]}
 */
function filesUnder(root, folder) {
  return readdirSync(join(root, folder), { withFileTypes: true }).flatMap((entry) => {
    const path = `${folder}/${entry.name}`;
    if (entry.isDirectory()) return filesUnder(root, path);
    return entry.name.endsWith('.test.ts') ? [] : [path];
  });
}
