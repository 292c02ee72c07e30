// The door of the server: what other rooms may use.
export type { ServerEvent } from './app.ts';
export { NoPortFree } from './listen.ts';
export { type ServeOptions, type Serving, serve } from './serve.ts';
export type { DeskClock } from './served-book.ts';
