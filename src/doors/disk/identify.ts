// Telling a book from other files: whose it is, whether this program can read it, and whether it is all there.
import { statSync } from 'node:fs';
import type { DatabaseSync } from 'node:sqlite';
import { type BookInfo, canonicalJson } from '../../book/index.ts';
import { nodeHash } from './hash.ts';
import { oneValue } from './one-value.ts';
import { DiskProblem } from './problem.ts';
import {
  APPLICATION_ID,
  READ_APPLICATION_ID,
  READ_PAGE_COUNT,
  READ_PAGE_SIZE,
  READ_SCHEMA,
  READ_SCHEMA_VERSION,
  READ_SQLITE_VERSION,
  SCHEMA_VERSION,
  TABLES_OF_VERSION,
} from './schema.ts';
import { READ_ABOUT } from './statements.ts';

/** SQLite before this version can damage a file when its write-ahead log is reset. @source sqlite, the page on the write-ahead log */
const OLDEST_SQLITE = [3, 51, 3] as const;

/**
 * Reads what a file says about itself, in one transaction so that no writer is half way through it.
 * @throws DiskProblem when it is another file, a newer, an altered or a shortened one
 */
export function identify(db: DatabaseSync, path: string): BookInfo {
  const version = String(oneValue(db.prepare(READ_SQLITE_VERSION)));
  if (isOlder(version))
    throw new DiskProblem('sqlite-too-old', path, { version, needed: OLDEST_SQLITE.join('.') });
  db.exec('BEGIN');
  try {
    const version = holdKind(db, path);
    holdLength(db, path);
    holdTables(db, path, version);
    return readAbout(db, path);
  } finally {
    // After a failed read SQLite may have ended the transaction by itself.
    if (db.isTransaction) db.exec('ROLLBACK');
  }
}

function isOlder(version: string): boolean {
  const parts = version.split('.').map((part) => JSON.parse(part) as number);
  for (const [at, wanted] of OLDEST_SQLITE.entries()) {
    const part = parts[at] ?? 0;
    if (part !== wanted) return part < wanted;
  }
  return false;
}

/** @returns the version of its tables */
function holdKind(db: DatabaseSync, path: string): number {
  const application = oneValue(db.prepare(READ_APPLICATION_ID));
  // A file too short for one page is an empty database to SQLite.
  if (oneValue(db.prepare(READ_PAGE_COUNT)) === 0)
    throw new DiskProblem('book-damaged', path, { says: 'less than a page' });
  if (application !== APPLICATION_ID) throw new DiskProblem('book-foreign', path, {});
  const version = oneValue(db.prepare(READ_SCHEMA_VERSION)) as number;
  if (version > SCHEMA_VERSION) throw new DiskProblem('book-newer', path, { version, known: SCHEMA_VERSION });
  if (!TABLES_OF_VERSION.has(version)) throw new DiskProblem('book-altered', path, { what: 'version' });
  return version;
}

/** SQLite takes a last page that is cut off for one that ends in zeros. */
function holdLength(db: DatabaseSync, path: string): void {
  const wanted =
    (oneValue(db.prepare(READ_PAGE_COUNT)) as number) * (oneValue(db.prepare(READ_PAGE_SIZE)) as number);
  const { size } = statSync(path);
  if (size < wanted) throw new DiskProblem('book-damaged', path, { says: `${size} of ${wanted} bytes` });
}

function holdTables(db: DatabaseSync, path: string, version: number): void {
  const wanted = new Map(Object.entries(TABLES_OF_VERSION.get(version) ?? {}));
  const tables = db.prepare(READ_SCHEMA).all() as { name: string; sql: string }[];
  const areOurs = tables.length === wanted.size && tables.every(({ name, sql }) => wanted.get(name) === sql);
  if (!areOurs) throw new DiskProblem('book-altered', path, { what: 'tables' });
}

function readAbout(db: DatabaseSync, path: string): BookInfo {
  const row = db.prepare(READ_ABOUT).get() as
    | { book_id: string; site: string; purpose: BookInfo['purpose']; created_ms: number; seal: string }
    | undefined;
  if (row === undefined) throw new DiskProblem('book-altered', path, { what: 'name' });
  const info = { bookId: row.book_id, site: row.site, purpose: row.purpose, createdAtMs: row.created_ms };
  if (sealOfInfo(info) !== row.seal) throw new DiskProblem('book-altered', path, { what: 'name' });
  return info;
}

/** The name of a book is sealed like an entry: a flipped letter in it would number entries for another site. */
export function sealOfInfo(info: BookInfo): string {
  const { bookId, site, purpose, createdAtMs } = info;
  return nodeHash(canonicalJson({ bookId, site, purpose, createdAtMs }));
}
