// What a server notes for its owner: who was let in, who was refused, what failed; one JSON object a line, in the person's state folder.
import { appendFileSync, mkdirSync, renameSync, statSync } from 'node:fs';
import { homedir } from 'node:os';
import { dirname, isAbsolute, join } from 'node:path';
import type { ServerEvent } from '../server/index.ts';
import type { Terminal } from './terminal.ts';

/** By the rule of the XDG base directories a relative path there is to be ignored. */
export function serverLogPath({ env }: Terminal): string {
  const told = env['XDG_STATE_HOME'] ?? '';
  const state = isAbsolute(told) ? told : join(env['HOME'] || homedir(), '.local', 'state');
  return join(state, 'waterwright', 'server.log');
}

/** Beyond this the log begins anew; the one before it stays beside it. */
const MOST_BYTES = 1_000_000;
const OWNER_ONLY = 0o600;

/** Only added to. Letters of others are inside JSON, so that none of them begins a line. */
export function serverLog(terminal: Terminal): (event: ServerEvent) => void {
  const path = serverLogPath(terminal);
  return ({ error, ...event }) => {
    const line = {
      at: new Date(terminal.now()).toISOString(),
      ...event,
      ...(error !== undefined && {
        error: error instanceof Error ? (error.stack ?? error.message) : `${error}`,
      }),
    };
    try {
      mkdirSync(dirname(path), { recursive: true });
      if ((statSync(path, { throwIfNoEntry: false })?.size ?? 0) > MOST_BYTES)
        renameSync(path, `${path}.old`);
      appendFileSync(path, `${JSON.stringify(line)}\n`, { mode: OWNER_ONLY });
    } catch {
      // A log that cannot be written is no reason to stop serving.
    }
  };
}
