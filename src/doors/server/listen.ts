// The socket: this machine only, short patience with whoever sends slowly, and the next port where one is taken.
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { createAdaptorServer } from '@hono/node-server';
import type { App } from './app.ts';
import { ServerProblem } from './ask-server.ts';
import { LIMITS, type Patience } from './limits.ts';
import { serverFinding } from './refusal.ts';

/** Never another one: whoever is not on this machine has no business here. */
const LOOPBACK = '127.0.0.1';

export interface Listening {
  readonly server: Server;
  readonly port: number;
}

/** @param first 0 takes any port that is free */
export async function listen(
  app: Pick<App, 'fetch'>,
  first: number,
  patience: Patience = LIMITS,
): Promise<Listening> {
  const server = createAdaptorServer({
    fetch: app.fetch,
    createServer,
    serverOptions: {
      maxHeaderSize: LIMITS.headerBytes,
      headersTimeout: patience.headersMs,
      requestTimeout: patience.requestMs,
      keepAliveTimeout: LIMITS.keepAliveMs,
      connectionsCheckingInterval: Math.min(1000, patience.headersMs),
      insecureHTTPParser: false,
      requireHostHeader: true,
    },
    overrideGlobalObjects: false,
  }) as Server;
  server.maxHeadersCount = LIMITS.headerCount;
  server.maxConnections = LIMITS.connections;
  const last = first === 0 ? 0 : Math.min(first + LIMITS.portTries - 1, 65_535);
  for (let port = first; port <= last; port++) {
    if (await listensOn(server, port)) return { server, port: (server.address() as AddressInfo).port };
  }
  throw new ServerProblem(serverFinding('no-port-free', { first, last }));
}

function listensOn(server: Server, port: number): Promise<boolean> {
  return new Promise((done, fail) => {
    const failed = (error: NodeJS.ErrnoException): void => {
      server.removeListener('listening', listening);
      if (error.code === 'EADDRINUSE' || error.code === 'EACCES') done(false);
      else fail(error);
    };
    const listening = (): void => {
      server.removeListener('error', failed);
      done(true);
    };
    server.once('error', failed);
    server.once('listening', listening);
    server.listen({ host: LOOPBACK, port, exclusive: true });
  });
}

/** No new request is taken; those in hand are answered. */
export function stopListening({ server }: Listening): Promise<void> {
  return new Promise((done) => {
    server.close(() => done());
    server.closeIdleConnections();
  });
}
