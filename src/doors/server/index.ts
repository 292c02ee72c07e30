// The door of the server: what other rooms may use.

export type { ServerEvent } from './app.ts';
export { ServerProblem } from './ask-server.ts';
export { RemoteBook } from './remote-book.ts';

import type { ServeOptions, Serving } from './serve.ts';

export type { ServeOptions, Serving };

/** What serving needs is loaded with the first call: a command that only goes through a server does without. */
export async function serve(options: ServeOptions): Promise<Serving> {
  const loaded = await import('./serve.ts');
  return loaded.serve(options);
}
export type { DeskClock } from './served-book.ts';
