// The tables of a book in SQLite, as constant texts; what a file says it is made of is held against them at every open.

/** "Wate" in the header of the file, so that a book is told from the files of other programs. */
export const APPLICATION_ID = 0x57_61_74_65;
/** A book without codes has the tables of version 1; the first code that is set adds those of version 2. */
export const SCHEMA_VERSION = 2;

/** Each statement as SQLite keeps it, so that the two can be compared letter by letter. */
export const TABLES = {
  about: `CREATE TABLE about (
  one INTEGER PRIMARY KEY CHECK (one = 1),
  book_id TEXT NOT NULL CHECK (octet_length(book_id) BETWEEN 1 AND 100),
  site TEXT NOT NULL CHECK (octet_length(site) BETWEEN 1 AND 31),
  purpose TEXT NOT NULL CHECK (purpose IN ('book', 'practice')),
  created_ms INTEGER NOT NULL,
  seal TEXT NOT NULL CHECK (octet_length(seal) = 64)
) STRICT`,
  about_no_delete: `CREATE TRIGGER about_no_delete BEFORE DELETE ON about
BEGIN SELECT RAISE(ABORT, 'a book is never renamed'); END`,
  about_no_update: `CREATE TRIGGER about_no_update BEFORE UPDATE ON about
BEGIN SELECT RAISE(ABORT, 'a book is never renamed'); END`,
  about_once: `CREATE TRIGGER about_once BEFORE INSERT ON about
WHEN EXISTS (SELECT 1 FROM about)
BEGIN SELECT RAISE(ABORT, 'a book has one name'); END`,
  entry: `CREATE TABLE entry (
  site TEXT NOT NULL CHECK (octet_length(site) BETWEEN 1 AND 31),
  number INTEGER NOT NULL CHECK (number BETWEEN 1 AND 9007199254740991),
  id TEXT NOT NULL UNIQUE CHECK (octet_length(id) = 36),
  kind TEXT NOT NULL CHECK (octet_length(kind) BETWEEN 1 AND 60),
  happened_ms INTEGER NOT NULL CHECK (happened_ms BETWEEN -100000000000000 AND 100000000000000),
  entered_ms INTEGER NOT NULL CHECK (entered_ms BETWEEN -100000000000000 AND 100000000000000),
  kept_ms INTEGER NOT NULL CHECK (kept_ms BETWEEN -100000000000000 AND 100000000000000),
  text TEXT NOT NULL CHECK (octet_length(text) > 1),
  seal TEXT NOT NULL CHECK (octet_length(seal) = 64),
  PRIMARY KEY (site, number)
) STRICT`,
  entry_by_kind: 'CREATE INDEX entry_by_kind ON entry (kind, happened_ms, site, number)',
  entry_by_time: 'CREATE INDEX entry_by_time ON entry (happened_ms, site, number)',
  entry_no_delete: `CREATE TRIGGER entry_no_delete BEFORE DELETE ON entry
BEGIN SELECT RAISE(ABORT, 'an entry is never deleted: undo it by another'); END`,
  entry_no_update: `CREATE TRIGGER entry_no_update BEFORE UPDATE ON entry
BEGIN SELECT RAISE(ABORT, 'an entry is never changed: correct it by another'); END`,
} as const;

/** Creation in the order in which one needs the other. */
export const CREATE_ALL = `${TABLES.about};
${TABLES.about_no_delete};
${TABLES.about_no_update};
${TABLES.about_once};
${TABLES.entry};
${TABLES.entry_by_kind};
${TABLES.entry_by_time};
${TABLES.entry_no_delete};
${TABLES.entry_no_update};
PRAGMA application_id = 1466004581;
PRAGMA user_version = 1;`;

/**
 * Codes by which offices confirm: argon2id of each, the number of the office's codes from 1 on. The highest one counts, the
 * older ones are there so that none of them is taken again.
 */
export const CODE_TABLES = {
  second_code: `CREATE TABLE second_code (
  office TEXT NOT NULL CHECK (octet_length(office) BETWEEN 1 AND 320),
  number INTEGER NOT NULL CHECK (number >= 1),
  since_ms INTEGER NOT NULL,
  salt BLOB NOT NULL CHECK (octet_length(salt) = 16),
  tag BLOB NOT NULL CHECK (octet_length(tag) = 32),
  memory_kib INTEGER NOT NULL,
  passes INTEGER NOT NULL,
  lanes INTEGER NOT NULL,
  PRIMARY KEY (office, number)
) STRICT`,
  second_code_try: `CREATE TABLE second_code_try (
  office TEXT PRIMARY KEY CHECK (octet_length(office) BETWEEN 1 AND 320),
  wrong INTEGER NOT NULL CHECK (wrong >= 1),
  last_ms INTEGER NOT NULL
) STRICT`,
} as const;

/** The tables that a file of each version has. */
export const TABLES_OF_VERSION: ReadonlyMap<number, Readonly<Record<string, string>>> = new Map([
  [1, TABLES],
  [2, { ...TABLES, ...CODE_TABLES }],
]);

/** From version 1 to 2, inside the write that keeps the first code. */
export const ADD_CODE_TABLES = `${CODE_TABLES.second_code};
${CODE_TABLES.second_code_try};
PRAGMA user_version = 2;`;

export const READ_SCHEMA = `SELECT name, sql FROM sqlite_schema WHERE name NOT GLOB 'sqlite_*' ORDER BY name`;
export const READ_APPLICATION_ID = 'PRAGMA application_id';
export const READ_PAGE_SIZE = 'PRAGMA page_size';
export const READ_PAGE_COUNT = 'PRAGMA page_count';
export const READ_SCHEMA_VERSION = 'PRAGMA user_version';
export const READ_SQLITE_VERSION = 'SELECT sqlite_version() AS version';
