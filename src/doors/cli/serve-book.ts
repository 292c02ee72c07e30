// Serves a book for a call, until somebody stops it; a book that is served already gets a fresh address.
import { join } from 'node:path';
import about from '../../../package.json' with { type: 'json' };
import { servedText, servingText, stoppedText } from '../../papers/index.ts';
import { openBook } from '../disk/index.ts';
import type { BookPlace } from './book-path.ts';
import type { Call } from './call.ts';
import { buildOf, openServed, toolsFor } from './open-book.ts';
import type { Outcome } from './outcome.ts';
import { packageRoot } from './package-root.ts';
import { shownPath } from './shown-path.ts';
import { textOptions } from './text-options.ts';

/** Where nothing names a port. */
const USUAL_PORT = 7480;

export async function serveUntilStopped(call: Call, place: BookPlace): Promise<Outcome> {
  const wanted = call.wholeNumber('port', { least: 1, most: 65_535 }) ?? USUAL_PORT;
  const served = await openServed(call, place.path, { write: false });
  if (served === null) return serveHere(call, place, wanted);
  try {
    tell(call, await served.launchAddress(), servedText(textOptions(call, 'stderr')));
  } finally {
    served.close();
  }
  return { written: true };
}

async function serveHere(call: Call, place: BookPlace, wanted: number): Promise<Outcome> {
  const { terminal } = call;
  const { serve } = await import('../server/index.ts');
  const book = await openBook(place.path, { owner: 'serve', alone: true });
  try {
    const serving = await serve({
      book,
      tools: await toolsFor(call, book),
      clock: { now: () => terminal.now(), offsetMin: () => terminal.offsetMin() },
      version: about.version,
      build: buildOf(terminal),
      pageFolder: join(packageRoot(), 'dist', 'web'),
      port: wanted,
    });
    const told = { book: shownPath(terminal.cwd, place.path), wanted, port: serving.port };
    // From here on Ctrl-C ends the serving and not the program.
    const stopped = terminal.stopped();
    tell(call, serving.launchAddress(), servingText(told, textOptions(call, 'stderr')));
    await stopped;
    await serving.close();
  } finally {
    book.close();
  }
  talk(call, stoppedText(textOptions(call, 'stderr')));
  return { written: true };
}

/** The address alone is the data, so that another program can read it; what is said about it goes beside it. */
function tell(call: Call, address: string, lines: readonly string[]): void {
  const json = { schema: 'serving', version: 1, data: { address } };
  call.terminal.stdout.write(`${call.has('json') ? JSON.stringify(json) : address}\n`);
  talk(call, [...call.notes, ...lines]);
}

function talk(call: Call, lines: readonly string[]): void {
  if (call.has('quiet') || call.has('json')) return;
  for (const line of lines) call.terminal.stderr.write(`${line}\n`);
}
