// What SQLite and the system say, told as a problem of the book.
import { accessSync, closeSync, constants, openSync, statSync } from 'node:fs';
import { dirname } from 'node:path';
import type { DiskFindingCode } from '../../book/index.ts';
import { DiskProblem } from './problem.ts';

/** Result codes of SQLite; an extended code carries its primary code in the low byte. @source sqlite, result and error codes */
const PRIMARY: Readonly<Record<number, DiskFindingCode>> = {
  3: 'not-permitted',
  8: 'read-only',
  10: 'disk-error',
  11: 'book-damaged',
  13: 'disk-full',
  26: 'not-a-book',
};
const EXTENDED: Readonly<Record<number, DiskFindingCode>> = {
  /** READONLY_ROLLBACK: an unfinished write has to be taken back first, and this connection may not write. */
  776: 'recovery-needed',
  /** READONLY_DBMOVED: the file has another name now, or is gone. */
  1032: 'book-moved',
};
/** Which call of the system failed, by the extended code. */
const CALLS: Readonly<Record<number, string>> = {
  266: 'read',
  522: 'short read',
  778: 'write',
  1034: 'sync',
  1290: 'sync of the folder',
  1546: 'truncate',
  1802: 'status',
  2570: 'delete',
  3850: 'lock',
};

const BUSY = 5;
const CANTOPEN = 14;
const IOERR = 10;
const CORRUPT = 11;
const CONSTRAINT_UNIQUE = 2067;
const CONSTRAINT_PRIMARY_KEY = 1555;

/** The extended result code of an error of node:sqlite; 0 for any other error. */
export function resultCode(error: unknown): number {
  const code = (error as { errcode?: unknown } | null)?.errcode;
  return typeof code === 'number' ? code : 0;
}

function primary(error: unknown): number {
  return resultCode(error) & 0xff;
}

export function isBusy(error: unknown): boolean {
  return primary(error) === BUSY;
}

export function isTaken(error: unknown): boolean {
  const code = resultCode(error);
  return code === CONSTRAINT_UNIQUE || code === CONSTRAINT_PRIMARY_KEY;
}

/** After such an error the state of the disk is not known: nothing more may be written. */
export function endsWriting(error: unknown): boolean {
  return primary(error) === IOERR || primary(error) === CORRUPT;
}

/** Any error while a book was worked on, as a problem; what is no fault of the disk comes back as it was. */
export function asProblem(error: unknown, path: string): unknown {
  if (error instanceof DiskProblem) return error;
  // An integer that no column can hold was read: the page is not what was written.
  if ((error as { code?: unknown } | null)?.code === 'ERR_OUT_OF_RANGE')
    return new DiskProblem('book-damaged', path, { says: 'an integer out of range' });
  const code = resultCode(error);
  if (code === 0) return error;
  if (primary(error) === CANTOPEN) return cannotOpen(path);
  const known = EXTENDED[code] ?? PRIMARY[code & 0xff];
  if (known === undefined) return error;
  const says = (error as Error).message;
  return new DiskProblem(known, path, known === 'disk-error' ? { call: CALLS[code] ?? says } : { says });
}

/** Why a file cannot be opened; SQLite does not say. */
function cannotOpen(path: string): DiskProblem {
  const code = systemCode(() => {
    statSync(path);
    accessSync(path, constants.R_OK);
    closeSync(openSync(dirname(path), 'r'));
  });
  return systemProblem(code, path) ?? new DiskProblem('disk-error', path, { call: 'open' });
}

/** The code of the error that a call of the system ends with, or null. */
export function systemCode(call: () => void): string | null {
  try {
    call();
    return null;
  } catch (error) {
    return String((error as { code?: unknown }).code);
  }
}

/** What an error of the system means for a book. */
export function systemProblem(code: string | null, path: string): DiskProblem | null {
  if (code === null) return null;
  if (code === 'ENOENT' || code === 'ENOTDIR') {
    const noFolder = systemCode(() => statSync(dirname(path))) !== null || code === 'ENOTDIR';
    return new DiskProblem(noFolder ? 'folder-missing' : 'book-missing', path, { folder: dirname(path) });
  }
  const known = SYSTEM[code];
  return known === undefined
    ? new DiskProblem('disk-error', path, { call: code })
    : new DiskProblem(known, path, { says: code });
}

const SYSTEM: Readonly<Record<string, DiskFindingCode>> = {
  EACCES: 'not-permitted',
  EPERM: 'not-permitted',
  EROFS: 'read-only',
  ENOSPC: 'disk-full',
  EDQUOT: 'disk-full',
  EMFILE: 'too-many-files',
  ENFILE: 'too-many-files',
  EEXIST: 'book-exists',
};
