// The tables of a book in SQLite, as constant texts; what a file says it is made of is held against them at every open.

/** "Wate" in the header of the file, so that a book is told from the files of other programs. */
export const APPLICATION_ID = 0x57_61_74_65;
/** Version of the tables below; a change of them brings a named migration. */
export const SCHEMA_VERSION = 1;

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

export const READ_SCHEMA = `SELECT name, sql FROM sqlite_schema WHERE name NOT GLOB 'sqlite_*' ORDER BY name`;
export const READ_APPLICATION_ID = 'PRAGMA application_id';
export const READ_PAGE_SIZE = 'PRAGMA page_size';
export const READ_PAGE_COUNT = 'PRAGMA page_count';
export const READ_SCHEMA_VERSION = 'PRAGMA user_version';
export const READ_SQLITE_VERSION = 'SELECT sqlite_version() AS version';
