// Installs what package-lock.json names, when what is installed differs from it.
import { spawn } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, lstatSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { SetupError, say } from './say.mjs';

const STAMP = 'node_modules/.waterwright-setup';

/**
 * @param {string} root
 * @returns {boolean} whether the installed packages are those of the lockfile, or not ours to install
 */
export function packagesAreCurrent(root) {
  try {
    if (areLent(root)) return true;
    return readFileSync(join(root, STAMP), 'utf8') === lockDigest(root);
  } catch {
    return false;
  }
}

/**
 * A node_modules that is a link belongs to another folder: an install through it would empty that one.
 * @param {string} root
 * @returns {boolean}
 */
function areLent(root) {
  return lstatSync(join(root, 'node_modules')).isSymbolicLink();
}

/**
 * @param {string} root
 * @returns {Promise<void>}
 */
export async function installPackages(root) {
  if (!installedByHand(root)) {
    say('Setting up: installing the packages that package-lock.json names (once, needs the network) …');
    await npmCi(root);
  }
  writeFileSync(join(root, STAMP), lockDigest(root));
}

/**
 * @param {string} root
 * @returns {string}
 */
export function lockDigest(root) {
  const lock = readFileSync(join(root, 'package-lock.json'));
  return createHash('sha256').update(lock).update(`${process.platform}-${process.arch}`).digest('hex');
}

/**
 * Whether someone has run npm already: its own record of what it installed agrees with the lockfile.
 * Optional packages may be absent (they are those of other platforms), but none may be of another version.
 * @param {string} root
 * @returns {boolean}
 */
function installedByHand(root) {
  /** @type {(path: string) => Record<string, { integrity?: string, optional?: boolean }>} */
  const read = (path) => JSON.parse(readFileSync(join(root, path), 'utf8')).packages;
  try {
    const wanted = read('package-lock.json');
    const installed = read('node_modules/.package-lock.json');
    const names = Object.keys(wanted).filter((name) => name !== '');
    return (
      Object.keys(installed).every((name) => installed[name]?.integrity === wanted[name]?.integrity) &&
      names.every((name) => (installed[name] ? existsSync(join(root, name)) : wanted[name]?.optional))
    );
  } catch {
    return false;
  }
}

/**
 * @param {string} root
 * @returns {Promise<void>}
 */
async function npmCi(root) {
  // EBADENGINE warnings are expected where npm itself runs on an older Node: our programs run on the Node it installs.
  const args = ['ci', '--ignore-scripts', '--no-audit', '--no-fund', '--loglevel=error'];
  const npm = process.env['npm_execpath'];
  const byNode = npm !== undefined && /npm-cli\.c?js$/.test(npm);
  const { code, output } = byNode
    ? await run(process.execPath, [npm, ...args], root)
    : await run('npm', args, root);
  if (code === 0) return;
  if (code === 'ENOENT') {
    throw new SetupError('npm is not to be found. Install Node 20 or newer with npm, then run: npm start');
  }
  throw new SetupError(
    `The packages could not be installed. npm said:\n\n${output.trim()}\n\n` +
      'Check that the network is there and the disk is not full, then run: npm ci --ignore-scripts',
  );
}

/**
 * @param {string} command
 * @param {readonly string[]} args
 * @param {string} cwd
 * @returns {Promise<{ code: number | string, output: string }>}
 */
function run(command, args, cwd) {
  // A shell is needed on Windows only, where npm is a .cmd file; the arguments are constants.
  const shell = process.platform === 'win32' && command === 'npm';
  return new Promise((done) => {
    const child = spawn(command, args, { cwd, shell, stdio: ['ignore', 'pipe', 'pipe'] });
    let output = '';
    child.stdout.on('data', (text) => {
      output += text;
    });
    child.stderr.on('data', (text) => {
      output += text;
    });
    child.on('error', (error) =>
      done({ code: /** @type {NodeJS.ErrnoException} */ (error).code ?? 'error', output }),
    );
    child.on('close', (code, signal) => done({ code: code ?? signal ?? 'error', output }));
  });
}
