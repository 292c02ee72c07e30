// Serving a book: opens it, listens, and puts everything away again in order.
import type { DeskTools } from '../../desk/index.ts';
import { type DiskBook, forgetServer, noteServer } from '../disk/index.ts';
import { type AppParts, makeApp, type ServerEvent } from './app.ts';
import type { Guard } from './guards/guards.ts';
import { LIMITS, type Patience } from './limits.ts';
import { listen, stopListening } from './listen.ts';
import { readPageFiles } from './page-files.ts';
import { type DeskClock, ServedBook } from './served-book.ts';
import { Tokens } from './tokens.ts';

export interface ServeOptions {
  /** Open for writing; it is closed when serving ends. */
  readonly book: DiskBook;
  readonly tools: DeskTools;
  readonly clock: DeskClock;
  readonly version: string;
  /** Digest of the sources of this program: only programs of the same build go through this server. */
  readonly build: string;
  /** Where the files of the page are. */
  readonly pageFolder: string;
  /** The first port to try; 0 is any. Absent: 7480. */
  readonly port?: number;
  readonly note?: (event: ServerEvent) => void;
  /** For the tests that show what each guard is good for. */
  readonly guards?: readonly Guard[];
  /** For the tests of slow senders, which wait less long than a person. */
  readonly patience?: Partial<Patience>;
}

export interface Serving {
  readonly port: number;
  /** `http://127.0.0.1:7480`, without a token. */
  readonly address: string;
  /** An address that lets one page in, once. */
  launchAddress(): string;
  /** Answers what is in hand, and lets go of the port and of the book. */
  close(): Promise<void>;
}

/** Where the note cannot be left, other commands wait for the lock and then name this process. */
function leaveNote(...note: Parameters<typeof noteServer>): void {
  try {
    noteServer(...note);
  } catch {
    // The disk says what is the matter when something is to be kept.
  }
}

export async function serve(options: ServeOptions): Promise<Serving> {
  const tokens = new Tokens();
  const served = await ServedBook.open(options.book, options.tools, options.clock);
  const patience = { ...LIMITS, ...options.patience };
  let port = 0;
  served.launchAddress = () => `http://127.0.0.1:${port}/?token=${tokens.launch()}`;
  const parts: AppParts = {
    served,
    tokens,
    pages: readPageFiles(options.pageFolder),
    version: options.version,
    heartbeatMs: patience.heartbeatMs,
    port: () => port,
    note: options.note ?? (() => undefined),
    ...(options.guards !== undefined && { guards: options.guards }),
  };
  const app = makeApp(parts);
  const listening = await listen(app, options.port ?? LIMITS.firstPort, patience);
  port = listening.port;
  // The account is folded before the first page asks for it.
  await served.look((desk) => desk.account());
  const address = `http://127.0.0.1:${port}`;
  leaveNote(options.book.path, { pid: process.pid, address, key: tokens.key, build: options.build });
  return {
    port,
    address,
    launchAddress: served.launchAddress,
    close: async () => {
      const stopped = stopListening(listening);
      forgetServer(options.book.path);
      app.changes.endAll();
      await stopped;
      await served.close();
    },
  };
}
