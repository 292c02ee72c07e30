// Settings of a connection: set at every open and read back, because a file that is opened again may come with weaker ones.
import type { DatabaseSync, StatementSync } from 'node:sqlite';
import { oneValue } from './one-value.ts';
import { DiskProblem } from './problem.ts';

/** What each setting has to read back as. */
export interface Settings {
  readonly journal_mode: string;
  readonly synchronous: number;
  readonly foreign_keys: number;
  readonly recursive_triggers: number;
  readonly trusted_schema: number;
  readonly cell_size_check: number;
  readonly mmap_size: number;
  readonly fullfsync: number;
  readonly cache_size: number;
  readonly busy_timeout: number;
}

/**
 * TRUNCATE with EXTRA: a commit is on the disk, and so is the end of its journal, before the commit returns.
 * `fullfsync` has an effect on macOS only, where a plain sync leaves the data in the disk's own memory.
 */
const SET_ALL = `PRAGMA journal_mode = TRUNCATE;
PRAGMA synchronous = EXTRA;
PRAGMA foreign_keys = ON;
PRAGMA recursive_triggers = ON;
PRAGMA trusted_schema = OFF;
PRAGMA cell_size_check = ON;
PRAGMA mmap_size = 0;
PRAGMA fullfsync = ON;
PRAGMA cache_size = -16000;`;

const READ = {
  journal_mode: 'PRAGMA journal_mode',
  synchronous: 'PRAGMA synchronous',
  foreign_keys: 'PRAGMA foreign_keys',
  recursive_triggers: 'PRAGMA recursive_triggers',
  trusted_schema: 'PRAGMA trusted_schema',
  cell_size_check: 'PRAGMA cell_size_check',
  mmap_size: 'PRAGMA mmap_size',
  fullfsync: 'PRAGMA fullfsync',
  cache_size: 'PRAGMA cache_size',
  busy_timeout: 'PRAGMA busy_timeout',
} as const;

function wantedSettings(waitMs: number): Settings {
  return {
    journal_mode: 'truncate',
    synchronous: 3,
    foreign_keys: 1,
    recursive_triggers: 1,
    trusted_schema: 0,
    cell_size_check: 1,
    mmap_size: 0,
    fullfsync: 1,
    cache_size: -16_000,
    busy_timeout: waitMs,
  };
}

/** @throws DiskProblem `settings-refused` when one of them reads back differently */
export function applySettings(
  db: DatabaseSync,
  path: string,
  connection: { readonly readOnly: boolean; readonly waitMs: number },
): Settings {
  const wanted = wantedSettings(connection.waitMs);
  // The write-ahead log cannot be taken off a file that may not be written.
  const came = oneValue(db.prepare(READ.journal_mode));
  if (connection.readOnly && came === 'wal')
    throw new DiskProblem('settings-refused', path, {
      setting: 'journal_mode',
      wanted: wanted.journal_mode,
      received: came,
    });
  db.exec(SET_ALL);
  const settings = readSettings(db);
  for (const name of Object.keys(wanted) as (keyof Settings)[]) {
    if (settings[name] !== wanted[name])
      throw new DiskProblem('settings-refused', path, {
        setting: name,
        wanted: wanted[name],
        received: settings[name],
      });
  }
  return settings;
}

export function readSettings(db: DatabaseSync): Settings {
  return {
    journal_mode: String(oneValue(db.prepare(READ.journal_mode))),
    synchronous: whole(db.prepare(READ.synchronous)),
    foreign_keys: whole(db.prepare(READ.foreign_keys)),
    recursive_triggers: whole(db.prepare(READ.recursive_triggers)),
    trusted_schema: whole(db.prepare(READ.trusted_schema)),
    cell_size_check: whole(db.prepare(READ.cell_size_check)),
    mmap_size: whole(db.prepare(READ.mmap_size)),
    fullfsync: whole(db.prepare(READ.fullfsync)),
    cache_size: whole(db.prepare(READ.cache_size)),
    busy_timeout: whole(db.prepare(READ.busy_timeout)),
  };
}

/** A setting that gives no number reads as −1, which none of them may be. */
function whole(statement: StatementSync): number {
  const value = oneValue(statement);
  return typeof value === 'number' ? value : -1;
}
