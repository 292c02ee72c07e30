// The control: plain SQLite with settings of one's choice, one row a commit, each acknowledged after its commit.
import { spawnSync } from 'node:child_process';
import { readFileSync, rmSync, writeSync } from 'node:fs';
import { DatabaseSync } from 'node:sqlite';
import { need } from './needs.ts';
import { straceWords } from './strace-words.ts';
import { type DiskEvent, readEvents } from './system-calls.ts';

export interface PlainSettings {
  readonly journal: 'WAL' | 'DELETE' | 'TRUNCATE';
  readonly synchronous: 'NORMAL' | 'FULL' | 'EXTRA';
}

const ROWS = 25;

function write(path: string, { journal, synchronous }: PlainSettings): void {
  const db = new DatabaseSync(path);
  db.exec(`PRAGMA journal_mode = ${journal}; PRAGMA synchronous = ${synchronous}`);
  db.exec('CREATE TABLE entry (number INTEGER PRIMARY KEY, text TEXT) STRICT');
  writeSync(1, 'ack 0\n');
  const insert = db.prepare('INSERT INTO entry VALUES (?, ?)');
  for (let number = 1; number <= ROWS; number++) {
    insert.run(number, 'water '.repeat(number));
    writeSync(1, `ack ${number}\n`);
  }
}

/** The calls of a writer that is killed at its end, so that no closing tidies up behind it. */
export function recordPlain(path: string, folder: string, settings: PlainSettings): readonly DiskEvent[] {
  need('strace');
  const log = `${folder}.strace`;
  const [strace = '', ...words] = straceWords(log);
  const program = [process.execPath, '--no-warnings', import.meta.filename, path, JSON.stringify(settings)];
  const { status, stdout, stderr } = spawnSync(strace, [...words, ...program], { encoding: 'utf8' });
  if (!stdout.includes(`ack ${ROWS}\n`)) throw new Error(`the control ended with ${status}: ${stderr}`);
  try {
    return readEvents(readFileSync(log, 'latin1'), folder);
  } finally {
    rmSync(log, { force: true });
  }
}

/** What is wrong with the control's file; null when every acknowledged row is there. */
export function whatIsWrongWithPlain(path: string, acked: number): string | null {
  if (acked < 0) return null;
  try {
    const db = new DatabaseSync(path);
    try {
      const { count } = db.prepare('SELECT count(*) AS count FROM entry').get() as { count: number };
      return count < acked ? `lost: acknowledged ${acked}, kept ${count}` : null;
    } finally {
      db.close();
    }
  } catch (error) {
    return String(error);
  }
}

const [path, settings] = process.argv.slice(2);
if (import.meta.main && path !== undefined && settings !== undefined) {
  write(path, JSON.parse(settings) as PlainSettings);
  process.kill(process.pid, 'SIGKILL');
}
