// The page of the HTTP interface is what the server's own description says today.
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { httpPage } from '../../scripts/docs/http-page.ts';
import { GUARDS, routes } from '../../src/doors/server/index.ts';
import { expectGolden } from '../golden/record.ts';
import { TestServer } from '../server/harness.ts';

const ROUTES = await routes();

test('the page is made from the description; if it should change, npm run golden writes it', async () => {
  const server = await TestServer.start();
  const page = httpPage(JSON.parse((await server.ask('/api/openapi.json')).text));
  await server.end();
  for (const { method, path } of ROUTES) expect(page).toContain(`\`${method.toUpperCase()} ${path}\``);
  expect(GUARDS.length).toBe(4);
  expectGolden('http-interface.md', page, join(import.meta.dirname, '../../docs'));
});
