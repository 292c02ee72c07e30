// `serve`: the page and the interface for programs, on this machine only, until somebody stops it.
import { join } from 'node:path';
import about from '../../../../package.json' with { type: 'json' };
import { needBook } from '../book-path.ts';
import type { Call } from '../call.ts';
import { openForCall, toolsFor } from '../open-book.ts';
import type { Outcome } from '../outcome.ts';
import { packageRoot } from '../package-root.ts';

export async function run(call: Call): Promise<Outcome> {
  const { serve } = await import('../../server/index.ts');
  const port = call.wholeNumber('port', { least: 1, most: 65_535 });
  const { terminal } = call;
  const open = await openForCall(call, needBook(call), { write: true });
  const serving = await serve({
    book: open.book,
    tools: await toolsFor(call, open.book),
    clock: { now: () => terminal.now(), offsetMin: () => terminal.offsetMin() },
    version: about.version,
    pageFolder: join(packageRoot(), 'dist', 'web'),
    ...(port !== undefined && { port }),
  });
  terminal.stdout.write(`${serving.launchAddress()}\n`);
  await terminal.stopped();
  await serving.close();
  return { written: true };
}
