// The world that a command runs in: streams, folder, time and chance, so that a test can bring its own.

export interface OutStream {
  readonly isTty: boolean;
  /** Columns of the terminal; undefined where there is none. */
  readonly columns: number | undefined;
  write(text: string): void;
}

/** What a person answered at a prompt. */
export type Reply = { readonly said: string } | 'end of input' | 'stopped';

export interface Terminal {
  readonly env: Readonly<Record<string, string | undefined>>;
  readonly cwd: string;
  /** Digest of the sources that this program is made of; null where it runs from the sources themselves. */
  readonly build: string | null;
  /** Where the practice book lies when nobody names another place. */
  practiceFolder(): string;
  readonly stdinIsTty: boolean;
  readonly stdout: OutStream;
  readonly stderr: OutStream;
  /** Pieces of standard input as they come. */
  readStdin(): AsyncIterable<Uint8Array> | Iterable<Uint8Array>;
  /** Asks on standard error; only where a person sits in front of it. */
  ask(prompt: string): Promise<Reply>;
  /** The same, and what is typed is shown nowhere. */
  askHidden(prompt: string): Promise<Reply>;
  /** When somebody wants the program to end: Ctrl-C, or a signal that asks for it. */
  stopped(): Promise<void>;
  /** UTC milliseconds. */
  now(): number;
  /** Minutes that the clock of this machine is ahead of UTC. */
  offsetMin(): number;
  /** Bytes that nobody can foretell. */
  chance(bytes: number): Uint8Array;
}
