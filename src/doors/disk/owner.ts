// Who writes to a book: noted beside it for the one who has to wait. The lock itself is SQLite's; this only puts a name to it.
import { readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import type { Owner } from './problem.ts';

export function ownerPath(bookPath: string): string {
  return `${bookPath}.owner`;
}

/** Notes the writer. It is information only, so a disk that does not take it is no reason to stop. */
export function noteOwner(bookPath: string, owner: Owner): void {
  try {
    writeFileSync(ownerPath(bookPath), `${JSON.stringify(owner)}\n`);
  } catch {
    // The wait of another process will end without a name.
  }
}

export function forgetOwner(bookPath: string): void {
  try {
    if (readNote(bookPath)?.pid === process.pid) rmSync(ownerPath(bookPath), { force: true });
  } catch {
    // A note that stays behind names a process that holds no lock any more, and nobody asks then.
  }
}

/**
 * Who holds the book now. Where the system lists its locks, the list decides and the note adds what it knows;
 * elsewhere the note counts as long as its process lives.
 */
export function findOwner(bookPath: string): Owner {
  const note = readNote(bookPath);
  const holder = holderOfLock(bookPath);
  if (holder === null) return note !== null && isAlive(note.pid) ? note : NOBODY_KNOWN;
  if (note?.pid === holder) return note;
  return { pid: holder, command: commandOf(holder), sinceMs: null };
}

const NOBODY_KNOWN: Owner = { pid: null, command: null, sinceMs: null };

function readNote(bookPath: string): Owner | null {
  try {
    const { pid, command, sinceMs } = JSON.parse(readFileSync(ownerPath(bookPath), 'utf8')) as Owner;
    const isWhole = Number.isSafeInteger(pid) && typeof command === 'string' && Number.isSafeInteger(sinceMs);
    return isWhole ? { pid, command: plain(command), sinceMs } : null;
  } catch {
    return null;
  }
}

export function isAlive(pid: number | null): boolean {
  if (pid === null) return false;
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return (error as { code?: unknown }).code === 'EPERM';
  }
}

/** Another process that holds a lock of the book; null where there is none, or where the system lists no locks. */
function holderOfLock(bookPath: string): number | null {
  const locks = (locksOf(bookPath) ?? []).filter(({ pid }) => pid !== process.pid);
  return (locks.find(({ mode }) => mode === 'WRITE') ?? locks[0])?.pid ?? null;
}

/** Every process that holds a lock of the book; null where the system lists no locks. */
export function lockHolders(bookPath: string): readonly number[] | null {
  return locksOf(bookPath)?.map(({ pid }) => pid) ?? null;
}

interface Lock {
  readonly mode: string;
  readonly pid: number;
}

/** Linux lists the locks of all processes: `1: POSIX ADVISORY WRITE 15546 fe:00:2146456 1073741825 1073741825`. */
function locksOf(bookPath: string): readonly Lock[] | null {
  try {
    const { ino, dev } = statSync(bookPath, { bigint: true });
    const major = ((dev >> 8n) & 0xfffn) | ((dev >> 32n) & ~0xfffn);
    const minor = (dev & 0xffn) | ((dev >> 12n) & ~0xffn);
    const place = `${hex(major)}:${hex(minor)}:${ino}`;
    const locks = readFileSync('/proc/locks', 'utf8')
      .split('\n')
      .map((line) => /(READ|WRITE)\s+(\d+)\s+(\S+)/.exec(line))
      .filter((lock) => lock?.[3] === place);
    return locks.map((lock) => ({ mode: lock?.[1] ?? '', pid: JSON.parse(lock?.[2] ?? '0') as number }));
  } catch {
    return null;
  }
}

function hex(number: bigint): string {
  return number.toString(16).padStart(2, '0');
}

function commandOf(pid: number): string | null {
  try {
    return plain(readFileSync(`/proc/${pid}/cmdline`, 'utf8').split('\0').join(' ').trim());
  } catch {
    return null;
  }
}

/** Another process chose these letters: nothing of it may move the cursor of whoever reads it. */
function plain(text: string): string {
  return text.replaceAll(/[^\x20-\x7e\u00a0-\u{10ffff}]/gu, '?').slice(0, 200);
}
