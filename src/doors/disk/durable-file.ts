// Small files beside the book, written so that a power cut leaves the old one or the new one, never a half.
import {
  closeSync,
  fsyncSync,
  linkSync,
  openSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  writeSync,
} from 'node:fs';
import { dirname } from 'node:path';
import { systemCode } from './sqlite-error.ts';

/** A new file of this age was left by a process that ended; nobody is still writing it. */
const LEFT_BEHIND_MS = 10_000;

/** Makes names in a folder last: a new, renamed or removed name counts only after this. */
export function syncFolder(folder: string): void {
  // Windows has no way to open a folder for this, and its file systems keep names in a journal of their own.
  if (process.platform === 'win32') return;
  const fd = openSync(folder, 'r');
  try {
    fsyncSync(fd);
  } finally {
    closeSync(fd);
  }
}

export function syncFile(path: string): void {
  const fd = openSync(path, 'r+');
  try {
    fsyncSync(fd);
  } finally {
    closeSync(fd);
  }
}

/**
 * Writes a whole file under its name: new file, sync, rename, sync of the folder.
 * @returns false when another process is writing the same file at this moment
 */
export function writeDurably(path: string, text: string): boolean {
  return changeDurably(path, () => text);
}

/**
 * Makes a new text of the old one in the same way: whoever has the new file open has the change to itself, so that of
 * two processes neither writes over what the other one has just written.
 * @param change the new text by the old one, which is null where there is none; null as its answer takes the file away
 * @returns false when another process is changing the same file at this moment
 */
export function changeDurably(path: string, change: (old: () => string | null) => string | null): boolean {
  const fresh = `${path}.new`;
  const fd = openFresh(fresh);
  if (fd === null) return false;
  let text: string | null;
  try {
    text = change(() => textOf(path));
    if (text !== null) writeSync(fd, text);
    fsyncSync(fd);
  } catch (error) {
    closeSync(fd);
    rmSync(fresh, { force: true });
    throw error;
  }
  closeSync(fd);
  if (text !== null) renameSync(fresh, path);
  else {
    rmSync(path, { force: true });
    rmSync(fresh);
  }
  syncFolder(dirname(path));
  return true;
}

function textOf(path: string): string | null {
  return statSync(path, { throwIfNoEntry: false }) === undefined ? null : readFileSync(path, 'utf8');
}

function openFresh(fresh: string): number | null {
  try {
    return openSync(fresh, 'wx');
  } catch (error) {
    if ((error as { code?: unknown }).code !== 'EEXIST') throw error;
  }
  const writtenMs = statSync(fresh, { throwIfNoEntry: false })?.mtimeMs;
  if (writtenMs !== undefined && Date.now() - writtenMs < LEFT_BEHIND_MS) return null;
  rmSync(fresh, { force: true });
  return openSync(fresh, 'wx');
}

/**
 * Gives a finished file its name, and never takes the name from another file.
 * @throws the system's EEXIST when the name is taken
 */
export function nameDurably(fresh: string, path: string): void {
  const linked = systemCode(() => linkSync(fresh, path));
  if (linked === null) rmSync(fresh);
  else if (linked === 'EEXIST' || statSync(path, { throwIfNoEntry: false }) !== undefined)
    throw Object.assign(new Error(`${path} exists`), { code: 'EEXIST' });
  // File systems of sticks and cards have no second names: there a rename has to do.
  else renameSync(fresh, path);
  syncFolder(dirname(path));
}
