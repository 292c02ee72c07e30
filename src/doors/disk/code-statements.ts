// Statements about the codes of offices, as constant texts.

export const HAS_CODE_TABLES = `SELECT count(*) FROM sqlite_schema WHERE name = 'second_code'`;

export const CODE_HOLDERS = `SELECT office, max(number) AS number, since_ms FROM second_code GROUP BY office ORDER BY office`;
export const CODES_OF = `SELECT number, salt, tag, memory_kib, passes, lanes FROM second_code
WHERE office = ? ORDER BY number DESC`;
export const KEEP_CODE = `INSERT INTO second_code (office, number, since_ms, salt, tag, memory_kib, passes, lanes)
SELECT ?1, coalesce(max(number), 0) + 1, ?2, ?3, ?4, ?5, ?6, ?7 FROM second_code WHERE office = ?1`;
export const FORGET_OLD_CODES = `DELETE FROM second_code
WHERE office = ?1 AND number <= (SELECT max(number) FROM second_code WHERE office = ?1) - ?2`;

export const TRIES_OF = 'SELECT wrong, last_ms FROM second_code_try WHERE office = ?';
export const KEEP_TRIES = `INSERT INTO second_code_try (office, wrong, last_ms) VALUES (?1, ?2, ?3)
ON CONFLICT (office) DO UPDATE SET wrong = ?2, last_ms = ?3`;
export const FORGET_TRIES = 'DELETE FROM second_code_try WHERE office = ?';
