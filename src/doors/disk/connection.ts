// A connection to a book file: opened, told apart from the files of others, set, and with its statements ready.
import { DatabaseSync, type StatementSync } from 'node:sqlite';
import type { BookInfo } from '../../book/index.ts';
import { identify } from './identify.ts';
import { oneValue } from './one-value.ts';
import { DiskProblem } from './problem.ts';
import { READ_SCHEMA_VERSION } from './schema.ts';
import { applySettings } from './settings.ts';
import { asProblem } from './sqlite-error.ts';
import {
  BEGIN_ALONE,
  COMMIT,
  COUNT,
  DATA_VERSION,
  FIND,
  FIND_NUMBER,
  HEAD_OF_SITE,
  INSERT,
  LOCK_ALONE,
  NEXT_SITE,
  PAGE_BY_KIND,
  PAGE_BY_SITE,
  PAGE_BY_TIME,
  PAGE_BY_TIME_OF_SITE,
  PAGE_OF_SITE,
} from './statements.ts';

export interface Connection {
  readonly db: DatabaseSync;
  readonly info: BookInfo;
  readonly statements: Statements;
}

export interface ConnectOptions {
  readonly readOnly: boolean;
  /** Holds the lock of the file from now on, so that no other process reads or writes it. */
  readonly alone?: boolean;
  readonly waitMs: number;
}

/** @throws DiskProblem when the file is no book, a newer or damaged one, or does not take the settings */
export function connect(path: string, options: ConnectOptions): Connection {
  const db = openDatabase(path, options);
  try {
    const info = identify(db, path);
    applySettings(db, path, options);
    if (options.alone === true) holdAlone(db, path);
    return { db, info, statements: prepareAll(db) };
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

/** In this mode the lock that a transaction took is kept when it ends. */
function holdAlone(db: DatabaseSync, path: string): void {
  const mode = oneValue(db.prepare(LOCK_ALONE));
  if (mode !== 'exclusive') {
    throw new DiskProblem('settings-refused', path, {
      setting: 'locking_mode',
      wanted: 'exclusive',
      received: String(mode),
    });
  }
  db.exec(BEGIN_ALONE);
  db.exec(COMMIT);
}

/** Takes back what an interrupted write left, which needs a connection that may write. */
export function recover(path: string, waitMs: number): void {
  const db = openDatabase(path, { readOnly: false, waitMs });
  try {
    oneValue(db.prepare(READ_SCHEMA_VERSION));
  } finally {
    db.close();
  }
}

/** Did a connection fail because an interrupted write has to be taken back first? */
export function needsRecovery(error: unknown): boolean {
  return error instanceof DiskProblem && error.code === 'recovery-needed';
}

export type Statements = ReturnType<typeof prepareAll>;

function prepareAll(db: DatabaseSync) {
  return {
    nextSite: db.prepare(NEXT_SITE),
    headOfSite: db.prepare(HEAD_OF_SITE),
    count: db.prepare(COUNT),
    dataVersion: db.prepare(DATA_VERSION),
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
