// The note that a serving process leaves beside its book: where it listens, and the key to it, for programs of the same user only.
import { chmodSync, lstatSync, readFileSync, realpathSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { isAlive, lockHolders } from './owner.ts';

export interface ServerNote {
  readonly pid: number;
  /** `http://127.0.0.1:7480` */
  readonly address: string;
  readonly key: string;
  /** Of the program that serves: another one may speak another way. */
  readonly build: string;
}

export function serverNotePath(bookPath: string): string {
  return `${bookPath}.server`;
}

/** Whole or not at all, and never readable by others, not even for a moment. */
export function noteServer(bookPath: string, note: ServerNote): void {
  const path = serverNotePath(bookPath);
  const fresh = `${path}.${process.pid}.new`;
  rmSync(fresh, { force: true });
  writeFileSync(fresh, `${JSON.stringify(note)}\n`, { mode: OWNER_ONLY, flag: 'wx' });
  chmodSync(fresh, OWNER_ONLY);
  renameSync(fresh, path);
}

const OWNER_ONLY = 0o600;
const OTHERS = 0o077;

export function forgetServer(bookPath: string): void {
  const path = serverNotePath(bookPath);
  if (readNote(path)?.pid === process.pid) rmSync(path, { force: true });
}

/**
 * The server that holds a book now; null where there is none. A note counts only if this user wrote it, nobody else could,
 * and the process that it names holds the lock of the book.
 */
export function findServer(path: string): ServerNote | null {
  try {
    const bookPath = realpathSync(path);
    const note = readNote(serverNotePath(bookPath));
    if (note === null || !isAlive(note.pid)) return null;
    const holders = lockHolders(bookPath);
    return holders === null || holders.includes(note.pid) ? note : null;
  } catch {
    return null;
  }
}

function readNote(path: string): ServerNote | null {
  try {
    const look = lstatSync(path);
    const { mode, uid } = look;
    if (!look.isFile()) return null;
    // Where the system knows no users, nothing is known about who may read it.
    const own = process.getuid?.();
    if (own !== undefined && (uid !== own || (mode & OTHERS) !== 0)) return null;
    const { pid, address, key, build } = JSON.parse(readFileSync(path, 'utf8')) as Record<string, unknown>;
    const isWhole = Number.isSafeInteger(pid) && typeof key === 'string' && typeof build === 'string';
    return isWhole && typeof address === 'string' && /^http:\/\/127\.0\.0\.1:\d{1,5}$/.test(address)
      ? { pid: pid as number, address, key, build }
      : null;
  } catch {
    return null;
  }
}
