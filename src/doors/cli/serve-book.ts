// Serves a book for a call, until somebody stops it; a book that is served already gets a fresh address.
import { join } from 'node:path';
import about from '../../../package.json' with { type: 'json' };
import { servedText, servingText, stoppedText } from '../../papers/index.ts';
import { openBook } from '../disk/index.ts';
import type { BookPlace } from './book-path.ts';
import type { Call } from './call.ts';
import { buildOf, openServed, toolsFor } from './open-book.ts';
import type { Outcome } from './outcome.ts';
import { writeData } from './output.ts';
import { packageRoot } from './package-root.ts';
import { serverLog } from './server-log.ts';
import { shownPath } from './shown-path.ts';
import { textOptions } from './text-options.ts';

/** Where nothing names a port. */
const USUAL_PORT = 7480;

/** @param before data that come before the address */
export async function serveUntilStopped(call: Call, place: BookPlace, before = ''): Promise<Outcome> {
  const wanted = call.wholeNumber('port', { least: 1, most: 65_535 }) ?? USUAL_PORT;
  const served = await openServed(call, place.path, { write: false });
  if (served === null) return serveHere(call, place, { wanted, before });
  try {
    await tell(call, before, await served.launchAddress());
    talk(call, [...call.notes, ...servedText(textOptions(call, 'stderr'))]);
  } finally {
    served.close();
  }
  return { written: true };
}

async function serveHere(
  call: Call,
  place: BookPlace,
  { wanted, before }: { readonly wanted: number; readonly before: string },
): Promise<Outcome> {
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
      note: serverLog(terminal),
    });
    const told = { book: shownPath(terminal.cwd, place.path), wanted, port: serving.port };
    // From here on Ctrl-C ends the serving and not the program.
    const stopped = terminal.stopped();
    await tell(call, before, serving.launchAddress());
    talk(call, [...call.notes, ...servingText(told, textOptions(call, 'stderr'))]);
    await stopped;
    await serving.close();
  } finally {
    book.close();
  }
  talk(call, stoppedText(textOptions(call, 'stderr')));
  return { written: true };
}

/** The address is data, so that another program can read it; what is said about it goes beside it. */
async function tell(call: Call, before: string, address: string): Promise<void> {
  const json = { schema: 'serving', version: 1, data: { address } };
  await writeData(call, [call.has('json') ? `${JSON.stringify(json)}\n` : `${before}${address}\n`]);
}

function talk(call: Call, lines: readonly string[]): void {
  if (call.has('quiet') || call.has('json')) return;
  for (const line of lines) call.terminal.stderr.write(`${line}\n`);
}
