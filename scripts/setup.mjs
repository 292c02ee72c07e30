// Sets up a clone: installs the packages and makes the page and the program, each only where it is not done yet; runs on Node 20.
import { accessSync, constants } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { bundleIsCurrent, makeBundle } from './setup/bundle.mjs';
import { withLock } from './setup/lock.mjs';
import { chooseNode26, chosenNode26, OLDEST_MAJOR } from './setup/node26.mjs';
import { installPackages, packagesAreCurrent } from './setup/packages.mjs';
import { makePage, pageIsCurrent } from './setup/page.mjs';
import { SetupError, say } from './setup/say.mjs';

export const ROOT = dirname(dirname(fileURLToPath(import.meta.url)));

/**
 * Brings the clone to the state in which everything runs.
 * @param {string} root
 * @returns {Promise<string>} the path of a Node 26
 */
export async function setUp(root) {
  const node = isDone(root) ? chosenNode26(root) : undefined;
  return node ?? (await doWhatIsMissing(root));
}

/**
 * @param {string} root
 * @returns {boolean}
 */
function isDone(root) {
  return packagesAreCurrent(root) && pageIsCurrent(root) && bundleIsCurrent(root);
}

/**
 * @param {string} root
 * @returns {Promise<string>}
 */
function doWhatIsMissing(root) {
  mustBeWritable(root);
  const lock = join(root, '.cache', 'setup.lock');
  const onWait = (/** @type {string} */ owner) =>
    say(`Another set-up is running here (process ${owner.split(' ')[0]}); waiting for it …`);
  return withLock(lock, onWait, async () => {
    // Asked again inside the lock: the one that we waited for may have done it all.
    if (!packagesAreCurrent(root)) await installPackages(root);
    const node = chosenNode26(root) ?? chooseNode26(root);
    if (node === undefined) throw new SetupError(noNode());
    if (!pageIsCurrent(root)) await makePage(root, node);
    if (!bundleIsCurrent(root)) await makeBundle(root);
    return node;
  });
}

/** @param {string} root */
function mustBeWritable(root) {
  try {
    accessSync(root, constants.W_OK);
  } catch {
    throw new SetupError(`Set-up is needed, and ${root} cannot be written. Run once as its owner: npm start`);
  }
}

function noNode() {
  const machine = `${process.platform}-${process.arch}`;
  return `No Node ${OLDEST_MAJOR} runs on this machine (${machine}). Install Node ${OLDEST_MAJOR} or newer, then run: npm start`;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  try {
    await setUp(ROOT);
  } catch (error) {
    if (!(error instanceof SetupError)) throw error;
    say(error.message);
    process.exitCode = 1;
  }
}
