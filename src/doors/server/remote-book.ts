// A book behind a running server, through the port that every desk takes: the same work, and one writer.
import {
  type BookInfo,
  type BookPort,
  type Head,
  HeadMoved,
  IdTaken,
  type KeptEntry,
  type OrderKey,
  type ScanQuery,
} from '../../book/index.ts';
import type { Finding } from '../../ground/units/index.ts';
import { type Backup, DiskProblem, type FileCheck, type ServerNote, StoreProblem } from '../disk/index.ts';
import { Asker, ServerProblem } from './ask-server.ts';
import { serverFinding } from './refusal.ts';
import { RemoteCodes } from './remote-codes.ts';
import type { PortAnswer } from './routes/book-port.ts';

interface About {
  readonly info: BookInfo;
  readonly count: number;
  readonly heads: readonly Head[];
}

export class RemoteBook implements BookPort {
  readonly path: string;
  readonly codes: RemoteCodes = new RemoteCodes((what, body) => this.#ask(what, body));
  readonly #asker: Asker;
  readonly #readOnly: boolean;

  private constructor(path: string, asker: Asker, readOnly: boolean) {
    this.path = path;
    this.#asker = asker;
    this.#readOnly = readOnly;
  }

  /**
   * @param how `build` of the program that asks: another one may speak another way
   * @throws ServerProblem when the server does not answer, or is of another build
   */
  static async open(
    path: string,
    note: ServerNote,
    how: { readonly readOnly: boolean; readonly build: string },
  ): Promise<RemoteBook> {
    if (note.build !== how.build)
      throw new ServerProblem(serverFinding('server-of-other-build', { address: note.address }));
    const book = new RemoteBook(path, new Asker(note), how.readOnly);
    await book.info();
    return book;
  }

  async info(): Promise<BookInfo> {
    return (await this.#about()).info;
  }

  async heads(): Promise<readonly Head[]> {
    return (await this.#about()).heads;
  }

  async count(): Promise<number> {
    return (await this.#about()).count;
  }

  find(id: string): Promise<KeptEntry | null> {
    return this.#ask('find', { id });
  }

  findNumber(site: string, number: number): Promise<KeptEntry | null> {
    return this.#ask('find', { site, number });
  }

  async *scan(query: ScanQuery): AsyncIterable<readonly KeptEntry[]> {
    // Chains have no gaps, so the heads at the start say which entries were there.
    const shown = new Map((await this.heads()).map(({ site, number }) => [site, number]));
    let after: OrderKey | undefined = query.after;
    for (;;) {
      const page: readonly KeptEntry[] = await this.#ask('scan', {
        ...query,
        ...(after !== undefined && { after }),
      });
      const last = page.at(-1);
      if (last === undefined) return;
      const rows = page.filter((row) => row.number <= (shown.get(row.site) ?? 0));
      if (rows.length > 0) yield rows;
      const { happenedAtMs, site, number } = last;
      after = { happenedAtMs, site, number };
    }
  }

  async append(rows: readonly KeptEntry[], heads: readonly Head[]): Promise<void> {
    if (this.#readOnly) throw new DiskProblem('read-only', this.path, { why: 'asked' });
    await this.#ask('append', { rows, heads });
  }

  /** What the owner of the file finds when it reads the whole of it. */
  check(): Promise<FileCheck> {
    return this.#ask('check', {});
  }

  copy(target: string): Promise<Backup> {
    return this.#ask('copy', { target });
  }

  async launchAddress(): Promise<string> {
    const data = await this.#asker.ask({ method: 'POST', path: '/api/book-port/launch', body: {} });
    return (data as { address: string }).address;
  }

  close(): void {
    this.#asker.close();
  }

  async #about(): Promise<About> {
    return unpacked<About>(await this.#asker.ask({ method: 'GET', path: '/api/book-port/about' }));
  }

  async #ask<T>(what: string, body: unknown): Promise<T> {
    return unpacked<T>(await this.#asker.ask({ method: 'POST', path: `/api/book-port/${what}`, body }));
  }
}

/** What the store behind the server threw is thrown here again. */
function unpacked<T>(data: unknown): T {
  const answer = data as PortAnswer<T>;
  if (answer.ok) return answer.value;
  if (answer.because === 'head moved') throw new HeadMoved('at the server');
  if (answer.because === 'id taken') throw new IdTaken('at the server');
  throw problemOf(answer.findings);
}

function problemOf([finding]: readonly Finding[]): Error {
  if (finding === undefined) return new Error('the server refused and did not say why');
  return new StoreProblem(finding);
}
