// The codes of the offices of a book, in tables of its file beside the entries: only argon2id of each, and the wrong tries.
import type { DatabaseSync } from 'node:sqlite';
import type { KeptEntry } from '../../book/index.ts';
import type { CodeCheck, CodeHolder, CodeKeeper, TryTerms } from '../../desk/index.ts';
import { type CodeHash, hashCode, isCode } from './code-hash.ts';
import {
  CODE_HOLDERS,
  CODES_OF,
  FORGET_OLD_CODES,
  FORGET_TRIES,
  HAS_CODE_TABLES,
  KEEP_CODE,
  KEEP_TRIES,
  TRIES_OF,
} from './code-statements.ts';
import { type Tries, waitLeftMs, withOneMore } from './code-tries.ts';
import { oneValue } from './one-value.ts';
import { ADD_CODE_TABLES } from './schema.ts';

/** The file of the book, as far as this needs it. */
interface BookFile {
  withDatabase<T>(work: (db: DatabaseSync) => T): T;
  /** @throws DiskProblem where nothing may be written */
  writeBeside<T>(work: (db: DatabaseSync) => T): T;
}

/** Of each office so many codes are known, the one that counts among them. */
const CODES_KNOWN = 5;
/** Codes that wait for their entries; one that never comes is forgotten. */
const MOST_WAITING = 8;

interface Waiting {
  readonly office: string;
  readonly hash: CodeHash;
}

export class DiskCodes implements CodeKeeper {
  readonly #file: BookFile;
  readonly #waiting = new Map<string, Waiting>();

  constructor(file: BookFile) {
    this.#file = file;
  }

  holders(terms: TryTerms): Promise<readonly CodeHolder[]> {
    return Promise.try(() =>
      this.#file.withDatabase((db) => {
        if (!hasTables(db)) return [];
        const rows = db.prepare(CODE_HOLDERS).all() as { office: string; since_ms: number }[];
        return rows.map(({ office, since_ms }) => ({
          office,
          sinceMs: since_ms,
          waitsMs: waitLeftMs(triesOf(db, office), terms),
        }));
      }),
    );
  }

  has(office: string): Promise<boolean> {
    return Promise.try(() => this.#hashes(office).length > 0);
  }

  async check(office: string, code: string, terms: TryTerms): Promise<CodeCheck> {
    if (!(await this.has(office))) return { is: 'none' };
    const counted = this.#file.writeBeside((db) => countTry(db, office, terms));
    if (counted.leftMs > 0) return { is: 'waits', leftMs: counted.leftMs };
    const [now] = this.#hashes(office);
    if (now === undefined || !(await isCode(code, now)))
      return { is: 'wrong', left: terms.tries - counted.wrong };
    this.#file.writeBeside((db) => db.prepare(FORGET_TRIES).run(office));
    return { is: 'right' };
  }

  async wasUsed(office: string, code: string): Promise<boolean> {
    for (const hash of this.#hashes(office)) if (await isCode(code, hash)) return true;
    return false;
  }

  async set(office: string, code: string, entryId: string): Promise<void> {
    const hash = await hashCode(code);
    for (const oldest of [...this.#waiting.keys()].slice(0, this.#waiting.size - MOST_WAITING + 1))
      this.#waiting.delete(oldest);
    this.#waiting.set(entryId, { office, hash });
  }

  /** Called inside the write that keeps an entry: a code that waits for it counts from this write on. */
  takeEffect(db: DatabaseSync, entry: KeptEntry): void {
    const waiting = this.#waiting.get(entry.id);
    if (waiting === undefined || entry.kind !== 'code-set') return;
    if (!hasTables(db)) db.exec(ADD_CODE_TABLES);
    const { office, hash } = waiting;
    const { salt, tag, memoryKib, passes, lanes } = hash;
    db.prepare(KEEP_CODE).run(office, entry.happenedAtMs, salt, tag, memoryKib, passes, lanes);
    db.prepare(FORGET_OLD_CODES).run(office, CODES_KNOWN);
    db.prepare(FORGET_TRIES).run(office);
  }

  /** What is kept of the codes of an office, the one that counts first. */
  #hashes(office: string): readonly CodeHash[] {
    return this.#file.withDatabase((db) => {
      if (!hasTables(db)) return [];
      const rows = db.prepare(CODES_OF).all(office) as unknown as (CodeHash & { memory_kib: number })[];
      return rows.map(({ memory_kib, salt, tag, passes, lanes }) => ({
        memoryKib: memory_kib,
        salt,
        tag,
        passes,
        lanes,
      }));
    });
  }
}

function hasTables(db: DatabaseSync): boolean {
  return oneValue(db.prepare(HAS_CODE_TABLES)) === 1;
}

function triesOf(db: DatabaseSync, office: string): Tries | null {
  const row = db.prepare(TRIES_OF).get(office) as { wrong: number; last_ms: number } | undefined;
  return row === undefined ? null : { wrong: row.wrong, lastMs: row.last_ms };
}

/** A try is counted as a wrong one, and the right one takes the count back: there is no moment in which a try costs nothing. */
function countTry(db: DatabaseSync, office: string, terms: TryTerms): { leftMs: number; wrong: number } {
  const known = triesOf(db, office);
  const leftMs = waitLeftMs(known, terms);
  const next = leftMs > 0 ? heldBack(known, terms) : withOneMore(known, terms);
  if (next !== null) db.prepare(KEEP_TRIES).run(office, next.wrong, next.lastMs);
  return { leftMs, wrong: next?.wrong ?? 0 };
}

/** A clock that was set back begins the wait anew, so that it ends. */
function heldBack(known: Tries | null, { nowMs }: TryTerms): Tries | null {
  return known !== null && known.lastMs > nowMs ? { ...known, lastMs: nowMs } : null;
}
