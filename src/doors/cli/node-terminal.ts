// The terminal of this process.
import { randomBytes } from 'node:crypto';
import { HiddenLine } from './hidden-line.ts';
import { packageRoot } from './package-root.ts';
import type { OutStream, Reply, Terminal } from './terminal.ts';

/** Put in by the bundler. */
declare const WATERWRIGHT_BUILD: string | undefined;

export function nodeTerminal(): Terminal {
  return {
    build: typeof WATERWRIGHT_BUILD === 'string' ? WATERWRIGHT_BUILD : null,
    env: process.env,
    cwd: process.cwd(),
    practiceFolder: packageRoot,
    stdinIsTty: process.stdin.isTTY === true,
    stdout: outStream(process.stdout),
    stderr: outStream(process.stderr),
    readStdin: () => process.stdin as AsyncIterable<Uint8Array>,
    ask,
    askHidden,
    stopped,
    now: () => Date.now(),
    offsetMin: () => -new Date().getTimezoneOffset(),
    chance: (bytes) => randomBytes(bytes),
  };
}

function outStream(stream: NodeJS.WriteStream): OutStream {
  let isOpen = true;
  // Whoever read the other end has seen enough: that is no failure, and nothing more need be said.
  stream.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code !== 'EPIPE') throw error;
    isOpen = false;
  });
  return {
    isTty: stream.isTTY === true,
    columns: stream.columns,
    write: (text) => {
      if (isOpen) stream.write(text);
    },
  };
}

const STOPPING = ['SIGINT', 'SIGTERM', 'SIGHUP'] as const;

/** From the first call on these signals end nothing by themselves; a second one of them ends the program at once. */
function stopped(): Promise<void> {
  return new Promise((done) => {
    const stop = (): void => {
      for (const signal of STOPPING) process.removeListener(signal, stop);
      done();
    };
    for (const signal of STOPPING) process.on(signal, stop);
  });
}

/** One question at a time: between two questions the terminal belongs to the system again, and Ctrl-C ends the program. */
async function ask(prompt: string): Promise<Reply> {
  const { createInterface } = await import('node:readline');
  // A dumb terminal gets no escape bytes, so it edits the line by itself.
  const terminal = process.env['TERM'] !== 'dumb';
  const lines = createInterface({ input: process.stdin, output: process.stderr, terminal });
  return new Promise((done) => {
    let reply: Reply = 'end of input';
    const end = (last: Reply): void => {
      reply = last;
      lines.close();
    };
    const stop = (): void => end('stopped');
    lines.once('SIGINT', stop);
    process.once('SIGINT', stop);
    lines.once('close', () => {
      process.removeListener('SIGINT', stop);
      done(reply);
    });
    lines.question(prompt, (said) => end({ said }));
  });
}

/** What was typed ahead of a question stays for it. */
const hidden = new HiddenLine();

/** Keys come one by one and are shown nowhere, not even how many there are. When the program ends, the system has its terminal back. */
function askHidden(prompt: string): Promise<Reply> {
  const { stdin, stderr } = process;
  stderr.write(prompt);
  return new Promise((done) => {
    const end = (reply: Reply): void => {
      stdin.off('data', take);
      stdin.off('end', over);
      stdin.setRawMode(false);
      stdin.pause();
      stderr.write('\n');
      done(reply);
    };
    const take = (keys: Buffer | string): void => {
      const reply = hidden.take(keys.toString());
      if (reply !== null) end(reply);
    };
    const over = (): void => end('end of input');
    stdin.setRawMode(true);
    stdin.on('data', take);
    stdin.once('end', over);
    stdin.resume();
    take('');
  });
}
