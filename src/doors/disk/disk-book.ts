// A book in one SQLite file, behind the port of the book room.
import type { DatabaseSync } from 'node:sqlite';
import {
  type BookFinding,
  type BookInfo,
  type BookPort,
  type Head,
  holdAppend,
  IdTaken,
  type KeptEntry,
  type ScanQuery,
} from '../../book/index.ts';
import { type Connection, connect } from './connection.ts';
import { DiskCodes } from './disk-codes.ts';
import { oneValue } from './one-value.ts';
import { findOwner, forgetOwner, noteOwner } from './owner.ts';
import { BookBusy, type DiskFinding, DiskProblem, diskFinding } from './problem.ts';
import { writeReceipt } from './receipt.ts';
import { keptEntry, type Row, scanPages } from './scan.ts';
import { readSettings, type Settings } from './settings.ts';
import { asProblem, endsWriting, isBusy, isTaken } from './sqlite-error.ts';
import { BEGIN, COMMIT, ROLLBACK } from './statements.ts';
import { whyNotWritable } from './writable.ts';

/** While entries come in, the receipt follows at this distance at most. */
const RECEIPT_EVERY_MS = 1000;

export interface DiskBookParts {
  readonly connection: Connection;
  /** Why nothing may be written; null where writing is allowed. */
  readonly refusal: DiskProblem | null;
  readonly findings: readonly (BookFinding | DiskFinding)[];
  readonly waitMs: number;
  readonly command: string;
}

export class DiskBook implements BookPort {
  readonly path: string;
  readonly codes: DiskCodes = new DiskCodes(this);
  readonly #waitMs: number;
  readonly #owner: { readonly pid: number; readonly command: string; readonly sinceMs: number };
  readonly #findings: (BookFinding | DiskFinding)[];
  /** Null after `close`, and when a book whose writing was stopped could not be opened again. */
  #connection: Connection | null;
  #refusal: DiskProblem | null;
  #isOwnerNoted = false;
  #dataVersion = -1;
  #isReceiptDue = false;
  #receiptAtMs = performance.now();

  constructor(path: string, parts: DiskBookParts) {
    this.path = path;
    this.#connection = parts.connection;
    this.#refusal = parts.refusal;
    this.#findings = [...parts.findings];
    this.#waitMs = parts.waitMs;
    this.#owner = { pid: process.pid, command: parts.command, sinceMs: Date.now() };
  }

  /** What opening and keeping found that is in the way of nothing, or of writing only. */
  findings(): readonly (BookFinding | DiskFinding)[] {
    return this.#findings;
  }

  /** Why an append would be refused; null where it would not. */
  whyNotWritten(): DiskProblem | null {
    return this.#refusal;
  }

  /** The settings as they read back now. */
  settings(): Settings {
    return this.#reading(({ db }) => readSettings(db));
  }

  /** Work on the connection itself, for the checks and copies of this room. */
  withDatabase<T>(work: (db: DatabaseSync) => T): T {
    return this.#reading(({ db }) => work(db));
  }

  info(): Promise<BookInfo> {
    return Promise.try(() => this.#reading(({ info }) => info));
  }

  heads(): Promise<readonly Head[]> {
    return Promise.try(() => this.#reading(readHeads));
  }

  count(): Promise<number> {
    return Promise.try(() => this.#reading(({ statements }) => oneValue(statements.count) as number));
  }

  find(id: string): Promise<KeptEntry | null> {
    return Promise.try(() => this.#reading(({ statements }) => asEntry(statements.find.get(id))));
  }

  findNumber(site: string, number: number): Promise<KeptEntry | null> {
    return Promise.try(() =>
      this.#reading(({ statements }) => asEntry(statements.findNumber.get(site, number))),
    );
  }

  async *scan(query: ScanQuery): AsyncIterable<readonly KeptEntry[]> {
    // Chains have no gaps, so the heads at the start say which entries were there: no lock has to be held for it.
    const shown = new Map((await this.heads()).map(({ site, number }) => [site, number]));
    const pages = this.#reading(({ statements }) => scanPages(statements.scan, query));
    for (;;) {
      const page = this.#reading(() => pages.next());
      if (page.done === true) return;
      const rows = page.value.filter((row) => row.number <= (shown.get(row.site) ?? 0));
      if (rows.length > 0) yield rows;
    }
  }

  append(entries: readonly KeptEntry[], expectedHeads: readonly Head[]): Promise<void> {
    return Promise.try(() => this.#append(entries, expectedHeads));
  }

  #append(entries: readonly KeptEntry[], expectedHeads: readonly Head[]): void {
    if (this.#refusal !== null) throw this.#refusal;
    const connection = this.#connected();
    this.#writing(connection, () => {
      connection.db.exec(BEGIN);
      this.#noteOwner(connection);
      holdAppend(readHeads(connection), entries, expectedHeads);
      for (const entry of entries) {
        insert(connection, entry);
        this.codes.takeEffect(connection.db, entry);
      }
      connection.db.exec(COMMIT);
    });
    this.#isReceiptDue = true;
    if (performance.now() - this.#receiptAtMs >= RECEIPT_EVERY_MS) this.#writeReceipt(connection);
  }

  /** A write that is no entry, for the codes of this room: whole, or taken back. */
  writeBeside<T>(work: (db: DatabaseSync) => T): T {
    if (this.#refusal !== null) throw this.#refusal;
    const connection = this.#connected();
    return this.#writing(connection, () => {
      connection.db.exec(BEGIN);
      this.#noteOwner(connection);
      const done = work(connection.db);
      connection.db.exec(COMMIT);
      return done;
    });
  }

  /** Runs a write to its commit; whatever is in the way, the book is as it was before, and the caller is told. */
  #writing<T>(connection: Connection, work: () => T): T {
    try {
      return work();
    } catch (error) {
      takeBack(connection.db);
      if (isBusy(error)) throw new BookBusy(this.path, findOwner(this.path), this.#waitMs);
      const problem = this.#told(error);
      if (endsWriting(error) && problem instanceof DiskProblem) this.#stopWriting(problem);
      throw problem;
    }
  }

  #told(error: unknown): unknown {
    const problem = asProblem(error, this.path);
    if (!(problem instanceof DiskProblem) || problem.code !== 'read-only') return problem;
    // SQLite opens a file for reading where it could not be opened for writing, and does not say why.
    return whyNotWritable(this.path) ?? new DiskProblem('disk-error', this.path, { call: 'open to write' });
  }

  /**
   * After a failed sync the system may have dropped what it could not write, and calls it clean:
   * what this connection holds in memory is no evidence any more. It is thrown away and the file is opened to be read.
   */
  #stopWriting(problem: DiskProblem): void {
    this.#refusal = new DiskProblem('writing-stopped', this.path, {
      because: problem.code,
      ...problem.finding.data,
    });
    this.#connection?.db.close();
    this.#connection = null;
    try {
      this.#connection = connect(this.path, { readOnly: true, waitMs: this.#waitMs });
    } catch {
      // It cannot be read either, before it is opened anew: every call says so.
    }
  }

  /** Says at once who holds the book, where it is held before anything is written. */
  noteOwner(): void {
    this.#noteOwner(this.#connected());
  }

  #noteOwner({ statements }: Connection): void {
    const version = oneValue(statements.dataVersion) as number;
    if (this.#isOwnerNoted && version === this.#dataVersion) return;
    noteOwner(this.path, this.#owner);
    this.#isOwnerNoted = true;
    this.#dataVersion = version;
  }

  #writeReceipt(connection: Connection): void {
    this.#receiptAtMs = performance.now();
    try {
      this.#isReceiptDue = !writeReceipt(this.path, connection.info, readHeads(connection));
    } catch (error) {
      // The entries are safe; only the witness of them is older than it should be.
      const says = String((error as { code?: unknown }).code ?? error);
      const isNew = !this.#findings.some((finding) => finding.code === 'receipt-not-written');
      if (isNew) this.#findings.push(diskFinding('receipt-not-written', this.path, { says }));
    }
  }

  /** Writes the receipt and lets go of the file. Twice is as good as once. */
  close(): void {
    const connection = this.#connection;
    if (connection === null) return;
    if (this.#isReceiptDue && this.#refusal === null) this.#writeReceipt(connection);
    if (this.#isOwnerNoted) forgetOwner(this.path);
    this.#connection = null;
    connection.db.close();
  }

  [Symbol.dispose](): void {
    this.close();
  }

  #connected(): Connection {
    if (this.#connection !== null) return this.#connection;
    throw this.#refusal ?? new Error(`the book ${this.path} was closed`);
  }

  #reading<T>(work: (connection: Connection) => T): T {
    const connection = this.#connected();
    try {
      return work(connection);
    } catch (error) {
      if (isBusy(error)) throw new BookBusy(this.path, findOwner(this.path), this.#waitMs);
      throw asProblem(error, this.path);
    }
  }
}

function readHeads({ statements }: Connection): readonly Head[] {
  const heads: Head[] = [];
  let site = '';
  for (;;) {
    const next = statements.nextSite.get(site) as { site: string } | undefined;
    if (next === undefined) return heads;
    site = next.site;
    const head = statements.headOfSite.get(site) as { number: number; seal: string };
    heads.push({ site, number: head.number, seal: head.seal });
  }
}

function insert({ statements }: Connection, entry: KeptEntry): void {
  const { id, kind, site, number, happenedAtMs, enteredAtMs, keptAtMs, text, seal } = entry;
  try {
    statements.insert.run(id, kind, site, number, happenedAtMs, enteredAtMs, keptAtMs, text, seal);
  } catch (error) {
    // Numbers were held against the heads before, so it is the id that the book has.
    throw isTaken(error) ? new IdTaken(id) : error;
  }
}

function asEntry(row: unknown): KeptEntry | null {
  return row === undefined ? null : keptEntry(row as Row);
}

/** After some errors SQLite has rolled back by itself. */
function takeBack(db: DatabaseSync): void {
  try {
    if (db.isTransaction) db.exec(ROLLBACK);
  } catch {
    // The journal is still there: whoever opens the file next takes the write back.
  }
}
