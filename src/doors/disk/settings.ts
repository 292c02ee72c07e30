// Settings of a connection: set at every open and read back, because a file that is opened again may come with weaker ones.
import type { DatabaseSync } from 'node:sqlite';
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
export function applySettings(db: DatabaseSync, path: string, waitMs: number): Settings {
  db.exec(SET_ALL);
  const settings = readSettings(db);
  const wanted = wantedSettings(waitMs);
  for (const name of Object.keys(wanted) as (keyof Settings)[]) {
    if (settings[name] !== wanted[name])
      throw new DiskProblem('settings-refused', path, {
        setting: name,
        wanted: wanted[name],
        received: settings[name] ?? null,
      });
  }
  return settings;
}

export function readSettings(db: DatabaseSync): Settings {
  const read = (sql: string) => Object.values(db.prepare(sql).get() ?? {})[0] as never;
  return {
    journal_mode: read(READ.journal_mode),
    synchronous: read(READ.synchronous),
    foreign_keys: read(READ.foreign_keys),
    recursive_triggers: read(READ.recursive_triggers),
    trusted_schema: read(READ.trusted_schema),
    cell_size_check: read(READ.cell_size_check),
    mmap_size: read(READ.mmap_size),
    fullfsync: read(READ.fullfsync),
    cache_size: read(READ.cache_size),
    busy_timeout: read(READ.busy_timeout),
  };
}
