// A lock that lets one set-up run at a time: a directory with a heartbeat, so that a killed set-up blocks nobody.
import { mkdirSync, readFileSync, renameSync, rmSync, statSync, utimesSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';

const BEAT_MS = 1_000;
const STALE_MS = 15_000;
const POLL_MS = 100;

/**
 * Runs `work` while holding the lock at `path`; waits while another process holds it.
 * @template T
 * @param {string} path
 * @param {(owner: string) => void} onWait called once if there is something to wait for
 * @param {() => Promise<T>} work
 * @returns {Promise<T>}
 */
export async function withLock(path, onWait, work) {
  mkdirSync(dirname(path), { recursive: true });
  const token = `${process.pid} ${Math.round(performance.timeOrigin + performance.now())}`;
  for (let waited = false; !take(path, token); await pause(POLL_MS)) {
    if (!waited) onWait(ownerOf(path));
    waited = true;
    clearIfStale(path);
  }
  const beat = setInterval(() => touch(join(path, 'owner')), BEAT_MS);
  try {
    return await work();
  } finally {
    clearInterval(beat);
    if (ownerOf(path) === token) release(path);
  }
}

/**
 * The owner is written into a directory of its own first: a lock that exists always names its owner.
 * @param {string} path
 * @param {string} token
 * @returns {boolean}
 */
function take(path, token) {
  const mine = `${path}.${process.pid}`;
  rmSync(mine, { recursive: true, force: true });
  mkdirSync(mine);
  writeFileSync(join(mine, 'owner'), token);
  try {
    renameSync(mine, path); // fails where `path` is there and not empty
    return true;
  } catch {
    rmSync(mine, { recursive: true, force: true });
    return false;
  }
}

/**
 * Moved aside first: emptied in place, the directory could be taken by another while we remove it.
 * @param {string} path
 */
function release(path) {
  const aside = `${path}.done.${process.pid}`;
  renameSync(path, aside);
  rmSync(aside, { recursive: true, force: true });
}

/** @param {string} path */
function clearIfStale(path) {
  const owner = ownerOf(path);
  let silentMs = 0;
  try {
    silentMs = Date.now() - statSync(join(path, 'owner')).mtimeMs;
  } catch {
    return;
  }
  if (silentMs < STALE_MS) return;
  const aside = `${path}.stale.${process.pid}`;
  try {
    renameSync(path, aside);
  } catch {
    return;
  }
  // Another waiter may have cleared the stale lock and taken a fresh one between our look and our rename.
  if (ownerOf(aside) !== owner) {
    try {
      renameSync(aside, path);
      return;
    } catch {}
  }
  rmSync(aside, { recursive: true, force: true });
}

/**
 * @param {string} path
 * @returns {string}
 */
function ownerOf(path) {
  try {
    return readFileSync(join(path, 'owner'), 'utf8');
  } catch {
    return '';
  }
}

/** @param {string} file */
function touch(file) {
  try {
    utimesSync(file, Date.now() / 1000, Date.now() / 1000);
  } catch {}
}

/**
 * @param {number} ms
 * @returns {Promise<void>}
 */
function pause(ms) {
  return new Promise((done) => setTimeout(done, ms));
}
