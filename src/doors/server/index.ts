// The door of the server: what other rooms may use.

export type { ServerEvent } from './app.ts';
export { ServerProblem } from './ask-server.ts';
export { RemoteBook } from './remote-book.ts';

import type { Route } from './routes/route.ts';
import type { ServeOptions, Serving } from './serve.ts';

export { GUARDS, type Guard } from './guards/guards.ts';
export type { Route, ServeOptions, Serving };

/** The table of addresses, for whoever describes or tries them. */
export async function routes(): Promise<readonly Route[]> {
  const { ROUTES } = await import('./routes/table.ts');
  return ROUTES;
}

/** What serving needs is loaded with the first call: a command that only goes through a server does without. */
export async function serve(options: ServeOptions): Promise<Serving> {
  const loaded = await import('./serve.ts');
  return loaded.serve(options);
}
export type { DeskClock } from './served-book.ts';
