// From the table of routes to a program that answers requests: guards first, then the schemas, then the desk.
import type { HttpBindings } from '@hono/node-server';
import { type Context, Hono, type MiddlewareHandler } from 'hono';
import { nearest } from '../../ground/units/index.ts';
import { wordFinding } from '../../papers/index.ts';
import { type BodyRead, readBody } from './body.ts';
import { Changes } from './changes.ts';
import { type Asked, headerPairs } from './guards/asked.ts';
import { GUARDS, type Guard } from './guards/guards.ts';
import { EVERY_ANSWER } from './headers.ts';
import { documentOf } from './openapi.ts';
import { NO_PAGE, type PageFile } from './page-files.ts';
import { readRequest } from './read-request.ts';
import { type Refusal, refusal, refusalOfAnswer, refusalOfError } from './refusal.ts';
import type { Route } from './routes/route.ts';
import { ROUTES } from './routes/table.ts';
import type { ServedBook } from './served-book.ts';
import { endSession, openSession } from './session.ts';
import type { Tokens } from './tokens.ts';

export interface AppParts {
  readonly served: ServedBook;
  readonly tokens: Tokens;
  readonly pages: ReadonlyMap<string, PageFile>;
  readonly version: string;
  readonly heartbeatMs: number;
  /** Known once the server listens. */
  readonly port: () => number;
  /** What the owner of the server should know of: refused requests, and faults of the program. */
  readonly note: (event: ServerEvent) => void;
  /** All of them, but in tests that show what each is good for. */
  readonly guards?: readonly Guard[];
}

export interface ServerEvent {
  readonly what: 'refused' | 'let in' | 'failed';
  readonly status: number;
  readonly method: string;
  readonly path: string;
  readonly code: string;
  /** For the owner only: what a fault of the program says. */
  readonly error?: unknown;
}

interface Env {
  readonly Bindings: HttpBindings;
}
type Ctx = Context<Env>;

export interface App {
  readonly fetch: Hono<Env>['fetch'];
  readonly changes: Changes;
}

export function makeApp(parts: AppParts): App {
  const app = new Hono<Env>();
  const changes = new Changes(parts.served, parts.heartbeatMs);
  app.use('*', everyAnswer);
  app.use('*', guarded(parts));
  for (const route of ROUTES) {
    app.on(route.method.toUpperCase(), honoPath(route.path), (c) => answerRoute(c, route, parts));
  }
  app.get('/api/health', (c) => sheet(c, 'health', { version: parts.version, ...parts.served.state }));
  const description = documentOf(ROUTES, parts.version);
  app.get('/api/openapi.json', (c) => c.json(description as object));
  app.get('/api/changes', (c) =>
    changes.isFull
      ? refuse(c, refusal(503, 'server-crowded'), parts)
      : changes.open(c.req.header('last-event-id') ?? null),
  );
  app.post('/api/session', async (c) => {
    const answer = await openSession(c, askedOf(c, parts), refuserOf(c, parts));
    if (answer.ok) parts.note(eventOf(c, 'let in', { status: answer.status, code: '' }));
    return answer;
  });
  app.post('/api/session/end', (c) => endSession(c, askedOf(c, parts)));
  app.all('*', (c) => elsewhere(c, parts));
  app.onError((error, c) => {
    const refused = refusalOfError(error);
    return refuse(c, refused, parts, error);
  });
  return { fetch: app.fetch, changes };
}

/** `/api/stores/{id}` is `/api/stores/:id` to the router. */
function honoPath(path: string): string {
  return path.replaceAll(/\{(\w+)\}/g, ':$1');
}

const everyAnswer: MiddlewareHandler = async (c, next) => {
  await next();
  for (const [name, value] of Object.entries(EVERY_ANSWER)) {
    if (!c.res.headers.has(name)) c.res.headers.set(name, value);
  }
};

function askedOf(c: Ctx, { port, tokens }: AppParts): Asked {
  return {
    method: c.req.method,
    path: c.req.path,
    headers: headerPairs(c.env.incoming.rawHeaders),
    port: port(),
    tokens,
  };
}

function guarded(parts: AppParts): MiddlewareHandler<Env> {
  const guards = parts.guards ?? GUARDS;
  return async (c, next) => {
    const asked = askedOf(c, parts);
    for (const { judge } of guards) {
      const refused = judge(asked);
      if (refused !== null) return refuse(c, refused, parts);
    }
    await next();
    return undefined;
  };
}

async function answerRoute(c: Ctx, route: Route, parts: AppParts): Promise<Response> {
  const { served } = parts;
  const body: BodyRead =
    route.body === null
      ? { ok: true, value: undefined }
      : await readBody(c.req.raw, route.takesFile === true);
  if (!body.ok) return refuse(c, body.refusal, parts);
  const read = readRequest(route, {
    params: c.req.param(),
    query: new URL(c.req.url).searchParams,
    body: body.value,
  });
  if (!read.ok) return refuse(c, read.refusal, parts);
  const answer = await route.run(served, read as never);
  if (!answer.ok) {
    const context = await served.wordsContext();
    return refuse(c, refusalOfAnswer(answer, route.method === 'post'), parts, undefined, context);
  }
  return sheet(c, route.schema, answer.value, route.statusOf(answer.value));
}

function sheet(c: Ctx, schema: string, data: unknown, status: 200 | 201 = 200): Response {
  return c.json({ schema, version: 1, data }, status);
}

/** Refusals that say something about who asked, or that the server is not well; slips of a request are no news. */
const WORTH_NOTING: ReadonlySet<number> = new Set([401, 403, 413, 415, 421, 423, 429, 500, 503]);

function eventOf(
  c: Ctx,
  what: ServerEvent['what'],
  { status, code }: { readonly status: number; readonly code: string },
): ServerEvent {
  // What was asked for is somebody else's text: nothing of it may begin a line.
  const path = c.req.path.slice(0, 200).replaceAll(/\p{Cc}/gu, '?');
  return { what, status, method: c.req.method, path, code };
}

function refuserOf(c: Ctx, parts: AppParts): (refused: Refusal) => Response {
  return (refused) => refuse(c, refused, parts);
}

function refuse(
  c: Ctx,
  refused: Refusal,
  parts: AppParts,
  error?: unknown,
  context: Parameters<typeof wordFinding>[1] = {},
): Response {
  const { status, findings, headers = {} } = refused;
  if (WORTH_NOTING.has(status)) {
    const code = findings[0]?.code ?? '';
    const what = status >= 500 ? 'failed' : 'refused';
    parts.note({ ...eventOf(c, what, { status, code }), ...(error !== undefined && { error }) });
  }
  const data = findings.map((finding) => wordFinding(finding, context));
  return c.json({ schema: 'error', version: 1, data }, status, { ...headers });
}

const OTHER_PATHS: Readonly<Record<string, string>> = {
  '/api/health': 'GET',
  '/api/openapi.json': 'GET',
  '/api/changes': 'GET',
  '/api/session': 'POST',
  '/api/session/end': 'POST',
};

/** A file of the page, or what is wrong with the address. */
function elsewhere(c: Ctx, parts: AppParts): Response {
  const { method, path } = c.req;
  if (path === '/api' || path.startsWith('/api/')) return refuse(c, whatIsWrong(method, path), parts);
  if (method !== 'GET' && method !== 'HEAD') return refuse(c, methodWrong(method, ['GET']), parts);
  const file = fileFor(path, parts.pages, c.req.header('accept') ?? '');
  return file === null
    ? refuse(c, refusal(404, 'address-unknown', { path: path.slice(0, 80), nearest: [] }), parts)
    : given(c, file);
}

function whatIsWrong(method: string, path: string): Refusal {
  const own = ROUTES.filter((route) => fits(route.path, path)).map((route) => route.method.toUpperCase());
  const allowed = [...own, ...(OTHER_PATHS[path] === undefined ? [] : [OTHER_PATHS[path]])];
  if (allowed.length > 0) return methodWrong(method, allowed);
  const all = [...ROUTES.map((route) => route.path), ...Object.keys(OTHER_PATHS)];
  return refusal(404, 'address-unknown', {
    path: path.slice(0, 80),
    nearest: nearest(path.slice(0, 80), all).slice(0, 3),
  });
}

function fits(pattern: string, path: string): boolean {
  const [wanted, received] = [pattern.split('/'), path.split('/')];
  return (
    wanted.length === received.length &&
    wanted.every((part, k) => part.startsWith('{') || part === received[k])
  );
}

function methodWrong(method: string, allowed: readonly string[]): Refusal {
  const shown = method.slice(0, 20);
  return {
    ...refusal(405, 'method-wrong', { method: shown, allowed }),
    headers: { Allow: allowed.join(', ') },
  };
}

/** A path without an ending is a view of the page: the page itself finds out which. */
function fileFor(path: string, pages: AppParts['pages'], accept: string): PageFile | null {
  const file = pages.get(path);
  if (file !== undefined) return file;
  const isView = path === '/' || (!path.includes('.') && accept.includes('text/html'));
  return isView ? (pages.get('/index.html') ?? NO_PAGE) : null;
}

function given(c: Ctx, { bytes, type, tag }: PageFile): Response {
  const headers = { 'Content-Type': type, ETag: tag, 'Cache-Control': 'no-cache' };
  if (c.req.header('if-none-match') === tag) return c.body(null, 304, headers);
  return c.body(bytes, 200, headers);
}
