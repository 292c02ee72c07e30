// A connection to a book file: opened, told apart from the files of others, set, and with its statements ready.
import { statSync } from 'node:fs';
import { DatabaseSync, type StatementSync } from 'node:sqlite';
import { type BookInfo, canonicalJson } from '../../book/index.ts';
import { nodeHash } from './hash.ts';
import { DiskProblem } from './problem.ts';
import {
  APPLICATION_ID,
  READ_APPLICATION_ID,
  READ_SCHEMA,
  READ_SCHEMA_VERSION,
  READ_SQLITE_VERSION,
  SCHEMA_VERSION,
  TABLES,
} from './schema.ts';
import { applySettings } from './settings.ts';
import { asProblem } from './sqlite-error.ts';
import {
  COUNT,
  FIND,
  FIND_NUMBER,
  HEAD_OF_SITE,
  INSERT,
  NEXT_SITE,
  PAGE_BY_KIND,
  PAGE_BY_SITE,
  PAGE_BY_TIME,
  PAGE_BY_TIME_OF_SITE,
  PAGE_OF_SITE,
  READ_ABOUT,
} from './statements.ts';

/** Files written by SQLite before this version can be damaged by its reset of the write-ahead log. @source sqlite.org/wal.html */
const OLDEST_SQLITE = [3, 51, 3] as const;

export interface Connection {
  readonly db: DatabaseSync;
  readonly info: BookInfo;
  readonly statements: Statements;
}

export interface ConnectOptions {
  readonly readOnly: boolean;
  readonly waitMs: number;
}

/** @throws DiskProblem when the file is no book, a newer or damaged one, or does not take the settings */
export function connect(path: string, options: ConnectOptions): Connection {
  const db = openDatabase(path, options);
  try {
    identify(db, path);
    applySettings(db, path, options.waitMs);
    return { db, info: readAbout(db, path), statements: prepareAll(db) };
  } catch (error) {
    db.close();
    throw asProblem(error, path);
  }
}

export function openDatabase(path: string, options: ConnectOptions): DatabaseSync {
  try {
    return new DatabaseSync(path, { readOnly: options.readOnly, timeout: options.waitMs, defensive: true });
  } catch (error) {
    throw asProblem(error, path);
  }
}

/** Takes back what an interrupted write left, which needs a connection that may write. */
export function recover(path: string, waitMs: number): void {
  const db = openDatabase(path, { readOnly: false, waitMs });
  try {
    db.prepare(READ_SCHEMA_VERSION).get();
  } finally {
    db.close();
  }
}

/** Did a connection fail because an interrupted write has to be taken back first? */
export function needsRecovery(error: unknown): boolean {
  return error instanceof DiskProblem && error.code === 'recovery-needed';
}

/** Whose file is it, is it newer than this program, and are its tables the ones that were made? */
function identify(db: DatabaseSync, path: string): void {
  const version = String(first(db, READ_SQLITE_VERSION));
  if (isOlder(version))
    throw new DiskProblem('sqlite-too-old', path, { version, needed: OLDEST_SQLITE.join('.') });
  const application = first(db, READ_APPLICATION_ID);
  if (application !== APPLICATION_ID) throw new DiskProblem('book-foreign', path, {});
  const schema = first(db, READ_SCHEMA_VERSION) as number;
  if (schema > SCHEMA_VERSION)
    throw new DiskProblem('book-newer', path, { version: schema, known: SCHEMA_VERSION });
  const tables = db.prepare(READ_SCHEMA).all() as { name: string; sql: string }[];
  const wanted = Object.entries(TABLES);
  const differs =
    tables.length !== wanted.length ||
    tables.find(({ name, sql }) => TABLES[name as keyof typeof TABLES] !== sql) !== undefined;
  if (differs || schema !== SCHEMA_VERSION) throw new DiskProblem('book-altered', path, { what: 'tables' });
}

function first(db: DatabaseSync, sql: string): unknown {
  return Object.values(db.prepare(sql).get() ?? {})[0];
}

function isOlder(version: string): boolean {
  const parts = version.split('.').map((part) => JSON.parse(part) as number);
  for (const [at, wanted] of OLDEST_SQLITE.entries()) {
    const part = parts[at] ?? 0;
    if (part !== wanted) return part < wanted;
  }
  return false;
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

export type Statements = ReturnType<typeof prepareAll>;

function prepareAll(db: DatabaseSync) {
  return {
    nextSite: db.prepare(NEXT_SITE),
    headOfSite: db.prepare(HEAD_OF_SITE),
    count: db.prepare(COUNT),
    insert: db.prepare(INSERT),
    find: rows(db.prepare(FIND)),
    findNumber: rows(db.prepare(FIND_NUMBER)),
    scan: {
      byTime: rows(db.prepare(PAGE_BY_TIME)),
      byTimeOfSite: rows(db.prepare(PAGE_BY_TIME_OF_SITE)),
      byKind: rows(db.prepare(PAGE_BY_KIND)),
      bySite: rows(db.prepare(PAGE_BY_SITE)),
      ofSite: rows(db.prepare(PAGE_OF_SITE)),
    },
  };
}

/** Rows as lists cost a third less than rows as objects. */
function rows(statement: StatementSync): StatementSync {
  statement.setReturnArrays(true);
  return statement;
}

/** What stands at a path before anything is opened. */
export function lookAtFile(path: string): 'a file' | 'empty' | 'a folder' {
  const stat = statSync(path);
  if (!stat.isFile()) return 'a folder';
  return stat.size === 0 ? 'empty' : 'a file';
}
