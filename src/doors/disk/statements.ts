// Statements that read and write entries, as constant texts; each order of a scan has an index of its own.

const COLUMNS = 'id, kind, site, number, happened_ms, entered_ms, kept_ms, text, seal';

export const BEGIN = 'BEGIN IMMEDIATE';
/** For a server: the lock is taken at once, and kept. */
export const LOCK_ALONE = 'PRAGMA main.locking_mode = EXCLUSIVE';
export const BEGIN_ALONE = 'BEGIN EXCLUSIVE';
export const COMMIT = 'COMMIT';
export const ROLLBACK = 'ROLLBACK';

/** Changes when another connection has committed. */
export const DATA_VERSION = 'PRAGMA data_version';

export const READ_ABOUT = 'SELECT book_id, site, purpose, created_ms, seal FROM about';
export const WRITE_ABOUT =
  'INSERT INTO about (one, book_id, site, purpose, created_ms, seal) VALUES (1, ?, ?, ?, ?, ?)';

export const INSERT = `INSERT INTO entry (${COLUMNS}) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)`;

/** Sites one by one: a look at the index for each site, not a walk over all entries. */
export const NEXT_SITE = 'SELECT site FROM entry WHERE site > ? ORDER BY site LIMIT 1';
export const HEAD_OF_SITE = 'SELECT number, seal FROM entry WHERE site = ? ORDER BY number DESC LIMIT 1';
export const COUNT = 'SELECT count(*) FROM entry';
export const FIND = `SELECT ${COLUMNS} FROM entry WHERE id = ?`;
export const FIND_NUMBER = `SELECT ${COLUMNS} FROM entry WHERE site = ? AND number = ?`;

export const PAGE_BY_TIME = `SELECT ${COLUMNS} FROM entry INDEXED BY entry_by_time
WHERE (happened_ms, site, number) > (?, ?, ?) ORDER BY happened_ms, site, number LIMIT ?`;
/** The sign keeps the planner from taking the site for a constant, for then it would sort what the index has sorted. */
export const PAGE_BY_TIME_OF_SITE = `SELECT ${COLUMNS} FROM entry INDEXED BY entry_by_time
WHERE (happened_ms, site, number) > (?, ?, ?) AND +site = ? ORDER BY happened_ms, site, number LIMIT ?`;
export const PAGE_BY_KIND = `SELECT ${COLUMNS} FROM entry INDEXED BY entry_by_kind
WHERE kind = ? AND (happened_ms, site, number) > (?, ?, ?) ORDER BY happened_ms, site, number LIMIT ?`;
export const PAGE_BY_SITE = `SELECT ${COLUMNS} FROM entry
WHERE (site, number) > (?, ?) ORDER BY site, number LIMIT ?`;
export const PAGE_OF_SITE = `SELECT ${COLUMNS} FROM entry
WHERE site = ? AND number > ? ORDER BY number LIMIT ?`;

/** Reads every page, and holds every index against its table. */
export const CHECK_PAGES = 'PRAGMA integrity_check(20)';
export const COPY_INTO = 'VACUUM INTO ?';
